/** The single shares behind a group's figures, for who draws them: one a piece. */
import { lostShares } from '../statistics/rows.ts';
import type { Averaged } from '../yield/measure.ts';
import { type Columns, type Factor, placesBy, rowsFor } from './columns.ts';
import { shareShown } from './group.ts';

/**
 * One entry a piece, in posting order: fractions, as a member reads them: what came off, or what was kept; of a cost,
 * money a kilo on the plate.
 * @example sharesOf(columns, 'trim') // [0.25] of one piece of 12 lb with 3 lb off
 */
export function sharesOf(columns: Columns, measure: Averaged): Float64Array {
  return lostShares(rowsFor(columns, measure)).map((share) => shareShown(measure, share));
}

/**
 * The least and the most of some shares; null without any.
 * @example rangeOf(Float64Array.of(0.2, 0.1)) // { low: 0.1, high: 0.2 }
 */
export function rangeOf(shares: Float64Array): { low: number; high: number } | null {
  if (shares.length === 0) return null;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const share of shares) {
    if (share < low) low = share;
    if (share > high) high = share;
  }
  return { low, high };
}

/** The shares of each value of a factor; those without a value under null. */
export function sharesBy(
  columns: Columns,
  measure: Averaged,
  factor: Factor,
): ReadonlyMap<string | null, Float64Array> {
  const shares = sharesOf(columns, measure);
  const groups = [...placesBy(columns, factor)];
  return new Map(
    groups.map(([key, places]) => [key, Float64Array.from(places, (row) => shares[row] ?? 0)] as const),
  );
}
