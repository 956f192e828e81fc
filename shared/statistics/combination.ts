/** Combinations of coefficients and members' effects: what a fitted model says of someone or something. */
import { at, dot } from './matrix.ts';
import type { RandomIntercept } from './random-intercept.ts';
import { quadratic, shrink } from './restricted-likelihood.ts';

export interface Combination {
  estimate: number;
  variance: number;
}

/**
 * Any combination x'b + sum l u of coefficients and members' effects: its estimate, and its variance given the variances
 * (the prediction variance of mixed-model equations; Henderson, Biometrics 31:423, 1975).
 * @param point x by centred column; leave it out for 0, a comparison of members alone
 * @param weights l by member's code; a member without pieces has effect 0 and the whole variance between members
 * @example combination(fit, pointAt(fit), new Map([[7, 1]])) // member 7's level where the columns are typical
 */
export function combination(
  fit: RandomIntercept,
  point: ArrayLike<number> = new Float64Array(fit.coefficients.length),
  weights: ReadonlyMap<number, number> = new Map(),
): Combination {
  const left = Float64Array.from(point);
  let estimate = dot(point, fit.coefficients);
  let variance = 0;
  for (const [code, weight] of weights) {
    const member = fit.members.get(code);
    const part = shrink(member?.pieces ?? 0, fit.ratio);
    variance += weight ** 2 * fit.memberVariance * part;
    if (member === undefined) continue;
    estimate += weight * member.effect;
    member.columns.forEach((sum, column) => {
      left[column] = at(left, column) - weight * fit.ratio * part * sum;
    });
  }
  return { estimate, variance: variance + quadratic(fit.covariance, left) };
}

/**
 * A point in centred columns: the intercept, and these values of the other columns; their means where none are given.
 * @example pointAt(fit) // [1, 0, 0]
 */
export const pointAt = ({ columnMeans }: RandomIntercept, values?: ArrayLike<number>): Float64Array =>
  columnMeans.map((mean, column) => {
    if (column === 0) return 1;
    return values === undefined ? 0 : at(values, column - 1) - mean;
  });
