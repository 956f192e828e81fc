/** The distributions that the methods need: Student's t with any real degrees of freedom, and the normal. */
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import tCdf from '@stdlib/stats-base-dists-t-cdf';
import tQuantile from '@stdlib/stats-base-dists-t-quantile';

/** Above so many degrees of freedom t is the normal to every digit that a double has. */
const AS_NORMAL = 1e7;

/**
 * The quantile of the standard normal distribution.
 * @example standardNormal(0.975) // 1.959963984540054
 */
export const standardNormal = (p: number): number => normalQuantile(p, 0, 1);

/**
 * The quantile of t with `df` degrees of freedom (above 0, Infinity for the normal).
 * @example studentT(0.975, 4) // 2.7764451051977987
 */
export const studentT = (p: number, df: number): number =>
  df > AS_NORMAL ? standardNormal(p) : tQuantile(p, df);

/**
 * The chance of a t with `df` degrees of freedom at least as far from 0 as `t`, on either side.
 * Never 1 - cdf, which loses the small ones.
 * @example twoSided(2.7764451051977987, 4) // 0.05
 */
export const twoSided = (t: number, df: number): number => 2 * tCdf(-Math.abs(t), Math.min(df, AS_NORMAL));

/** Beyond it the normal has less than 1e-15 left, and its series many terms. */
const FAR = 8;

/**
 * The chance of a standard normal value below `z`, to 1e-15, by its series (Marsaglia, "Evaluating the Normal
 * Distribution", Journal of Statistical Software 11(4), 2004).
 * @example standardNormalBelow(1.959963984540054) // 0.975
 */
export function standardNormalBelow(z: number): number {
  if (z < -FAR) return 0;
  if (z > FAR) return 1;
  let [sum, term, before, factor] = [z, z, 0, 1];
  while (sum !== before) {
    factor += 2;
    term *= (z * z) / factor;
    before = sum;
    sum += term;
  }
  return 0.5 + (sum * Math.exp(-(z * z) / 2)) / Math.sqrt(2 * Math.PI);
}
