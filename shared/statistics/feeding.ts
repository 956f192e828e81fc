/** How much to buy so that it is enough: pieces of one cook, whose own errors average and whose common ones do not. */
import { standardNormal, studentT } from './distributions.ts';
import type { Expectation } from './prediction.ts';

/** 9 times in 10. */
const LEVEL = 0.9;
/** Far beyond what any club buys at once: a yield of next to nothing must not search on for ever. */
const MOST_PIECES = 100_000;

/**
 * The share of what is bought that gets to the plate, at the least, so often, of so many pieces of one cook: the variance
 * is what the pieces share plus that of a piece over their number. For somebody unknown by the normal, whose effect is
 * then drawn from the members'; for a member with pieces by t with one less than there are members.
 * @param loss of the share that does not get to the plate, on the logit scale, as `expectation` tells it
 * @example lowYield({ centre: 0.16, sharedVariance: 0.01, pieceVariance: 0.02, df: 8, known: false }, 1) // 0.406
 */
export function lowYield(
  { centre, sharedVariance, pieceVariance, df, known }: Expectation,
  pieces: number,
  level = LEVEL,
): number {
  const far = known ? studentT(level, df) : standardNormal(level);
  const lost = centre + far * Math.sqrt(sharedVariance + pieceVariance / pieces);
  return 1 / (1 + Math.exp(lost));
}

/** What to buy, in the unit of the need. */
export interface ToBuy {
  /** Whole pieces of the usual weight. */
  pieces: number;
  buy: number;
  /** The low yield that it was reckoned with. */
  low: number;
}

/**
 * The fewest whole pieces of the usual weight that are enough, and what of them is needed: the smallest k with
 * need / low(k) <= k * usual, and need / low(k). More pieces are surer of their mean, so the low yield rises with k.
 * @param need above 0; `usual` the weight of a piece in the same unit, above 0
 * @param low the low yield of so many pieces, between 0 and 1
 * @example piecesToBuy(13.3, 13, () => 0.45) // { pieces: 3, buy: 29.6, low: 0.45 }
 */
export function piecesToBuy(need: number, usual: number, low: (pieces: number) => number): ToBuy {
  for (let pieces = Math.max(1, Math.floor(need / usual)); pieces < MOST_PIECES; pieces++) {
    const yields = low(pieces);
    const buy = need / yields;
    if (buy <= pieces * usual) return { pieces, buy, low: yields };
  }
  throw new RangeError('no number of pieces is enough');
}
