/** The single shares behind a group's figures, for who draws them: one a piece. */
import type { Measure } from '../yield/measure.ts';
import { placesBy } from './columns.ts';
import { shareShown } from './group.ts';
import type { Columns, Factor } from './store.ts';

/** One entry a piece, in posting order: fractions, as a member reads them: what came off, or what was kept. */
export const sharesOf = (columns: Columns, measure: Measure): Float64Array =>
  columns.loss.map((loss, row) => shareShown(measure, loss / (columns.base[row] ?? 1)));

/** The shares of each value of a factor; those without a value under null. */
export function sharesBy(
  columns: Columns,
  measure: Measure,
  factor: Factor,
): ReadonlyMap<string | null, Float64Array> {
  const shares = sharesOf(columns, measure);
  const groups = [...placesBy(columns, factor)];
  return new Map(
    groups.map(([key, places]) => [key, Float64Array.from(places, (row) => shares[row] ?? 0)] as const),
  );
}
