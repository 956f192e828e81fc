/** The averages of a group of pieces: three that answer different questions, and the spread around them. */
import { quantile } from './quantile.ts';

/** Pieces of one group: a loss out of a base weight each, and whose they are. */
export interface Group {
  /** Grams, above 0. */
  base: ArrayLike<number>;
  /** Grams. Rows that gained (below 0) are left out and counted. */
  loss: ArrayLike<number>;
  /** A number for each member. */
  member: ArrayLike<number>;
}

export interface Averages {
  pieces: number;
  members: number;
  /** Rows left out because they gained weight. */
  gained: number;
  /** Off the average piece: the mean of the pieces' shares. Each piece counts once. */
  meanShare: number | null;
  /** Of every 100 lb bought: total loss over total base. Each pound counts once. */
  pooledShare: number | null;
  /** The average member: the mean of the members' means. Each member counts once. */
  memberMean: number | null;
  median: number | null;
  lowerQuartile: number | null;
  upperQuartile: number | null;
  /** Of the shares, with n - 1; null below two pieces. */
  standardDeviation: number | null;
}

/**
 * Averages of the shares loss / base. The mean of ratios and the ratio of means are both kept, both named:
 * Hartley & Ross, "Unbiased Ratio Estimators", Nature 174:270 (1954).
 * @example 15.6 lb with 3.06 lb off and 19.58 lb with 3.45 lb off: meanShare 0.186, pooledShare 0.185
 */
export function averages({ base, loss, member }: Group): Averages {
  const shares: number[] = [];
  const byMember = new Map<number, { sum: number; count: number }>();
  let totalBase = 0;
  let totalLoss = 0;
  for (let row = 0; row < base.length; row++) {
    const weight = base[row] ?? 0;
    const lost = loss[row] ?? 0;
    if (lost < 0) continue;
    shares.push(lost / weight);
    totalBase += weight;
    totalLoss += lost;
    const own = byMember.get(member[row] ?? -1) ?? { sum: 0, count: 0 };
    byMember.set(member[row] ?? -1, { sum: own.sum + lost / weight, count: own.count + 1 });
  }
  const sorted = Float64Array.from(shares).sort();
  const some = shares.length > 0;
  const mean = some ? sum(shares) / shares.length : null;
  const memberMeans = [...byMember.values()].map((own) => own.sum / own.count);
  return {
    pieces: shares.length,
    members: byMember.size,
    gained: base.length - shares.length,
    meanShare: mean,
    pooledShare: some ? totalLoss / totalBase : null,
    memberMean: some ? sum(memberMeans) / memberMeans.length : null,
    median: some ? quantile(sorted, 0.5) : null,
    lowerQuartile: some ? quantile(sorted, 0.25) : null,
    upperQuartile: some ? quantile(sorted, 0.75) : null,
    standardDeviation: mean === null ? null : standardDeviation(shares, mean),
  };
}

function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

/** Around a mean that is taken off first, so that large values keep their digits. */
function standardDeviation(values: readonly number[], mean: number): number | null {
  if (values.length < 2) return null;
  const squares = sum(values.map((value) => (value - mean) ** 2));
  return Math.sqrt(squares / (values.length - 1));
}
