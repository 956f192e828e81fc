/** `/piece show`: one piece, and its place in the club. */
import { type Command, command } from '../../shared/chat/command.ts';
import { wholeGroup } from '../../shared/club/group.ts';
import { isInjected, type Piece } from '../../shared/club/piece.ts';
import { placeOf } from '../../shared/club/place.ts';
import { type Sifted, sift } from '../../shared/club/sift.ts';
import type { ClubStore } from '../../shared/club/store.ts';
import { measureReached } from '../../shared/replies/piece-line.ts';
import { standing } from '../../shared/replies/standing.ts';
import { type Measure, setsInjectedApart } from '../../shared/yield/measure.ts';
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
    const { measure, sifted } = await comparison(store, shown);
    const { counted, waiting } = sifted;
    return standing(
      {
        piece: shown,
        measure,
        columns: counted,
        club: wholeGroup(sifted, measure, shown.cut),
        waiting: waiting.seq.includes(shown.seq),
        place: placeOf(counted, shown.seq, false),
        inGrade: shown.grade === null ? null : placeOf(counted, shown.seq, true),
        corrections: await store.corrections(shown.id),
        zone: club.zone,
      },
      say,
    );
  },
});

/** The last measure that it has come to and others have too; what came off where there is none. */
async function comparison(store: ClubStore, piece: Piece): Promise<{ measure: Measure; sifted: Sifted }> {
  const reached = measureReached(piece);
  const sifted = sift(
    await store.columns(piece.cut, reached, isInjected(piece) && setsInjectedApart(reached)),
  );
  return sifted.counted.count > 1 || reached === 'trim'
    ? { measure: reached, sifted }
    : { measure: 'trim', sifted: sift(await store.columns(piece.cut, 'trim')) };
}
