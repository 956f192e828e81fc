/** One piece in a line: what it comes to, and what it is. */
import type { Piece } from '../club/piece.ts';
import { cutOf } from '../trade/cuts.ts';
import type { Speech } from '../words/index.ts';
import type { Measure } from '../yield/measure.ts';
import { pieceFigures, weightsOf } from '../yield/piece.ts';

/** The last measure that a piece has come to; `trim` before any. */
export function measureReached(piece: Piece): Measure {
  const { plateYield, cookingYield } = pieceFigures(piece);
  return plateYield !== null ? 'plate' : cookingYield !== null ? 'cooking' : 'trim';
}

/** The answer: what the piece comes to at the last stage that was weighed. */
export function headline(piece: Piece, say: Speech): string {
  const { bought, trim, intoHeat, cooked, served } = weightsOf(piece);
  const { trimShare, cookingYield, plateYield } = pieceFigures(piece);
  if (served !== null && plateYield !== null)
    return say.weighing.plate({ share: plateYield, served, bought });
  if (cooked !== null && cookingYield !== null && intoHeat !== null) {
    return say.weighing.cooking({ share: cookingYield, cooked, from: intoHeat });
  }
  if (cooked !== null) return say.weighing.heatAlone({ cooked, bought });
  if (trim !== null && trimShare !== null) return say.weighing.trim({ share: trimShare, trim, bought });
  return say.weighing.bought({ bought, cut: piece.cut });
}

/** `Piece 12, Whole packer brisket, Choice, Jul 4, 2026`: what it is, as far as it was told. */
export function aboutPiece(piece: Piece, say: Speech): string {
  const parts = [
    say.trade.cut(piece.cut),
    piece.pieces > 1 ? say.weighing.lot({ count: piece.pieces }) : null,
    piece.grade === null ? null : say.trade.grade(piece.grade),
    piece.style === null ? null : say.trade.style(piece.style),
    piece.bone === null || cutOf(piece.cut).bone !== 'both' ? null : say.trade.bone(piece.bone),
    piece.wrap === null ? null : say.trade.wrap(piece.wrap),
    piece.shop === null ? null : say.weighing.shop({ shop: piece.shop }),
    say.show.day(piece.day),
    piece.approximate ? say.weighing.approximate() : null,
  ].filter((part) => part !== null);
  return say.weighing.aboutPiece({ seq: piece.seq, parts });
}
