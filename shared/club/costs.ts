/** What pieces cost on the plate: which of them have a cost in the club's currency, and why the others have none. */
import type { Currency } from '../measure/currency.ts';
import { type Columns, columnsAt } from './columns.ts';
import { type Sifted, sift } from './sift.ts';

/** Rows that have no cost to compare, each by the first reason that holds. */
export interface Uncosted {
  /** Not on the plate yet, or nothing got there. */
  unserved: Columns;
  /** No price was told. */
  unpriced: Columns;
  /** Paid for in another currency: nothing here knows rates of exchange. */
  foreign: Columns;
}

/**
 * Sifts the rows of `cost`. A piece that waits in what came off or in what got to the plate is out of its cost too; what
 * lost nothing, or gained, has a cost like any other, so nothing is untouched and nothing gained.
 * @param trimmed the rows of `trim`: of the same pieces and of others
 * @param currency the club's
 * @example 3 pieces paid for in EUR, in a club of USD: they are `foreign`, and the others' figures stay as they were
 */
export function siftCosts(
  columns: Columns,
  trimmed: Columns,
  currency: Currency,
): { sifted: Sifted; uncosted: Uncosted } {
  const waits = new Set([...sift(columns).waiting.seq, ...sift(trimmed).waiting.seq]);
  const own = columns.currency.values.indexOf(currency);
  const places = {
    unserved: [] as number[],
    unpriced: [] as number[],
    foreign: [] as number[],
    waiting: [] as number[],
    counted: [] as number[],
  };
  const reasonOf = (row: number): keyof typeof places => {
    if (!((columns.base[row] ?? 0) > (columns.loss[row] ?? Number.NaN))) return 'unserved';
    if (Number.isNaN(columns.spent[row])) return 'unpriced';
    if (columns.currency.codes[row] !== own) return 'foreign';
    return waits.has(columns.seq[row] ?? -1) ? 'waiting' : 'counted';
  };
  for (let row = 0; row < columns.count; row++) places[reasonOf(row)].push(row);
  const at = (rows: readonly number[]) => columnsAt(columns, rows);
  return {
    sifted: { counted: at(places.counted), waiting: at(places.waiting), untouched: at([]), gained: at([]) },
    uncosted: { unserved: at(places.unserved), unpriced: at(places.unpriced), foreign: at(places.foreign) },
  };
}

/** How many pieces have no cost to compare, and why. */
export interface UncostedCounts {
  unserved: number;
  unpriced: number;
  /** By currency, those with the most pieces first. */
  foreign: readonly { currency: string; count: number }[];
}

/** @param all e.g. of plain and of injected pieces; `look` narrows them down */
export function countUncosted(
  all: readonly Uncosted[],
  look: (columns: Columns) => Columns = (columns) => columns,
): UncostedCounts {
  const counts = new Map<string, number>();
  let [unserved, unpriced] = [0, 0];
  for (const uncosted of all) {
    unserved += look(uncosted.unserved).count;
    unpriced += look(uncosted.unpriced).count;
    const { currency } = look(uncosted.foreign);
    for (const code of currency.codes) {
      const name = currency.values[code] ?? '';
      counts.set(name, (counts.get(name) ?? 0) + 1);
    }
  }
  const foreign = [...counts]
    .map(([currency, count]) => ({ currency, count }))
    .sort((one, other) => other.count - one.count || (one.currency < other.currency ? -1 : 1));
  return { unserved, unpriced, foreign };
}
