/** The restricted likelihood of a random-intercept model at one ratio of its variances. */
import { cholesky, inverse, logDeterminant, solve } from './cholesky.ts';
import { addTo, dot, timesVector } from './matrix.ts';
import type { MixedSums } from './mixed-sums.ts';

export interface Likelihood {
  /** -2 ln of the restricted likelihood (the "REML criterion"). */
  deviance: number;
  /** Of the centred columns, for a centred response. */
  coefficients: Float64Array;
  /** Width x width: the inverse of X' V^-1 X, V in units of the residual variance. */
  inverse: Float64Array;
  /** The residual variance: the weighted sum of squares that the columns leave, by its degrees of freedom. */
  variance: number;
}

/** What rounding leaves of a sum of squares that the columns explain whole. */
const NOTHING_LEFT = 1e-13;

/**
 * The restricted likelihood (REML; Patterson & Thompson, Biometrika 58:545, 1971) with the residual variance at its best
 * for this ratio. Null where the columns repeat each other or nothing is left over.
 * @param ratio the variance between members over that within, 0 or more
 * @example likelihoodAt(mixedSums(rail), 38.0604810996564) // deviance 122.177000808597
 */
export function likelihoodAt(sums: MixedSums, ratio: number): Likelihood | null {
  const { width, count, members } = sums;
  const normal = sums.products.slice();
  const right = sums.withResponse.slice();
  let squares = sums.responseSquares;
  let logs = 0;
  for (const { pieces, response, columns } of members.values()) {
    // A member's mean counts the less, the more members differ: 1 / (n (1 + n ratio)) of the total's square.
    const weight = shrink(pieces, ratio) / pieces;
    addOuter(normal, columns, weight);
    for (let place = 0; place < width; place++)
      addTo(right, place, weight * (columns[place] ?? 0) * response);
    squares += weight * response ** 2;
    logs += Math.log1p(pieces * ratio);
  }
  const root = cholesky(normal, width);
  if (root === null) return null;
  const coefficients = solve(root, right);
  const residualSquares = squares - dot(coefficients, right);
  const df = count - width;
  const variance = residualSquares / df;
  if (!(variance > 0 && residualSquares > NOTHING_LEFT * squares)) return null;
  return {
    deviance: df * (1 + Math.log(2 * Math.PI * variance)) + logs + logDeterminant(root, width),
    coefficients,
    inverse: inverse(root, width),
    variance,
  };
}

/**
 * What is left of one piece's weight among `pieces` of a member: 1 / (1 + n ratio).
 * @example shrink(4, 0.5) // 1/3
 */
export const shrink = (pieces: number, ratio: number): number => 1 / (1 + pieces * ratio);

/**
 * The slope of the deviance by the ratio: -nu sum (a r)^2 / q + sum n a - tr(A^-1 sum a^2 c c'), where a is `shrink` of
 * each member, r what the columns leave of its total, c its totals of the columns, A^-1 the inverse and q / nu the
 * residual variance.
 * @example slopeAt(sums, 38.0604810996564, likelihoodAt(sums, 38.0604810996564)) // 0 where the deviance is least
 */
export function slopeAt(
  { members, width }: MixedSums,
  ratio: number,
  { coefficients, inverse: inverted, variance }: Likelihood,
): number {
  const lost = new Float64Array(width * width);
  let pulled = 0;
  let traces = 0;
  for (const { pieces, response, columns } of members.values()) {
    const left = shrink(pieces, ratio);
    pulled += (left * (response - dot(columns, coefficients))) ** 2;
    traces += pieces * left;
    addOuter(lost, columns, left ** 2);
  }
  return traces - pulled / variance - dot(inverted, lost);
}

/** Adds weight * v v' to a square matrix. */
function addOuter(matrix: Float64Array, vector: Float64Array, weight: number): void {
  const width = vector.length;
  for (let row = 0; row < width; row++) {
    const scaled = weight * (vector[row] ?? 0);
    for (let column = 0; column < width; column++) {
      const place = row * width + column;
      matrix[place] = (matrix[place] ?? 0) + scaled * (vector[column] ?? 0);
    }
  }
}

/**
 * v' M v of a square matrix.
 * @example quadratic(Float64Array.of(2, 1, 1, 3), [1, 1]) // 7
 */
export const quadratic = (matrix: Float64Array, vector: ArrayLike<number>): number =>
  dot(timesVector(matrix, vector), vector);
