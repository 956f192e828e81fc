/** Which pieces a ruling is about, so that people who look after every piece are not misled by the luck of the day. */
import { at } from './matrix.ts';
import { median as medianOf, select } from './median.ts';
import type { Rows } from './rows.ts';
import {
  deviationsFrom,
  logitShare,
  squaredDistance,
  type Usual,
  type UsualPiece,
  usualPiece,
} from './screening.ts';

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
  while (nextCheckpoint(checkpoint) <= posted.places.length) checkpoint = nextCheckpoint(checkpoint);
  for (; checkpoint >= FIRST_CHECKPOINT; checkpoint /= 2) {
    const clean = shortestBeginning(posted, checkpoint);
    if (clean === null) continue;
    return { places: clean.map((place) => at(posted.places, place)), checkpoint, nextAt: 2 * checkpoint };
  }
  return null;
}

/** Pieces with a share, and the two variables that screening looks at. */
interface Posted {
  /** Where they are in the rows that were asked about. */
  places: readonly number[];
  confirmed: Uint8Array;
  logitShares: Float64Array;
  lnBases: Float64Array;
}

function postedPieces({ count, base, loss }: Rows, confirmed: ArrayLike<number | boolean>): Posted {
  const places: number[] = [];
  for (let row = 0; row < count; row++) {
    const weight = base[row] ?? 0;
    const share = (loss[row] ?? 0) / weight;
    if (weight > 0 && share > 0 && share < 1) places.push(row);
  }
  const posted = {
    places,
    confirmed: new Uint8Array(places.length),
    logitShares: new Float64Array(places.length),
    lnBases: new Float64Array(places.length),
  };
  places.forEach((row, place) => {
    posted.confirmed[place] = confirmed[row] ? 1 : 0;
    const weight = base[row] ?? 0;
    posted.logitShares[place] = logitShare(weight, loss[row] ?? 0);
    posted.lnBases[place] = Math.log(weight);
  });
  return posted;
}

/**
 * The clean places of the shortest beginning that leaves `enough`; null if none does. How many are left does not only grow
 * with length, as what is usual moves; so lengths are passed over only where enough of the pieces are unusual at every
 * one of them.
 */
function shortestBeginning(posted: Posted, enough: number): number[] | null {
  let length = enough;
  while (length <= posted.places.length) {
    const screened = screenBeginning(posted, length);
    const missing = enough - screened.clean.length;
    if (missing <= 0) return screened.clean;
    // At lengths below enough + sure, fewer than enough are left, as long as they are surely unusual.
    const sure = surelyFlagged(posted, length, screened, missing - 1);
    length = Math.max(length + 1, Math.min(length + missing, enough + sure));
  }
  return null;
}

interface Screened {
  usual: UsualPiece;
  /** Places among the posted. */
  clean: number[];
  flagged: number[];
}

/** What `screen` finds in the first `length` pieces by themselves, which are never too few to screen. */
function screenBeginning({ logitShares, lnBases, confirmed }: Posted, length: number): Screened {
  const usual = usualPiece(logitShares.subarray(0, length), lnBases.subarray(0, length));
  const screened: Screened = { usual, clean: [], flagged: [] };
  for (let place = 0; place < length; place++) {
    const squared = squaredDistance(usual, logitShares[place] ?? 0, lnBases[place] ?? 0);
    const unusual = squared > usual.threshold && !confirmed[place];
    (unusual ? screened.flagged : screened.clean).push(place);
  }
  return screened;
}

/** How many of the first `length` pieces stay flagged whatever the next `more` pieces are. */
function surelyFlagged(posted: Posted, length: number, { usual, flagged }: Screened, more: number): number {
  const shares = reachOf(posted.logitShares.slice(0, length), usual.logitShare, more);
  const bases = reachOf(posted.lnBases.slice(0, length), usual.lnBase, more);
  return flagged.filter((place) => {
    const least =
      leastDistance(at(posted.logitShares, place), shares) + leastDistance(at(posted.lnBases, place), bases);
    // A hair's breadth for rounding. The threshold itself only sinks with more pieces.
    return least > usual.threshold * (1 + 1e-9);
  }).length;
}

/** Where the median can go, and the widest that the scale can get. */
interface Reach {
  low: number;
  high: number;
  scale: number;
}

/** A median and a median deviation are order statistics: with `more` values they move by half as many ranks at most. */
function reachOf(values: Float64Array, { median, scale }: Usual, more: number): Reach {
  const middle = betweenRanks(values, more);
  const deviations = deviationsFrom(median, values);
  const spread = medianOf(deviations);
  const shift = Math.max(middle.high - median, median - middle.low);
  const deviation = betweenRanks(deviations, more);
  // Where the median deviation can get to 0 another scale steps in, of which nothing is known.
  const widest =
    deviation.low > shift ? (scale * (deviation.high + shift)) / spread : Number.POSITIVE_INFINITY;
  return { ...middle, scale: Math.max(scale, widest) };
}

/** What the median of the values lies between after up to `more` further values. Reorders them. */
function betweenRanks(values: Float64Array, more: number): { low: number; high: number } {
  const least = Math.floor((values.length - 1 - more) / 2);
  const greatest = Math.ceil((values.length - 1 + more) / 2);
  return {
    low: least < 0 ? Number.NEGATIVE_INFINITY : select(values, least),
    high: greatest < values.length ? select(values, greatest) : Number.POSITIVE_INFINITY,
  };
}

const leastDistance = (value: number, { low, high, scale }: Reach): number =>
  (Math.max(0, low - value, value - high) / scale) ** 2;
