/** Members who differ: a model with a level of its own for each member, drawn towards the common one. */
import { at, dot } from './matrix.ts';
import { type MixedSums, mixedSums, type Observations } from './mixed-sums.ts';
import { type Likelihood, likelihoodAt, shrink, slopeAt } from './restricted-likelihood.ts';

export interface MemberEffect {
  pieces: number;
  /** How far the member is from the common level, drawn in; in the unit of the response. */
  effect: number;
  /** The totals of the centred columns. */
  columns: Float64Array;
}

export interface RandomIntercept {
  count: number;
  /** The variance between members over that of single pieces. */
  ratio: number;
  memberVariance: number;
  pieceVariance: number;
  /** Of the centred columns: first the response at the columns' means, the typical one. */
  coefficients: Float64Array;
  /** Width x width, of the coefficients. */
  covariance: Float64Array;
  /** By column what was taken off it: 0 for the intercept, else its mean. */
  columnMeans: Float64Array;
  /** By the code of a member that has pieces. */
  members: ReadonlyMap<number, MemberEffect>;
  /** Restricted, without the penalty. */
  logLikelihood: number;
}

/** The first and last ratio looked at are 10^-5 and 10^3. */
const GRID = Array.from({ length: 41 }, (_, step) => 10 ** (-5 + 0.2 * step));
const STEP = 10 ** 0.2;
/** From either end of the grid as far as a double reasonably goes. */
const MOST_STEPS = 100;

/**
 * The random-intercept model response = X b + u(member) + e by restricted maximum likelihood, with a penalty that keeps
 * the members' variance off 0: -ln(ratio) on the deviance, a gamma(2, 0) prior on the ratio of the standard deviations
 * (Chung, Rabe-Hesketh, Dorie, Gelman & Liu, "A Nondegenerate Penalized Likelihood Estimator for Variance Parameters in
 * Multilevel Models", Psychometrika 78:685, 2013). Null where the columns repeat each other or leave nothing over.
 * @param penalise false for plain REML, in which the ratio may be 0
 * @example randomIntercept(dyestuff, { penalise: false }) // memberVariance 1764.05, pieceVariance 2451.25
 */
export function randomIntercept(
  observations: Observations,
  { penalise = true }: { penalise?: boolean } = {},
): RandomIntercept | null {
  return fitTo(mixedSums(observations), penalise);
}

/** As `randomIntercept`, from sums that are there already. */
export function fitTo(sums: MixedSums, penalise = true): RandomIntercept | null {
  if (sums.count <= sums.width) return null;
  const ratio = bestRatio(sums, penalise);
  const best = likelihoodAt(sums, ratio);
  if (best === null) return null;
  const pieceVariance = best.variance;
  const coefficients = best.coefficients.slice();
  coefficients[0] = at(coefficients, 0) + sums.responseMean;
  return {
    count: sums.count,
    ratio,
    memberVariance: ratio * pieceVariance,
    pieceVariance,
    coefficients,
    covariance: best.inverse.map((value) => value * pieceVariance),
    columnMeans: sums.columnMeans,
    members: effectsOf(sums, ratio, best),
    logLikelihood: -best.deviance / 2,
  };
}

function effectsOf({ members }: MixedSums, ratio: number, { coefficients }: Likelihood) {
  const effects = new Map<number, MemberEffect>();
  for (const [code, { pieces, response, columns }] of members) {
    const left = response - dot(columns, coefficients);
    effects.set(code, { pieces, effect: ratio * shrink(pieces, ratio) * left, columns });
  }
  return effects;
}

/** The lowest point of a grid, made exact where the slope is 0. */
function bestRatio(sums: MixedSums, penalise: boolean): number {
  const height = (ratio: number) =>
    (likelihoodAt(sums, ratio)?.deviance ?? Number.POSITIVE_INFINITY) - (penalise ? Math.log(ratio) : 0);
  const slope = (ratio: number) => {
    const found = likelihoodAt(sums, ratio);
    return found === null ? 0 : slopeAt(sums, ratio, found) - (penalise ? 1 / ratio : 0);
  };

  let best = penalise ? at(GRID, 0) : 0;
  let least = height(best);
  for (const ratio of GRID) {
    const here = height(ratio);
    if (here >= least) continue;
    best = ratio;
    least = here;
  }
  if (best === 0) return 0;
  const sign = Math.sign(slope(best));
  if (sign === 0) return best;
  // Downhill from the best point to where it rises again: one step, more only beyond the ends of the grid.
  let far = best;
  for (let step = 0; step < MOST_STEPS; step++) {
    const before = far;
    far = sign > 0 ? far / STEP : far * STEP;
    if (Math.sign(slope(far)) !== sign)
      return zeroBetween(slope, Math.min(before, far), Math.max(before, far));
  }
  return best;
}

/** Halves a range, on the scale of logarithms, at whose low end the slope falls and at whose high end it rises. */
function zeroBetween(slope: (ratio: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (;;) {
    const middle = Math.sqrt(low * high);
    if (!(low < middle && middle < high)) return middle;
    if (slope(middle) > 0) high = middle;
    else low = middle;
  }
}
