/** A member's own newest pieces, one a row. */
import type { Reply } from '../chat/reply.ts';
import type { Piece } from '../club/piece.ts';
import type { Speech } from '../words/index.ts';
import { pieceFigures } from '../yield/piece.ts';

/** The reply of `/piece list`. */
export function ownPieces(newest: readonly Piece[], { pieces, show, trade }: Speech): Reply {
  const share = (fraction: number | null) => (fraction === null ? pieces.notWeighed() : show.share(fraction));
  const rows = newest.map((piece) => {
    const { trimShare, plateYield } = pieceFigures(piece);
    const name = pieces.listName({ seq: piece.seq, cut: trade.cut(piece.cut) });
    // No letter of a table can be struck: the small print strikes it.
    return piece.setAsideAt === null
      ? [name, share(trimShare), share(plateYield)]
      : [name, pieces.listAsideShare(), pieces.notWeighed()];
  });
  const aside = newest.flatMap(({ seq, setAsideAt, setAsideWhy: why }) =>
    setAsideAt === null ? [] : [{ seq, why }],
  );
  const { listHead } = pieces;
  return {
    answer: pieces.list({ count: newest.length }),
    ...(rows.length === 0 ? {} : { table: [[listHead.piece(), listHead.trim(), listHead.plate()], ...rows] }),
    small: [
      ...(aside.length === 0 ? [] : [pieces.listAside({ pieces: aside })]),
      ...(rows.length === 0 ? [] : [pieces.listHow()]),
    ],
    figures: {
      pieces: newest.map((piece) => {
        const { trimShare, plateYield } = pieceFigures(piece);
        const setAside = piece.setAsideAt !== null;
        return { piece: piece.seq, cut: piece.cut, trimShare, plateYield, setAside };
      }),
    },
  };
}
