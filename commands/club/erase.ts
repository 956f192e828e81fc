/** `/club erase`: deletes the whole club, or what is kept of one member who asked for it, once the number is typed. */
import { type Command, type Context, command } from '../../shared/chat/command.ts';
import type { Reply } from '../../shared/chat/reply.ts';
import type { Whose } from '../../shared/club/whose.ts';
import { askToErase, erasedTold, nothingKept } from '../../shared/replies/privacy.ts';
import { person } from '../options.ts';
import { pressedMember } from '../pressed.ts';
import { agree, confirm, eraseButton, sure } from '../sure.ts';

export const clubErase: Command = command({
  name: 'club erase',
  managers: true,
  audience: () => 'member',
  options: { member: person(), sure: sure() },
  form: ({ member }) => (member === undefined ? ['sure'] : ['member', 'sure']),
  run: async (context, { member, sure: typed }) =>
    typeof typed === 'number' ? erase(context, member ?? null, typed) : ask(context, member ?? null),
  actions: {
    sure: {
      by: 'manager',
      audience: 'member',
      edits: false,
      run: async (context, { about: [member] }) =>
        member
          ? confirm('club erase', { member: pressedMember(member) }, ['member', 'sure'], context)
          : confirm('club erase', {}, ['sure'], context),
    },
  },
});

const whoseOf = (member: string | null): Whose =>
  member === null ? { kind: 'club' } : { kind: 'member', member };

const held = ({ store }: Context, member: string | null) =>
  member === null ? store.heldInAll() : store.held(member);

async function ask(context: Context, member: string | null): Promise<Reply> {
  const { say } = context;
  const whose = whoseOf(member);
  const { pieces, anything } = await held(context, member);
  if (!anything) return nothingKept(whose, say);
  const id = {
    command: 'club erase',
    by: 'manager',
    owner: context.member.id,
    about: member === null ? [] : [member],
  } as const;
  return askToErase({ whose, pieces, everywhere: null, buttons: [eraseButton(id, whose.kind, say)] }, say);
}

async function erase(context: Context, member: string | null, typed: number): Promise<Reply> {
  const { store, now, today, say } = context;
  const whose = whoseOf(member);
  const { pieces, anything } = await held(context, member);
  if (!anything) return nothingKept(whose, say);
  agree(typed, pieces);
  const erased = member === null ? await store.eraseClub(now) : await store.eraseMember(member, now);
  return erasedTold(whose, erased, today, say);
}
