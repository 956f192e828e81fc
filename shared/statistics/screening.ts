/** Which pieces are counted: a joint distance of share and weight from what is usual in the club. */
import { median } from './median.ts';
import { byRow, type Rows } from './rows.ts';

/**
 * `invalid`: a weight that is none, or a loss below 0 or not below its base. `no_trim`: nothing came off, so there is no
 * share to compare. `flagged`: unusual, out of every figure until it is confirmed. `ok`: counted.
 */
export type Status = 'invalid' | 'no_trim' | 'ok' | 'flagged';

/** The middle of a variable and its robust spread, both on its logarithmic scale. */
export interface Usual {
  median: number;
  scale: number;
}

/** What is usual of the pieces of a cut: ln(loss / kept), and ln(base) in the rows' own unit. */
export interface UsualPiece {
  logitShare: Usual;
  lnBase: Usual;
  /** A squared distance above it is unusual. */
  threshold: number;
}

export interface Screening {
  /** By row. */
  status: Status[];
  /** By row: the squared distance from the usual piece; 0 where there is none to tell. */
  distances: Float64Array;
  /** Rows that are neither invalid nor without loss: those that the usual piece is read from. */
  valid: number;
  /** Null below 12 valid rows: too few to call any of them unusual. */
  usual: UsualPiece | null;
}

/** With fewer rows nothing is flagged. */
export const FEWEST_TO_SCREEN = 12;

/** A normal's standard deviation over its median absolute deviation, and over its mean absolute deviation. */
const PER_MEDIAN_DEVIATION = 1.482602218505602;
const PER_MEAN_DEVIATION = 1.2533141373155001;
/** The smallest spreads: a club of copies must not flag the first honest piece. */
const LEAST_LOGIT_SCALE = 0.05;
const LEAST_BASE_SCALE = 0.02;

/**
 * Screens the rows of one cut by their robust distance on (logit share, ln weight) together: on the share alone a weight
 * typed in the wrong unit passes. Medians and median absolute deviations after Hampel, "The influence curve and its role
 * in robust estimation", JASA 69:383 (1974). The unit of the weights does not matter.
 * @param confirmed by row: 1 or true where the poster stands by it; such a row is never flagged
 * @example 15 lb pieces that lose about a quarter, and one of 6.8 lb in kilos that lost 3.75: that one is flagged
 */
export function screen(rows: Rows, confirmed: ArrayLike<number | boolean> = []): Screening {
  const { count, base, loss } = rows;
  const status: Status[] = [];
  const places: number[] = [];
  for (let row = 0; row < count; row++) {
    const own = domain(base[row] ?? 0, loss[row] ?? 0);
    status.push(own);
    if (own === 'ok') places.push(row);
  }
  const distances = new Float64Array(count);
  if (places.length < FEWEST_TO_SCREEN) return { status, distances, valid: places.length, usual: null };

  const shares = new Float64Array(places.length);
  const weights = new Float64Array(places.length);
  places.forEach((row, index) => {
    const weight = base[row] ?? 0;
    shares[index] = logitShare(weight, loss[row] ?? 0);
    weights[index] = Math.log(weight);
  });
  const usual = usualPiece(shares, weights);
  places.forEach((row, index) => {
    const squared = squaredDistance(usual, shares[index] ?? 0, weights[index] ?? 0);
    distances[row] = squared;
    if (squared > usual.threshold && !confirmed[row]) status[row] = 'flagged';
  });
  return { status, distances, valid: places.length, usual };
}

/**
 * The places of the rows that are counted, in posting order.
 * @example cleanRows({ count: 2, base: [10, 10], loss: [2, 0], member: [0, 0] }) // [0]
 */
export function cleanRows(rows: Rows, confirmed: ArrayLike<number | boolean> = []): number[] {
  const places: number[] = [];
  screen(rows, confirmed).status.forEach((own, row) => {
    if (own === 'ok') places.push(row);
  });
  return places;
}

/**
 * The squared distance of a piece from the usual one: of each variable how many spreads it is off, squared and added.
 * @example distanceFrom(usual, base, loss) // 37.6, where 12.9 is the threshold
 */
export const distanceFrom = (usual: UsualPiece, base: number, loss: number): number =>
  squaredDistance(usual, logitShare(base, loss), Math.log(base));

/**
 * `distanceFrom` of a piece whose logarithms are known.
 * @example squaredDistance(usual, usual.logitShare.median, usual.lnBase.median) // 0
 */
export const squaredDistance = (usual: UsualPiece, logitShare: number, lnBase: number): number =>
  off(logitShare, usual.logitShare) + off(lnBase, usual.lnBase);

/**
 * What is usual of valid pieces.
 * @param logitShares of each, as `logitShare` has it; at least one
 * @param lnBases of each, ln(base)
 * @example
 * // of 20 pieces the threshold is 17
 */
export const usualPiece = (logitShares: Float64Array, lnBases: Float64Array): UsualPiece => ({
  logitShare: usualOf(logitShares, LEAST_LOGIT_SCALE),
  lnBase: usualOf(lnBases, LEAST_BASE_SCALE),
  threshold: 12 + 100 / logitShares.length,
});

/**
 * ln(p / (1 - p)) of the share p = loss / base, for 0 < loss < base.
 * @example logitShare(15, 3.75) // -1.0986
 */
export const logitShare = (base: number, loss: number): number => Math.log(loss) - Math.log(base - loss);

function domain(base: number, loss: number): Status {
  if (!(Number.isFinite(base) && Number.isFinite(loss))) return 'invalid';
  if (base <= 0 || loss < 0 || loss >= base) return 'invalid';
  return loss === 0 ? 'no_trim' : 'ok';
}

/** How many spreads from the middle, squared. */
const off = (value: number, { median, scale }: Usual): number => ((value - median) / scale) ** 2;

/** Where half of the values are equal the median deviation is 0, and the mean deviation steps in. */
function usualOf(values: Float64Array, least: number): Usual {
  const middle = median(values.slice());
  const deviations = deviationsFrom(middle, values);
  const byMedian = PER_MEDIAN_DEVIATION * median(deviations);
  // Summed in rising order, so that the order of the rows does not matter.
  const scale = byMedian > 0 ? byMedian : (PER_MEAN_DEVIATION * sum(deviations.sort())) / deviations.length;
  return { median: middle, scale: Math.max(scale, least) };
}

/**
 * How far each value is from a middle.
 * @example deviationsFrom(3, Float64Array.of(1, 4)) // [2, 1]
 */
export const deviationsFrom = (middle: number, values: Float64Array): Float64Array =>
  byRow(values.length, (row) => Math.abs((values[row] ?? 0) - middle));

function sum(values: Float64Array): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
