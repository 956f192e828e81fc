/** Several pieces of one buyer, not bought yet: what is expected of each, and what of the doubt they share. */
import { combination } from './combination.ts';
import { at } from './matrix.ts';
import { type Buyer, type Expectation, expectation } from './prediction.ts';
import { pointOf, type ShareModel } from './share-model.ts';

export interface JointExpectation {
  /** On the logit scale, one for each grade asked for. */
  each: readonly Expectation[];
  /** Their shared doubt, row by row: variances on the diagonal, what two have in common off it. */
  shared: Float64Array;
}

/**
 * What one buyer's pieces of several grades share: the typical level and the buyer's own, so that two pieces of one grade
 * differ by their own errors alone, and two of unlike grades by what the grades' difference is in doubt besides.
 * @param grades codes of the model's; null for one that is unknown
 * @example jointExpectation(model, [1, 1], null).shared // four times the same variance
 */
export function jointExpectation(
  model: ShareModel,
  grades: readonly (number | null)[],
  member: Buyer['member'],
): JointExpectation {
  const each = grades.map((grade) => expectation(model, { grade, member }));
  const points = grades.map((grade) => pointOf(model, grade));
  const size = grades.length;
  const shared = new Float64Array(size * size);
  points.forEach((point, row) => {
    points.forEach((other, column) => {
      const apart = point.map((value, place) => value - at(other, place));
      const both = (each[row]?.sharedVariance ?? 0) + (each[column]?.sharedVariance ?? 0);
      // var(a - b) = var(a) + var(b) - 2 cov(a, b)
      shared[row * size + column] = (both - combination(model.fit, apart).variance) / 2;
    });
  });
  return { each, shared };
}
