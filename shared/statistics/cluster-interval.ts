/** An average of pieces that come in members, with the range that the members' differences leave open. */
import { studentT } from './distributions.ts';
import { addTo, at } from './matrix.ts';
import { numbered, type Rows } from './rows.ts';

export interface ClusterEstimate {
  /** Null without any weight. */
  estimate: number | null;
  /** How many members have a weight above 0. */
  members: number;
  /** Null, like all that follow, where one member has all the weight: a range needs two. */
  standardError: number | null;
  /** A real number, not below 1. */
  df: number | null;
  low: number | null;
  high: number | null;
}

/**
 * The ratio of two totals of independent members, sum b / sum s, with the cluster-robust variance CR2 and Satterthwaite
 * degrees of freedom (Bell & McCaffrey, "Bias Reduction in Standard Errors for Linear Regression with Multi-Stage
 * Samples", Survey Methodology 28:169, 2002), which for one parameter are these few sums.
 * @param weights by member, s: 0 or more
 * @param totals by member, b
 * @param level how often such ranges hold the truth, between 0 and 1
 * @example clusterInterval([1, 1], [0.2, 0.3]) // estimate 0.25, standardError 0.05, df 1, -0.385 to 0.885
 */
export function clusterInterval(
  weights: ArrayLike<number>,
  totals: ArrayLike<number>,
  level = 0.95,
): ClusterEstimate {
  const all = total(weights);
  const members = Array.from(weights).filter((weight) => weight > 0).length;
  const none = { members, standardError: null, df: null, low: null, high: null };
  if (!(all > 0)) return { estimate: null, ...none };
  const estimate = total(totals) / all;

  let variance = 0;
  let ratioSquares = 0;
  let leverages = 0;
  let leverageProducts = 0;
  for (let member = 0; member < weights.length; member++) {
    const weight = at(weights, member);
    const ratio = weight / all;
    const others = (all - weight) / all;
    const leverage = ratio ** 2 / others;
    variance += (at(totals, member) - estimate * weight) ** 2 / others / all ** 2;
    ratioSquares += ratio ** 2;
    // Of pairs of members: (sum)^2 - sum of squares, of which nothing is lost where one member has nearly all.
    leverageProducts += 2 * leverage * leverages;
    leverages += leverage;
  }
  const df = 1 / (ratioSquares + leverageProducts);
  // Not a number too where the others' weight is lost beside one member's.
  if (members < 2 || !(df > 0) || !Number.isFinite(variance)) return { estimate, ...none };
  const standardError = Math.sqrt(variance);
  const reach = studentT((1 + level) / 2, df) * standardError;
  return { estimate, members, standardError, df, low: estimate - reach, high: estimate + reach };
}

export interface AverageIntervals {
  /** Off the average piece: each piece counts once. */
  meanShare: ClusterEstimate;
  /** Of every 100 lb bought: each pound counts once. */
  pooledShare: ClusterEstimate;
  /** The average member: each member counts once. */
  memberMean: ClusterEstimate;
}

/**
 * The three averages of loss / base with their ranges. They answer different questions, as in `averages`.
 * @param rows the rows that count, base above 0
 * @example 10 lb with 2 lb off and 10 lb with 3 lb off, of two members: all three 0.25, df 1
 */
export function averageIntervals({ count, base, loss, member }: Rows, level = 0.95): AverageIntervals {
  const { of, codes } = numbered({ count, member });
  const sums = () => new Float64Array(codes.length);
  const [pieces, shares, bases, losses] = [sums(), sums(), sums(), sums()];
  for (let row = 0; row < count; row++) {
    const own = of[row] ?? 0;
    const [weight, lost] = [base[row] ?? 0, loss[row] ?? 0];
    addTo(pieces, own, 1);
    addTo(shares, own, lost / weight);
    addTo(bases, own, weight);
    addTo(losses, own, lost);
  }
  const means = shares.map((share, own) => share / at(pieces, own));
  return {
    meanShare: clusterInterval(pieces, shares, level),
    pooledShare: clusterInterval(bases, losses, level),
    memberMean: clusterInterval(new Float64Array(codes.length).fill(1), means, level),
  };
}

function total(values: ArrayLike<number>): number {
  let sum = 0;
  for (let place = 0; place < values.length; place++) sum += at(values, place);
  return sum;
}
