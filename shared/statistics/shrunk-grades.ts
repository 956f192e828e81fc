/** What a grade adds, drawn towards nothing: for a choice that costs money, an unsteady difference is worth little. */
import { cholesky, inverse, solve } from './cholesky.ts';
import { at, timesVector } from './matrix.ts';
import type { MemberEffect, RandomIntercept } from './random-intercept.ts';
import { shrink } from './restricted-likelihood.ts';
import type { ShareModel } from './share-model.ts';

/** How far grades are thought to be apart before any piece is weighed: two points of a share of a quarter. */
const SPREAD = 0.1;
/** Every grade is told from the same one, so that any two of them have half of their spread in common. */
const IN_COMMON = 0.5;

/**
 * The same model with its grades' coefficients under a normal prior of mean 0 (Lindley & Smith, "Bayes Estimates for the
 * Linear Model", Journal of the Royal Statistical Society B 34:1, 1972): where V is the covariance of the grades'
 * columns and P the prior's, theirs becomes V_s = (V^-1 + P^-1)^-1 and the coefficients V_s V^-1 b. The intercept and the
 * members' effects go along. A model without grades is returned as it is.
 * @param spread the prior's standard deviation of one column, on the logit scale
 * @example shrinkGrades(model).fit.coefficients // after the first nearer to 0 than the model's
 */
export function shrinkGrades(model: ShareModel, spread = SPREAD): ShareModel {
  const { fit, grades } = model;
  const width = fit.coefficients.length;
  if (grades.length === 0) return model;
  const before = invert(fit.covariance, width);
  const prior = invert(priorOf(width - 1, spread), width - 1);
  if (before === null || prior === null) return model;
  const sharper = before.slice();
  for (let row = 1; row < width; row++) {
    for (let column = 1; column < width; column++) {
      const place = row * width + column;
      sharper[place] = at(sharper, place) + at(prior, (row - 1) * (width - 1) + column - 1);
    }
  }
  const root = cholesky(sharper, width);
  if (root === null) return model;
  const coefficients = solve(root, timesVector(before, fit.coefficients));
  return {
    ...model,
    fit: { ...fit, coefficients, covariance: inverse(root, width), members: moved(fit, coefficients) },
  };
}

function invert(matrix: Float64Array, size: number): Float64Array | null {
  const root = cholesky(matrix, size);
  return root === null ? null : inverse(root, size);
}

const priorOf = (size: number, spread: number): Float64Array =>
  Float64Array.from(
    { length: size * size },
    (_, place) => spread ** 2 * (Math.floor(place / size) === place % size ? 1 : IN_COMMON),
  );

/** What the columns now leave to each member. */
function moved(fit: RandomIntercept, coefficients: Float64Array): ReadonlyMap<number, MemberEffect> {
  const change = coefficients.map((value, column) => value - at(fit.coefficients, column));
  return new Map(
    [...fit.members].map(([code, member]) => {
      let taken = 0;
      member.columns.forEach((sum, column) => {
        taken += sum * at(change, column);
      });
      const effect = member.effect - fit.ratio * shrink(member.pieces, fit.ratio) * taken;
      return [code, { ...member, effect }] as const;
    }),
  );
}
