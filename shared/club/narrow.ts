/** Looking at some rows of a club's columns only: those of one grade, one style, one shop. */
import type { Columns, Factor } from './store.ts';

/** The factors by which rows can be told apart. */
export const FACTORS = ['cut', 'grade', 'style', 'bone', 'shop', 'wrap', 'month', 'member'] as const;
export type FactorName = (typeof FACTORS)[number];

/** The value that rows must have, by factor. */
export type Filter = Partial<Record<FactorName, string>>;

/** The rows that have every value of the filter, in posting order; all of them, untouched, without a filter. */
export function narrowed(columns: Columns, filter: Filter): Columns {
  const wanted = Object.entries(filter) as [FactorName, string][];
  if (wanted.length === 0) return columns;
  const tests = wanted.map(([name, value]) => ({
    codes: columns[name].codes,
    code: columns[name].values.indexOf(value),
  }));
  const rows: number[] = [];
  for (let row = 0; row < columns.count; row++) {
    if (tests.every(({ codes, code }) => code >= 0 && codes[row] === code)) rows.push(row);
  }
  return rowsOf(columns, rows);
}

function rowsOf(columns: Columns, rows: readonly number[]): Columns {
  const factor = ({ codes, values }: Factor): Factor => ({
    codes: Int32Array.from(rows, (row) => codes[row] ?? -1),
    values,
  });
  return {
    version: columns.version,
    count: rows.length,
    seq: Int32Array.from(rows, (row) => columns.seq[row] ?? 0),
    base: Float64Array.from(rows, (row) => columns.base[row] ?? 0),
    loss: Float64Array.from(rows, (row) => columns.loss[row] ?? 0),
    pieces: Int32Array.from(rows, (row) => columns.pieces[row] ?? 1),
    approximate: Uint8Array.from(rows, (row) => columns.approximate[row] ?? 0),
    confirmed: Uint8Array.from(rows, (row) => columns.confirmed[row] ?? 0),
    member: factor(columns.member),
    cut: factor(columns.cut),
    grade: factor(columns.grade),
    style: factor(columns.style),
    bone: factor(columns.bone),
    shop: factor(columns.shop),
    wrap: factor(columns.wrap),
    month: factor(columns.month),
  };
}
