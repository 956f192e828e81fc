/** Looking at some rows of a club's columns only: those of one grade, one style, one shop, or since a day. */
import { type CalendarDay, dayNumber } from '../measure/day.ts';
import { type Columns, columnsAt, placesWhere } from './columns.ts';

/** The factors by which rows can be told apart. */
export const FACTORS = ['cut', 'grade', 'style', 'bone', 'shop', 'wrap', 'month', 'member'] as const;

/** The name of a factor, as the columns have it. */
export type FactorName = (typeof FACTORS)[number];

/** The value that rows must have, by factor; and from which day, to which they must be. */
export interface Filter extends Partial<Record<FactorName, string>> {
  since?: CalendarDay;
  until?: CalendarDay;
}

/**
 * The rows that have every value of the filter, in posting order; all of them, untouched, without a filter.
 * @example narrowed(columns, { grade: 'usda/choice', since: '2026-05-01' as CalendarDay })
 */
export function narrowed(columns: Columns, { since, until, ...values }: Filter): Columns {
  const tests: ((row: number) => boolean)[] = (Object.entries(values) as [FactorName, string][]).map(
    ([name, value]) => {
      const { codes, values: known } = columns[name];
      const code = known.indexOf(value);
      return (row) => code >= 0 && codes[row] === code;
    },
  );
  if (since !== undefined || until !== undefined) {
    const { day } = columns;
    const first = since === undefined ? Number.NEGATIVE_INFINITY : dayNumber(since);
    const last = until === undefined ? Number.POSITIVE_INFINITY : dayNumber(until);
    tests.push((row) => (day[row] ?? 0) >= first && (day[row] ?? 0) <= last);
  }
  return tests.length === 0
    ? columns
    : columnsAt(
        columns,
        placesWhere(columns, (row) => tests.every((test) => test(row))),
      );
}
