/** Finding the piece that is meant: the one that was named, or one's newest. */
import type { Context } from '../../shared/chat/command.ts';
import type { Piece } from '../../shared/club/piece.ts';
import { MemberError } from '../../shared/errors.ts';

/** Any piece of the club by its number; without one, the member's newest. */
export async function pieceMeant({ store, member }: Context, seq: number | null | undefined): Promise<Piece> {
  const piece = seq ? await store.piece({ seq }) : (await store.newest(member.id, 1))[0];
  if (!piece)
    throw seq ? new MemberError('piece-unknown', { read: String(seq) }) : new MemberError('no-pieces', {});
  return piece;
}

/** The same, of the member's own only. */
export async function ownPiece(context: Context, seq: number | null | undefined): Promise<Piece> {
  const piece = await pieceMeant(context, seq);
  if (piece.member !== context.member.id) throw new MemberError('piece-not-yours', { seq: piece.seq });
  return piece;
}
