/** `/piece show`: one piece, and its place in the club. */
import { type Command, command } from '../../shared/chat/command.ts';
import { wholeGroup } from '../../shared/club/group.ts';
import { isInjected, type Piece } from '../../shared/club/piece.ts';
import { placeOf } from '../../shared/club/place.ts';
import type { ClubStore, Columns } from '../../shared/club/store.ts';
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
    const { measure, columns } = await comparison(store, shown);
    return standing(
      {
        piece: shown,
        measure,
        columns,
        club: wholeGroup(columns, measure, shown.cut),
        place: placeOf(columns, shown.seq, false),
        inGrade: shown.grade === null ? null : placeOf(columns, shown.seq, true),
        corrections: await store.corrections(shown.id),
        zone: club.zone,
      },
      say,
    );
  },
});

/** The last measure that it has come to and others have too; what came off where there is none. */
async function comparison(store: ClubStore, piece: Piece): Promise<{ measure: Measure; columns: Columns }> {
  const reached = measureReached(piece);
  const columns = await store.columns(piece.cut, reached, isInjected(piece) && setsInjectedApart(reached));
  return columns.count > 1 || reached === 'trim'
    ? { measure: reached, columns }
    : { measure: 'trim', columns: await store.columns(piece.cut, 'trim') };
}
