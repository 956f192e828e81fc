/** A club's columns from plain rows, as a store would have them. */
import type { Columns, Factor } from '../../../shared/club/columns.ts';
import type { Codes, Rows } from '../../../shared/statistics/rows.ts';

const POUND = 453.59237;
const GRADES = ['usda/select', 'usda/choice', 'usda/prime'];
const STYLES = ['brisket/thick', 'brisket/quarter', 'brisket/thin'];

/** Rows in pounds; members are called by their number. */
export function columnsOf(rows: Rows, { grade, style }: { grade?: Codes; style?: Codes } = {}): Columns {
  const { count } = rows;
  const all = <T>(of: (row: number) => T) => Array.from({ length: count }, (_, row) => of(row));
  const none: Factor = { codes: new Int32Array(count).fill(-1), values: [] };
  const factor = (codes: Codes | undefined, values: string[]): Factor =>
    codes === undefined ? none : { codes: Int32Array.from(all((row) => codes.codes[row] ?? -1)), values };
  const members = Math.max(0, ...all((row) => (rows.member[row] ?? 0) + 1));
  return {
    version: count,
    count,
    seq: Int32Array.from(all((row) => row + 1)),
    base: Float64Array.from(all((row) => (rows.base[row] ?? 0) * POUND)),
    loss: Float64Array.from(all((row) => (rows.loss[row] ?? 0) * POUND)),
    pieces: new Int32Array(count).fill(1),
    approximate: new Uint8Array(count),
    confirmed: new Uint8Array(count),
    day: Int32Array.from(all((row) => 20_000 + row)),
    pricePerKg: new Float64Array(count).fill(11),
    spent: Float64Array.from(all((row) => (rows.base[row] ?? 0) * (POUND / 1000) * 11)),
    member: {
      codes: Int32Array.from(all((row) => rows.member[row] ?? 0)),
      values: Array.from({ length: members }, (_, member) => `member-${String(member).padStart(3, '0')}`),
    },
    cut: { codes: new Int32Array(count), values: ['beef/brisket-whole'] },
    grade: factor(grade, GRADES),
    style: factor(style, STYLES),
    bone: none,
    shop: none,
    wrap: none,
    month: { codes: new Int32Array(count), values: ['2026-07'] },
    currency: { codes: new Int32Array(count), values: ['USD'] },
  };
}
