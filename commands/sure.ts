/** Making sure before something is erased for good: how many pieces go is typed by hand. */
import type { Context } from '../shared/chat/command.ts';
import { formOf } from '../shared/chat/form.ts';
import type { Option } from '../shared/chat/option.ts';
import type { ActionId, Button, Form } from '../shared/chat/reply.ts';
import type { Whose } from '../shared/club/whose.ts';
import { MemberError } from '../shared/errors.ts';
import type { Speech } from '../shared/words/index.ts';
import { count } from './options.ts';

/** How many pieces go, as the question said. */
export const sure = (): Option<number> => count(0, 999_999_999);

/** The button that opens the form; its command has an action `sure`. */
export const eraseButton = (
  id: Omit<ActionId, 'action'>,
  kind: Whose['kind'],
  { privacy }: Speech,
): Button => ({ kind: 'button', label: privacy.erasePress({ kind }), id: { ...id, action: 'sure' } });

/** The form in which the number is typed. */
export const confirm = (
  command: string,
  typed: Readonly<Record<string, string>>,
  first: readonly string[],
  { member, say }: Pick<Context, 'member' | 'say'>,
): Form => formOf({ command, owner: member.id, about: [], first, typed, say });

/** @throws MemberError where another number was typed: nothing is erased then. */
export function agree(typed: number, pieces: number): void {
  if (typed !== pieces) throw new MemberError('erase-unsure', { typed, pieces });
}
