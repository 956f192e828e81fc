/** The card of a piece: what it has come to, beside the club's figures for that. */
import type { Context } from '../../shared/chat/command.ts';
import type { Doubtful, Reply } from '../../shared/chat/reply.ts';
import { isInjected, type Piece } from '../../shared/club/piece.ts';
import { type Beside, isUnusual } from '../../shared/findings/beside.ts';
import { measureReached } from '../../shared/replies/piece-line.ts';
import { type Told, weighed } from '../../shared/replies/weighed.ts';
import { lossOf, type Measure } from '../../shared/yield/measure.ts';
import { askIfRight } from './unusual.ts';

/** The card of a piece, with the club's figures for what it has come to. */
export async function card(
  context: Context,
  piece: Piece,
  { told, added, fresh, others }: { told: readonly Told[]; added: boolean; fresh: boolean; others: boolean },
): Promise<Reply> {
  const { id, store, find, club, say } = context;
  const measure = measureReached(piece);
  const beside = await find('beside', { cut: piece.cut, measure, injected: isInjected(piece) });
  const shops = piece.shop === null ? await store.shops() : [];
  const waiting = isWaiting(piece, measure, beside);
  const question = waiting && fresh ? askIfRight(piece, told, beside) : null;
  const doubts: readonly Doubtful[] = question === null ? context.doubts : [...context.doubts, question];
  return weighed(
    { piece, club, beside: beside.club, waiting, told, added, fresh, others, shops, doubts, interaction: id },
    say,
  );
}

/** Whether a piece is unusual in a measure, and nobody stands by it yet. One that was set aside is out anyway. */
export function isWaiting(piece: Piece, measure: Measure, { usual }: Beside): boolean {
  const loss = lossOf(measure, piece);
  if (loss === null || piece.confirmedAt !== null || piece.setAsideAt !== null) return false;
  return isUnusual(usual, loss.base / piece.pieces, loss.loss / piece.pieces);
}

/** The card of a piece as it stands now. */
export async function cardAgain(context: Context, id: string): Promise<Reply | null> {
  const piece = await context.store.piece({ id });
  return piece && card(context, piece, { told: [], added: false, fresh: true, others: false });
}
