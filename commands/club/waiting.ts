/** `/club waiting`: the pieces that are unusual here and that nobody stands by yet. */
import {
  type Command,
  type Context,
  command,
  type Press,
  type PressRule,
} from '../../shared/chat/command.ts';
import type { Reply } from '../../shared/chat/reply.ts';
import type { Piece } from '../../shared/club/piece.ts';
import { waitingList } from '../../shared/replies/managed.ts';
import { cardAgain } from '../weigh/card.ts';
import { allWaiting, lookedAt, pieceNumbered, standBy } from './managed.ts';

const MOST_SHOWN = 15;

/** A press that shows its outcome in the place of what was pressed. */
const inPlace = (run: (context: Context, press: Press) => Promise<Reply>): PressRule => ({
  by: 'manager',
  audience: 'member',
  edits: true,
  run,
});

export const clubWaiting: Command = command({
  name: 'club waiting',
  managers: true,
  audience: () => 'member',
  options: {},
  form: () => [],
  run: list,
  actions: {
    list: inPlace(list),
    piece: inPlace(async (context, { value }) =>
      lookedAt(context, await pieceNumbered(context, value ?? '')),
    ),
    right: inPlace(async (context, { about: [seq = ''] }) =>
      standBy(context, await pieceNumbered(context, seq)),
    ),
  },
  card: cardAgain,
});

async function list(context: Context): Promise<Reply> {
  const { store, member, say } = context;
  const waiting = await allWaiting(context);
  const shown = await Promise.all(
    waiting.slice(0, MOST_SHOWN).map(async ({ seq, unusual }) => ({
      piece: await store.piece({ seq }),
      unusual,
    })),
  );
  // One that was taken back since it was counted is not there to be shown.
  const there = shown.filter((one): one is { piece: Piece } & typeof one => one.piece !== null);
  return waitingList(there, waiting.length, member.id, say);
}
