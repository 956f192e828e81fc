/** The single shares behind a group's figures, for who draws them: one a piece, without those that gained. */
import type { Measure } from '../yield/measure.ts';
import { placesBy, shareShown } from './group.ts';
import type { Columns, Factor } from './store.ts';

/** One entry a piece, in posting order. */
export interface Shares {
  /** The numbers that people see. */
  seq: Int32Array;
  /** Fractions, as a member reads them: what came off, or what was kept. */
  shares: Float64Array;
}

const gainedNone = ({ loss, count }: Columns): number[] =>
  Array.from({ length: count }, (_none, row) => row).filter((row) => (loss[row] ?? 0) >= 0);

const shareOf = ({ base, loss }: Columns, measure: Measure, row: number): number =>
  shareShown(measure, (loss[row] ?? 0) / (base[row] ?? 1));

/**
 * Every piece's share.
 * @example a brisket of 6000 g with 1200 g off, of `trim`: shares [0.2]
 */
export function sharesOf(columns: Columns, measure: Measure): Shares {
  const rows = gainedNone(columns);
  return {
    seq: Int32Array.from(rows, (row) => columns.seq[row] ?? 0),
    shares: Float64Array.from(rows, (row) => shareOf(columns, measure, row)),
  };
}

/** The shares of each value of a factor; those without a value under null. */
export function sharesBy(
  columns: Columns,
  measure: Measure,
  factor: Factor,
): ReadonlyMap<string | null, readonly number[]> {
  const kept = (places: readonly number[]) => places.filter((row) => (columns.loss[row] ?? 0) >= 0);
  const groups = [...placesBy(columns, factor)].map(
    ([key, places]) => [key, kept(places).map((row) => shareOf(columns, measure, row))] as const,
  );
  return new Map(groups.filter(([, shares]) => shares.length > 0));
}
