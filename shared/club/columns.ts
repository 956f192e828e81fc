/** Choosing among the rows of a club's columns. */
import type { Rows } from '../statistics/rows.ts';
import type { Columns, Factor } from './store.ts';

/** The columns as a statistical method takes them. */
export const rowsOf = ({ count, base, loss, member }: Columns): Rows => ({
  count,
  base,
  loss,
  member: member.codes,
});

/** The places of the rows that a test holds for, in posting order. */
export function placesWhere({ count }: Columns, holds: (row: number) => boolean): number[] {
  const places: number[] = [];
  for (let row = 0; row < count; row++) if (holds(row)) places.push(row);
  return places;
}

/** The rows at these places, in their order; the columns themselves where that is all of them. */
export function columnsAt(columns: Columns, places: readonly number[]): Columns {
  if (places.length === columns.count) return columns;
  const factor = ({ codes, values }: Factor): Factor => ({
    codes: Int32Array.from(places, (row) => codes[row] ?? -1),
    values,
  });
  return {
    version: columns.version,
    count: places.length,
    seq: Int32Array.from(places, (row) => columns.seq[row] ?? 0),
    base: Float64Array.from(places, (row) => columns.base[row] ?? 0),
    loss: Float64Array.from(places, (row) => columns.loss[row] ?? 0),
    pieces: Int32Array.from(places, (row) => columns.pieces[row] ?? 1),
    approximate: Uint8Array.from(places, (row) => columns.approximate[row] ?? 0),
    confirmed: Uint8Array.from(places, (row) => columns.confirmed[row] ?? 0),
    day: Int32Array.from(places, (row) => columns.day[row] ?? 0),
    pricePerKg: Float64Array.from(places, (row) => columns.pricePerKg[row] ?? Number.NaN),
    member: factor(columns.member),
    cut: factor(columns.cut),
    grade: factor(columns.grade),
    style: factor(columns.style),
    bone: factor(columns.bone),
    shop: factor(columns.shop),
    wrap: factor(columns.wrap),
    month: factor(columns.month),
    currency: factor(columns.currency),
  };
}

/** The places of the rows of each value of a factor, in posting order; of those without a value under null. */
export function placesBy(
  { count }: Pick<Columns, 'count'>,
  { codes, values }: Factor,
): ReadonlyMap<string | null, readonly number[]> {
  const places = new Map<string | null, number[]>();
  for (let row = 0; row < count; row++) {
    const key = values[codes[row] ?? -1] ?? null;
    const own = places.get(key);
    if (own === undefined) places.set(key, [row]);
    else own.push(row);
  }
  return places;
}
