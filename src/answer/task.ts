/** What a request comes to: the command to run, and who will see its answer. Found without asking the store. */
import { readActionId } from '../../shared/chat/action-id.ts';
import type { Command, Press, PressRule } from '../../shared/chat/command.ts';
import { FORM_ACTION, MORE } from '../../shared/chat/form.ts';
import { readOptions } from '../../shared/chat/line.ts';
import type { ActionId } from '../../shared/chat/reply.ts';
import type { Audience, Request } from '../../shared/chat/request.ts';
import { MemberError } from '../../shared/errors.ts';

export type Task = {
  command: Command;
  audience: Audience;
  edits: boolean;
  /** Whether it mends a piece whose card may stand in the channel: it is shown there, and answered privately. */
  mends: boolean;
} & (
  | { kind: 'run'; typed: Typed; draft: string | null; piece: string | null }
  | { kind: 'press'; rule: PressRule; press: Press }
  | { kind: 'take'; draft: string; reading: number }
  | { kind: 'fix'; draft: string }
);

type Typed = Readonly<Record<string, string>>;

/** Actions that every command has: taking a reading of a question, and mending what was typed. */
export const TAKE = 'take';
export const FIX = 'fix';
/** Who will see the answer to a question that was asked beside a piece's card. */
export const ASIDE = 'aside';

/** @throws MemberError for what can't be pressed by this member, or is unknown. */
export function taskOf(request: Request, commands: readonly Command[]): Task {
  if (request.kind === 'command') {
    return run(commandNamed(request.command, commands), request.options, null, null);
  }
  const id = readActionId(request.action);
  const command = commands.find(({ name }) => name === id?.command);
  if (id === null || command === undefined) throw new MemberError('button-outdated', {});
  refuseStrangers(id, request);
  return request.kind === 'press'
    ? pressTask(id, command, request.values)
    : submitTask(id, command, request.fields);
}

function commandNamed(name: string, commands: readonly Command[]): Command {
  const command = commands.find((one) => one.name === name);
  if (command === undefined) throw new MemberError('command-unknown', { read: `/${name}`, near: null });
  return command;
}

function refuseStrangers({ by, owner }: ActionId, { member, manager }: Request): void {
  if (by === 'owner' && member !== owner) throw new MemberError('not-yours', {});
  if (by === 'manager' && !manager) throw new MemberError('managers-only', {});
}

const run = (command: Command, typed: Typed, draft: string | null, piece: string | null): Task => ({
  kind: 'run',
  command,
  audience: piece === null ? command.audience(typed) : 'member',
  edits: false,
  mends: piece !== null,
  typed,
  draft,
  piece,
});

function pressTask({ action, about, owner }: ActionId, command: Command, values: readonly string[]): Task {
  const [draft = '', reading = '', seenBy = ''] = about;
  if (action === FIX) return { kind: 'fix', command, audience: 'member', edits: false, mends: false, draft };
  if (action === TAKE) {
    // A question is its author's own; an answer for all stands anew in the channel.
    const audience = seenBy === 'club' ? 'club' : 'member';
    return {
      kind: 'take',
      command,
      audience,
      edits: audience === 'member',
      mends: seenBy === ASIDE,
      draft,
      reading: Number(reading),
    };
  }
  const rule = command.actions?.[action];
  if (rule === undefined) throw new MemberError('button-outdated', {});
  const { audience, edits } = rule;
  return {
    kind: 'press',
    command,
    audience,
    edits,
    mends: false,
    rule,
    press: { owner, about, value: values[0] ?? null },
  };
}

function submitTask({ action, about }: ActionId, command: Command, fields: Typed): Task {
  if (action !== FORM_ACTION) throw new MemberError('button-outdated', {});
  const { [MORE]: more = '', ...first } = fields;
  const given = Object.entries(first).filter(([, text]) => text.trim() !== '');
  const rest = readOptions(more, { name: command.name, options: Object.keys(command.options) });
  for (const [name] of given) if (name in rest) throw new MemberError('option-twice', { option: name });
  const typed = { ...Object.fromEntries(given), ...rest };
  const [what, seq] = about;
  return what === 'piece'
    ? run(command, { ...typed, piece: seq ?? '' }, null, seq ?? null)
    : run(command, typed, what ?? null, null);
}
