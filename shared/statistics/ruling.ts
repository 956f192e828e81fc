/** Which pieces a ruling is about, so that people who look after every piece are not misled by the luck of the day. */
import { at } from './matrix.ts';
import { quantile } from './quantile.ts';
import type { Rows } from './rows.ts';
import { logitShare, type Screening, screen, type Usual } from './screening.ts';

/** Rulings fall due at so many counted pieces, and at every doubling. */
const FIRST_CHECKPOINT = 25;

export interface Ruled {
  /** The rows that the ruling is about, in posting order. */
  places: number[];
  /** How many counted pieces it was due at; there can be more. */
  checkpoint: number;
  /** At how many the next is due. */
  nextAt: number;
}

/**
 * How many counted pieces the next ruling after one at `checkpoint` needs; the first for 0.
 * @example [nextCheckpoint(0), nextCheckpoint(25)] // [25, 50]
 */
export const nextCheckpoint = (checkpoint: number): number => Math.max(FIRST_CHECKPOINT, 2 * checkpoint);

/**
 * The rows of the latest ruling due: of the shortest beginning of the posted pieces whose own screening leaves enough of
 * them (25, 50, 100, ...) those that it leaves. Later pieces cannot move it; a correction, a confirmation or an erasure
 * of an old one can. Looking seldom and asking 99 in 100 keeps the lifetime chance of a wrong ruling near that of one look
 * (repeated significance tests: Armitage, McPherson & Rowe 1969). Null before the first.
 * @param confirmed by row: true where the poster stands by an unusual piece
 * @example
 * // 40 pieces, none of them unusual: the first 25, checkpoint 25, nextAt 50
 */
export function ruledRows(rows: Rows, confirmed: ArrayLike<number | boolean> = []): Ruled | null {
  const posted = postedPieces(rows, confirmed);
  let checkpoint = FIRST_CHECKPOINT;
  while (nextCheckpoint(checkpoint) <= posted.count) checkpoint = nextCheckpoint(checkpoint);
  for (; checkpoint >= FIRST_CHECKPOINT; checkpoint /= 2) {
    const clean = shortestBeginning(posted, checkpoint);
    if (clean === null) continue;
    return { places: clean.map((place) => at(posted.places, place)), checkpoint, nextAt: 2 * checkpoint };
  }
  return null;
}

/** Pieces with a share, and the two variables that screening looks at. */
interface Posted {
  count: number;
  /** Where they are in the rows that were asked about. */
  places: readonly number[];
  base: Float64Array;
  loss: Float64Array;
  confirmed: Uint8Array;
  logitShares: Float64Array;
  lnBases: Float64Array;
}

function postedPieces({ count, base, loss }: Rows, confirmed: ArrayLike<number | boolean>): Posted {
  const places: number[] = [];
  for (let row = 0; row < count; row++) {
    const share = at(loss, row) / at(base, row);
    if (at(base, row) > 0 && share > 0 && share < 1) places.push(row);
  }
  const bases = Float64Array.from(places, (row) => at(base, row));
  const losses = Float64Array.from(places, (row) => at(loss, row));
  return {
    count: places.length,
    places,
    base: bases,
    loss: losses,
    confirmed: Uint8Array.from(places, (row) => (confirmed[row] ? 1 : 0)),
    logitShares: bases.map((own, place) => logitShare(own, at(losses, place))),
    lnBases: bases.map(Math.log),
  };
}

/**
 * The clean places of the shortest beginning that leaves `enough`; null if none does. How many are left does not only grow
 * with length, as what is usual moves; so lengths are passed over only where enough of the pieces are unusual at every
 * one of them.
 */
function shortestBeginning(posted: Posted, enough: number): number[] | null {
  let length = enough;
  while (length <= posted.count) {
    const screened = screen(beginning(posted, length), posted.confirmed);
    const clean: number[] = [];
    screened.status.forEach((status, place) => {
      if (status === 'ok') clean.push(place);
    });
    const missing = enough - clean.length;
    if (missing <= 0) return clean;
    // At lengths below enough + sure, fewer than enough are left, as long as they are surely unusual.
    const sure = surelyFlagged(posted, length, screened, missing - 1);
    length = Math.max(length + 1, Math.min(length + missing, enough + sure));
  }
  return null;
}

const beginning = ({ base, loss }: Posted, count: number): Rows => ({
  count,
  base: base.subarray(0, count),
  loss: loss.subarray(0, count),
  member: [],
});

/** How many of the first `length` pieces stay flagged whatever the next `more` pieces are. */
function surelyFlagged(posted: Posted, length: number, { usual, status }: Screening, more: number): number {
  if (usual === null) return 0;
  const shares = reachOf(posted.logitShares.slice(0, length), usual.logitShare, more);
  const bases = reachOf(posted.lnBases.slice(0, length), usual.lnBase, more);
  let sure = 0;
  for (let place = 0; place < length; place++) {
    if (status[place] !== 'flagged') continue;
    const least =
      leastDistance(at(posted.logitShares, place), shares) + leastDistance(at(posted.lnBases, place), bases);
    // A hair's breadth for rounding. The threshold itself only sinks with more pieces.
    if (least > usual.threshold * (1 + 1e-9)) sure += 1;
  }
  return sure;
}

/** Where the median can go, and the widest that the scale can get. */
interface Reach {
  low: number;
  high: number;
  scale: number;
}

/** A median and a median deviation are order statistics: with `more` values they move by half as many ranks at most. */
function reachOf(values: Float64Array, { median, scale }: Usual, more: number): Reach {
  const middle = betweenRanks(values.sort(), more);
  const deviations = values.map((value) => Math.abs(value - median)).sort();
  const spread = quantile(deviations, 0.5);
  const shift = Math.max(middle.high - median, median - middle.low);
  const deviation = betweenRanks(deviations, more);
  // Where the median deviation can get to 0 another scale steps in, of which nothing is known.
  const widest =
    deviation.low > shift ? (scale * (deviation.high + shift)) / spread : Number.POSITIVE_INFINITY;
  return { ...middle, scale: Math.max(scale, widest) };
}

/** What the median of sorted values lies between after up to `more` further values. */
function betweenRanks(sorted: Float64Array, more: number): { low: number; high: number } {
  const low = sorted[Math.floor((sorted.length - 1 - more) / 2)] ?? Number.NEGATIVE_INFINITY;
  const high = sorted[Math.ceil((sorted.length - 1 + more) / 2)] ?? Number.POSITIVE_INFINITY;
  return { low, high };
}

const leastDistance = (value: number, { low, high, scale }: Reach): number =>
  (Math.max(0, low - value, value - high) / scale) ** 2;
