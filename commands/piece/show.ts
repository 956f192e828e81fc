/** `/piece show`: one piece, and its place in the club. */
import { type Command, type Context, command } from '../../shared/chat/command.ts';
import { isInjected, type Piece } from '../../shared/club/piece.ts';
import type { FoundStanding } from '../../shared/findings/standing.ts';
import { measureReached } from '../../shared/replies/piece-line.ts';
import { standing } from '../../shared/replies/standing.ts';
import type { Measure } from '../../shared/yield/measure.ts';
import { piece } from '../options.ts';
import { pieceMeant } from './own.ts';

export const pieceShow: Command = command({
  name: 'piece show',
  audience: () => 'club',
  options: { piece: piece() },
  form: () => ['piece'],
  run: async (context, given) => {
    const { store, club, say } = context;
    const shown = await pieceMeant(context, given.piece);
    const found = await comparison(context, shown);
    const corrections = await store.corrections(shown.id);
    return standing({ piece: shown, ...found, corrections, zone: club.zone }, say);
  },
});

/** By the last measure that it has come to and others have too; by what came off where there is none. */
async function comparison({ find }: Context, shown: Piece): Promise<FoundStanding & { measure: Measure }> {
  const by = async (measure: Measure) => {
    const { cut, seq } = shown;
    const found = await find('standing', { cut, measure, seq, injected: isInjected(shown) });
    return { ...found, measure };
  };
  const reached = measureReached(shown);
  const found = await by(reached);
  return found.club.pieces > 1 || reached === 'trim' ? found : by('trim');
}
