/** What scales alone could do to "bigger pieces lose less": the weight is on both sides of that question. */
import { type Verdict, verdictOf } from './verdict.ts';

/** A difference with the ends of its interval. */
export interface Interval {
  estimate: number;
  low: number;
  high: number;
}

export interface ScaleError {
  /** By what part weighing errors shrink a true difference. At 0.9 or more nothing can be said. */
  shrinkage: number;
  /** The difference that weighing errors alone produce. */
  spurious: number;
  /** The difference without both; null where nothing can be said. */
  corrected: Interval | null;
  verdict: Verdict;
  /** The relative weighing error that would explain the whole difference away; null for one that it cannot. */
  toExplain: number | null;
}

export interface Weighed {
  count: number;
  /** Relative weighing error: one standard deviation, e.g. 0.02. */
  scaleError: number;
  /** 1 / the difference's variance for noise of variance 1: what remains of the weights' squares. */
  spread: number;
  /** The degrees of freedom of what remains of the weights. */
  spreadDf: number;
  /** Sum of squares of the weights, in usual ranges. */
  squares: number;
  /** Sum of the products of shares and weights. */
  withShares: number;
}

const NOTHING_LEFT = 0.9;

/**
 * Takes out of a difference what errors in the weights put in, as they stand in the share's base and in the measured
 * weight alike (errors in variables: Fuller 1987; ratios with a common part: Pearson 1897).
 * @param margin as of the verdict
 * @example
 * // the ordinary club of the checks: shrinkage 0.012, spurious -0.0017, 0.0067 corrected to 0.0085
 */
export function scaleError(found: Interval, margin: number, weighed: Weighed): ScaleError {
  const { count, spread, spreadDf, squares, withShares } = weighed;
  const variance = weighed.scaleError ** 2;
  const perVariance = spreadDf / count / spread;
  const shrinkage = variance * perVariance * squares;
  const spurious = -variance * perVariance * withShares;
  const explained = found.estimate / (-perVariance * withShares);
  const toExplain = found.estimate < 0 && Number.isFinite(explained) ? Math.sqrt(explained) : null;
  if (shrinkage >= NOTHING_LEFT) return { shrinkage, spurious, corrected: null, verdict: 'open', toExplain };
  const correct = (value: number) => (value - spurious) / (1 - shrinkage);
  const corrected = {
    estimate: correct(found.estimate),
    low: correct(found.low),
    high: correct(found.high),
  };
  const verdict = verdictOf(corrected.low, corrected.high, margin);
  return { shrinkage, spurious, corrected, verdict, toExplain };
}
