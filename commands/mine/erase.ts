/** `/mine erase`: deletes all that is kept of a member, here or everywhere, once they typed how many pieces go. */
import { type Command, type Context, command } from '../../shared/chat/command.ts';
import type { Form, Reply } from '../../shared/chat/reply.ts';
import type { Whose } from '../../shared/club/whose.ts';
import { askToErase, erasedTold, nothingKept } from '../../shared/replies/privacy.ts';
import { choice } from '../options.ts';
import { agree, confirm, eraseButton, sure } from '../sure.ts';

const PLACES = ['here', 'everywhere'] as const;
type Place = (typeof PLACES)[number];

/** What there is of the member who asks: how much of it, and whose words tell it. */
interface Found {
  whose: Whose;
  pieces: number;
  anything: boolean;
}

async function findAt({ store, self, member }: Context, place: Place): Promise<Found> {
  if (place === 'here') return { whose: { kind: 'here' }, ...(await store.held(member.id)) };
  const held = await self.held();
  return {
    whose: { kind: 'everywhere', clubs: held.length },
    pieces: held.reduce((sum, { pieces }) => sum + pieces, 0),
    anything: held.length > 0,
  };
}

export const mineErase: Command = command({
  name: 'mine erase',
  audience: () => 'member',
  options: { where: choice(PLACES), sure: sure() },
  form: () => ['where', 'sure'],
  run: async (context, { where, sure: typed }) =>
    typeof typed === 'number' ? erase(context, where ?? 'here', typed) : ask(context, where ?? null),
  actions: {
    sure: {
      by: 'owner',
      audience: 'member',
      edits: false,
      run: async (context, { about: [where = 'here'] }): Promise<Form> =>
        confirm('mine erase', { where }, ['where', 'sure'], context),
    },
  },
});

async function ask(context: Context, where: Place | null): Promise<Reply> {
  const { member, say } = context;
  const [here, all] = await Promise.all([findAt(context, 'here'), findAt(context, 'everywhere')]);
  // Whoever is known elsewhere alone is asked about that.
  const asked = where === 'everywhere' || (where === null && !here.anything) ? all : here;
  if (!asked.anything) return nothingKept({ kind: 'here' }, say);
  const elsewhere =
    where === null && asked === here && all.whose.kind === 'everywhere' && all.whose.clubs > 1;
  const button = ({ whose: { kind } }: Found) =>
    eraseButton({ command: 'mine erase', by: 'owner', owner: member.id, about: [kind] }, kind, say);
  return askToErase(
    {
      ...asked,
      everywhere:
        elsewhere && all.whose.kind === 'everywhere' ? { clubs: all.whose.clubs, pieces: all.pieces } : null,
      buttons: elsewhere ? [button(here), button(all)] : [button(asked)],
    },
    say,
  );
}

async function erase(context: Context, where: Place, typed: number): Promise<Reply> {
  const { store, self, member, now, today, say } = context;
  const { whose, pieces, anything } = await findAt(context, where);
  if (!anything) return nothingKept({ kind: 'here' }, say);
  agree(typed, pieces);
  const erased = where === 'here' ? await store.eraseMember(member.id, now) : await self.erase(now);
  return erasedTold(whose, erased, today, say);
}
