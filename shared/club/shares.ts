/** The single shares behind a group's figures, for who draws them: one a piece. */
import type { Averaged } from '../yield/measure.ts';
import { placesBy, rowsFor } from './columns.ts';
import { shareShown } from './group.ts';
import type { Columns, Factor } from './store.ts';

/**
 * One entry a piece, in posting order: fractions, as a member reads them: what came off, or what was kept; of a cost,
 * money a kilo on the plate.
 * @example sharesOf(columns, 'trim') // [0.25] of one piece of 12 lb with 3 lb off
 */
export function sharesOf(columns: Columns, measure: Averaged): Float64Array {
  const { base, loss } = rowsFor(columns, measure);
  return Float64Array.from(base, (weight, row) => shareShown(measure, (loss[row] ?? 0) / weight));
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
