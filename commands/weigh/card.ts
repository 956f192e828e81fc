/** The card of a piece: what it has come to, beside the club's figures for that. */
import type { Context } from '../../shared/chat/command.ts';
import type { Reply } from '../../shared/chat/reply.ts';
import { wholeGroup } from '../../shared/club/group.ts';
import { isInjected, type Piece } from '../../shared/club/piece.ts';
import { measureReached } from '../../shared/replies/piece-line.ts';
import { type Told, weighed } from '../../shared/replies/weighed.ts';
import { setsInjectedApart } from '../../shared/yield/measure.ts';

/** The card of a piece, with the club's figures for what it has come to. */
export async function card(
  { id, store, club, say, doubts }: Context,
  piece: Piece,
  { told, added, fresh, others }: { told: readonly Told[]; added: boolean; fresh: boolean; others: boolean },
): Promise<Reply> {
  const measure = measureReached(piece);
  const columns = await store.columns(piece.cut, measure, isInjected(piece) && setsInjectedApart(measure));
  const beside = wholeGroup(columns, measure, piece.cut);
  const shops = piece.shop === null ? await store.shops() : [];
  return weighed({ piece, club, beside, told, added, fresh, others, shops, doubts, interaction: id }, say);
}

/** The card of a piece as it stands now. */
export async function cardAgain(context: Context, id: string): Promise<Reply | null> {
  const piece = await context.store.piece({ id });
  return piece && card(context, piece, { told: [], added: false, fresh: true, others: false });
}
