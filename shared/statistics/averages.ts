/** The averages of a group of pieces: three that answer different questions, and the spread around them. */
import { averageIntervals } from './cluster-interval.ts';
import { quantile } from './quantile.ts';
import { lostShares, numbered, type Rows } from './rows.ts';

export interface Averages {
  pieces: number;
  members: number;
  /** Off the average piece: the mean of the pieces' shares. Each piece counts once. */
  meanShare: number | null;
  /** The range of each average: right 19 times in 20. Null for one member's pieces. */
  meanLow: number | null;
  meanHigh: number | null;
  meanDf: number | null;
  /** Of every 100 lb bought: total loss over total base. Each pound counts once. */
  pooledShare: number | null;
  pooledLow: number | null;
  pooledHigh: number | null;
  pooledDf: number | null;
  /** The average member: the mean of the members' means. Each member counts once. */
  memberMean: number | null;
  memberLow: number | null;
  memberHigh: number | null;
  median: number | null;
  lowerQuartile: number | null;
  upperQuartile: number | null;
  /** Of the shares, with n - 1; null below two pieces. */
  standardDeviation: number | null;
}

/** 19 times in 20. */
const LEVEL = 0.95;

/**
 * Averages of the shares loss / base, with their ranges. The mean of ratios and the ratio of means are both kept, both
 * named: Hartley & Ross, "Unbiased Ratio Estimators", Nature 174:270 (1954).
 * @example 15.6 lb with 3.06 lb off and 19.58 lb with 3.45 lb off: meanShare 0.186, pooledShare 0.185
 */
export function averages(rows: Rows): Averages {
  const shares = lostShares(rows).sort();
  const some = shares.length > 0;
  const { meanShare: mean, pooledShare: pooled, memberMean: member } = averageIntervals(rows, LEVEL);
  return {
    pieces: rows.count,
    members: numbered(rows).codes.length,
    meanShare: mean.estimate,
    meanLow: mean.low,
    meanHigh: mean.high,
    meanDf: mean.df,
    pooledShare: pooled.estimate,
    pooledLow: pooled.low,
    pooledHigh: pooled.high,
    pooledDf: pooled.df,
    memberMean: member.estimate,
    memberLow: member.low,
    memberHigh: member.high,
    median: some ? quantile(shares, 0.5) : null,
    lowerQuartile: some ? quantile(shares, 0.25) : null,
    upperQuartile: some ? quantile(shares, 0.75) : null,
    standardDeviation: mean.estimate === null ? null : standardDeviation(shares, mean.estimate),
  };
}

/** Around a mean that is taken off first, so that large values keep their digits. */
function standardDeviation(values: Float64Array, mean: number): number | null {
  if (values.length < 2) return null;
  let squares = 0;
  for (const value of values) squares += (value - mean) ** 2;
  return Math.sqrt(squares / (values.length - 1));
}
