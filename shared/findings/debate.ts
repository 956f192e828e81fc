/** What every debate looks at: which rows tell how it stands so far, which ones settle it, and what is held constant. */
import { type Columns, columnsAt, eachOf, type Factor, placesWhere } from '../club/columns.ts';
import type { FactorName } from '../club/narrow.ts';
import { type Sifted, sift } from '../club/sift.ts';
import { median } from '../statistics/median.ts';
import type { Codes } from '../statistics/rows.ts';
import { nextCheckpoint, ruledRows } from '../statistics/ruling.ts';
import { SCALES } from '../trade/scales.ts';
import { ALL_STYLES } from '../trade/styles.ts';

/** How sure an answer so far is, and one that settles a debate: 19 times in 20, 99 in 100. */
export const SO_FAR = 0.95;
export const SETTLED = 0.99;

export interface Debated {
  /** Every counted piece that a debate may look at. */
  running: Columns;
  /** Those that the latest ruling due is about; null before the first. */
  ruled: Columns | null;
  /** At how many counted pieces the next ruling is due. */
  nextAt: number;
  waiting: number;
}

/**
 * The rows of a debate: no estimates, and of a question about size no lots, whose pieces were not weighed apart. What a
 * lot of several pieces weighs is told by the piece.
 */
export function debated(columns: Columns, lots: boolean): Debated {
  const debatable = (of: Columns) => {
    const { approximate, pieces } = of;
    return columnsAt(
      of,
      placesWhere(of, (row) => approximate[row] === 0 && (lots || pieces[row] === 1)),
    );
  };
  const sifted: Sifted = sift(columns);
  const posted = debatable(columns);
  const ruled = ruledRows(eachOf(posted), posted.confirmed);
  return {
    running: debatable(sifted.counted),
    ruled: ruled === null ? null : columnsAt(posted, ruled.places),
    nextAt: ruled?.nextAt ?? nextCheckpoint(0),
    waiting: sifted.waiting.count,
  };
}

/** A factor's values in the order of their scale, the low end first. */
export interface Levels extends Codes {
  keys: readonly string[];
  /** A number for each: only values of one number are compared. */
  scale: readonly number[];
}

/** What is held constant beside the question: how a piece is graded, and how much fat is left on. */
export const HELD = ['grade', 'style'] as const satisfies readonly FactorName[];

const GRADES: readonly string[] = SCALES.flatMap(({ grades }) => grades);
/** The club's own words have no order, and no end: the most frequent are compared. */
const MOST_LEVELS = 8;

/** A factor as the statistics take it. Values beyond the most frequent eight are as if not told. */
export function levelsOf(columns: Columns, name: FactorName): Levels {
  const factor = columns[name];
  const keys = inOrder(frequent(factor), name);
  const places = factor.values.map((value) => keys.indexOf(value));
  return {
    codes: factor.codes.map((code) => places[code] ?? -1),
    levels: keys.length,
    keys,
    scale: keys.map((key) => (name === 'grade' ? SCALES.findIndex(({ grades }) => isIn(grades, key)) : 0)),
  };
}

const isIn = (grades: readonly string[], key: string): boolean => grades.includes(key);

function frequent({ codes, values }: Factor): string[] {
  const counts = new Float64Array(values.length);
  for (const code of codes) if (code >= 0) counts[code] = (counts[code] ?? 0) + 1;
  return values
    .map((value, code) => [value, counts[code] ?? 0] as const)
    .filter(([, count]) => count > 0)
    .sort(([one, many], [other, more]) => more - many || (one < other ? -1 : 1))
    .slice(0, MOST_LEVELS)
    .map(([value]) => value);
}

/** Grades from the lowest, styles from the lightest trimming; everything else by name, so that no post reorders it. */
function inOrder(values: readonly string[], name: FactorName): string[] {
  const order = name === 'grade' ? GRADES : name === 'style' ? ALL_STYLES : [];
  const rank = (value: string) => (order.includes(value) ? order.indexOf(value) : order.length);
  return values.toSorted((one, other) => rank(one) - rank(other) || (one < other ? -1 : 1));
}

/** The usual piece: its weight in grams, and what a kilo of it usually costs in the club's currency. */
export interface Usual {
  grams: number | null;
  pricePerKg: number | null;
}

export function usualOf(columns: Columns, currency: string): Usual {
  const { count, currency: paidIn, pricePerKg } = columns;
  const code = paidIn.values.indexOf(currency);
  const prices: number[] = [];
  for (let row = 0; row < count; row++) {
    const price = pricePerKg[row] ?? Number.NaN;
    if (paidIn.codes[row] === code && !Number.isNaN(price)) prices.push(price);
  }
  const middle = (values: ArrayLike<number>) =>
    values.length === 0 ? null : median(new Float64Array(values));
  return { grams: middle(eachOf(columns).base), pricePerKg: middle(prices) };
}
