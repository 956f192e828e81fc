/** Reads the made-up clubs and what R says about them. */
import { readFileSync } from 'node:fs';
import type { Codes, Rows } from '../../shared/statistics/rows.ts';

export { codesAt } from '../../shared/statistics/rows.ts';

export const CLUB_NAMES = [
  'p1_ordinary',
  'p2_tiny',
  'p3_simpson',
  'p4_typos',
  'p5_one_member',
  'p6_same_weights',
  'p7_five_cooks',
] as const;

/** Expected results, by name; deeper ones inside. */
export type Expected = { [name: string]: Expected | number | string | boolean | null | Expected[] };

export interface OracleClub {
  /** Pounds, in posting order, as posted. */
  rows: Rows;
  /** Members' names; a row's member is a place here. */
  members: string[];
  gradeOrder: string[];
  grade: Codes;
  style: Codes;
  expected: Expected;
  /** What is expected of its only cut. */
  brisket: Expected;
}

const read = (name: string) => readFileSync(new URL(`./clubs/${name}`, import.meta.url), 'utf8');

/** A club by its name, as it was posted. */
export function oracleClub(name: string): OracleClub {
  const expected = JSON.parse(read(`${name}.json`)) as Expected & {
    gradeOrder: string[];
    styleOrder: string[];
    cuts: { brisket: Expected };
  };
  const lines = read(`${name}.csv`)
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','));
  const column = (place: number) => lines.map((cells) => cells[place] ?? '');
  const members = [...new Set(column(1))].sort();
  const coded = (place: number, order: string[]): Codes => ({
    codes: column(place).map((value) => order.indexOf(value)),
    levels: order.length,
  });
  return {
    rows: {
      count: lines.length,
      base: column(5).map(Number),
      loss: column(6).map(Number),
      member: column(1).map((member) => members.indexOf(member)),
    },
    members,
    gradeOrder: expected.gradeOrder,
    grade: coded(3, expected.gradeOrder),
    style: coded(4, expected.styleOrder),
    expected,
    brisket: expected.cuts.brisket,
  };
}

/** How far a number is from the expected one, 1 being all that is allowed; 0 where both are missing. */
export function distance(actual: number | null | undefined, expected: unknown): number {
  const missing = expected === null || expected === undefined;
  if (missing || actual === null || actual === undefined) {
    return missing && (actual === null || actual === undefined) ? 0 : Number.POSITIVE_INFINITY;
  }
  const value = Number(expected);
  return Math.abs(actual - value) / (1e-8 * Math.max(Math.abs(value), 1e-6));
}
