/** Why it may look otherwise when all pieces are lumped together. To explain, never to settle anything. */
import { twoSided } from './distributions.ts';
import { addTo, at } from './matrix.ts';
import { median } from './median.ts';
import { byRow, type Codes, lostShares, numbered, type Rows } from './rows.ts';
import { intervalOf, withinContrasts } from './within-contrast.ts';
import { withinMember } from './within-member.ts';

export interface LumpedLook {
  /** Share for one unit of weight more, over all pieces as if one person had cooked them; null for equal weights. */
  slope: number | null;
  /** Its error as a textbook has it, too small where members differ; null below three pieces. For comparison only. */
  naiveStandardError: number | null;
  /** Mean share of the pieces above the median weight minus that of the rest; null where there is none above. */
  bigMinusSmall: number | null;
  /** The slope of the members' mean shares on their mean weights; null where these do not differ. */
  betweenMemberSlope: number | null;
}

/**
 * What the pieces seem to say when it does not matter whose they are: within and between members mixed up (Simpson 1951;
 * Mundlak 1978).
 * @example
 * // pieces of 10 and 12 lb with shares of 0.2 and 0.3: slope 0.05 a pound, bigMinusSmall 0.1
 */
export function lumpedLook(rows: Rows): LumpedLook {
  const shares = lostShares(rows);
  const lumped = slopeOf(rows.base, shares);
  const { weights, means } = memberMeans(rows, shares);
  return {
    slope: lumped?.slope ?? null,
    naiveStandardError: lumped?.standardError ?? null,
    bigMinusSmall: medianSplit(rows.base, shares),
    betweenMemberSlope: slopeOf(weights, means)?.slope ?? null,
  };
}

/**
 * Whether lumping tells another story than the comparison of everyone with themself: another sign, or more than the
 * margin apart.
 * @param difference between the ends of the usual range
 * @param lumpedSlope for one unit of weight
 * @param width of the usual range, in that unit
 * @example looksOtherwise(-0.0013, 0.006, 6.8, 0.01) // true
 */
export function looksOtherwise(
  difference: number,
  lumpedSlope: number,
  width: number,
  margin: number,
): boolean {
  const lumped = lumpedSlope * width;
  return difference * lumped < 0 || Math.abs(difference - lumped) > margin;
}

export interface LogSlope {
  /** 1 means that the share is the same at every size; null where nobody has both. */
  slope: number | null;
  /** These are null where no interval may be shown. At level 0.95. */
  low: number | null;
  high: number | null;
  standardError: number | null;
  df: number | null;
  /** Of the distance from 1. */
  t: number | null;
  p: number | null;
}

/**
 * The slope of the logarithm of the loss on that of the weight (allometry: Huxley 1932), within members, on request. The
 * same data and the same trouble with scales as the question itself: no second opinion. Null where nothing came off some
 * piece.
 * @example
 * // the ordinary club of the checks: 1.051, 0.914 to 1.188
 */
export function logSlope(rows: Rows, factors: readonly Codes[]): LogSlope | null {
  const { count, member } = rows;
  const logarithms = (of: ArrayLike<number>) => byRow(count, (row) => Math.log(of[row] ?? 0));
  const [measured, response] = [logarithms(rows.base), logarithms(rows.loss)];
  if (!response.every(Number.isFinite)) return null;
  const fit = withinMember({ count, member, response, measured, factors });
  const [found] = withinContrasts(fit, [{ of: 0 }]);
  const shown = found === undefined ? null : intervalOf(found, 0.95);
  if (shown === null) {
    const nothing = { low: null, high: null, standardError: null, df: null, t: null, p: null };
    return { slope: found?.estimate ?? null, ...nothing };
  }
  const { estimate, low, high, standardError, df } = shown;
  const t = (estimate - 1) / standardError;
  return { slope: estimate, low, high, standardError, df, t, p: twoSided(t, df) };
}

/** Least squares with one line; null where the weights do not differ. */
function slopeOf(weights: ArrayLike<number>, shares: ArrayLike<number>) {
  const count = weights.length;
  const [weight, share] = [mean(weights), mean(shares)];
  let [squares, products, total] = [0, 0, 0];
  for (let row = 0; row < count; row++) {
    const [x, y] = [(weights[row] ?? 0) - weight, (shares[row] ?? 0) - share];
    squares += x * x;
    products += x * y;
    total += y * y;
  }
  if (!(squares > 1e-20 * count * weight * weight)) return null;
  const slope = products / squares;
  const left = Math.max(0, total - slope * products);
  return { slope, standardError: count < 3 ? null : Math.sqrt(left / (count - 2) / squares) };
}

function medianSplit(weights: ArrayLike<number>, shares: ArrayLike<number>): number | null {
  if (weights.length === 0) return null;
  const middle = median(new Float64Array(weights));
  const [big, small] = [
    { pieces: 0, shares: 0 },
    { pieces: 0, shares: 0 },
  ];
  for (let row = 0; row < weights.length; row++) {
    const side = (weights[row] ?? 0) > middle ? big : small;
    side.pieces += 1;
    side.shares += shares[row] ?? 0;
  }
  return big.pieces === 0 ? null : big.shares / big.pieces - small.shares / small.pieces;
}

function memberMeans({ count, base, member }: Rows, shares: ArrayLike<number>) {
  const { of, codes } = numbered({ count, member });
  const pieces = new Float64Array(codes.length);
  const [weights, means] = [new Float64Array(codes.length), new Float64Array(codes.length)];
  for (let row = 0; row < count; row++) {
    const own = of[row] ?? 0;
    addTo(pieces, own, 1);
    addTo(weights, own, base[row] ?? 0);
    addTo(means, own, shares[row] ?? 0);
  }
  pieces.forEach((count, own) => {
    weights[own] = at(weights, own) / count;
    means[own] = at(means, own) / count;
  });
  return { weights, means };
}

function mean(values: ArrayLike<number>): number {
  let total = 0;
  for (let place = 0; place < values.length; place++) total += values[place] ?? 0;
  return total / values.length;
}
