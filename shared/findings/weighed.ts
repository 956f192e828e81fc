/** Who weighed in how many pieces. */
import { type Columns, placesBy } from '../club/columns.ts';
import { narrowed } from '../club/narrow.ts';
import type { CalendarDay } from '../measure/day.ts';
import type { Looked } from './finding.ts';
import type { AboutAny } from './sifted.ts';

/** Of all measures only the columns of costs hold every piece, on the plate or not. */
export interface AskedWeighed extends AboutAny {
  measure: 'cost';
  /** From one day to another, both included; null: no bound. */
  since: CalendarDay | null;
  until: CalendarDay | null;
}

/** A member, and how many pieces they weighed in. */
export interface WeighedBy {
  member: string;
  pieces: number;
}

/**
 * How many pieces each member weighed in, estimates left out: by member, in the order of their ids. Unusual pieces count,
 * and so do those that took up brine.
 * @example findWeighed(looked, { cut: null, measure: 'cost', since: null, until: null }) // [{ member: 'ines', pieces: 3 }]
 */
export function findWeighed({ plain, injected }: Looked, { since, until }: AskedWeighed): WeighedBy[] {
  const span = { ...(since === null ? {} : { since }), ...(until === null ? {} : { until }) };
  const pieces = new Map<string, number>();
  for (const columns of [plain, injected]) {
    if (columns === null) continue;
    for (const [member, count] of countedBy(narrowed(columns, span)))
      pieces.set(member, (pieces.get(member) ?? 0) + count);
  }
  return [...pieces]
    .map(([member, count]) => ({ member, pieces: count }))
    .sort((one, other) => (one.member < other.member ? -1 : 1));
}

function countedBy(columns: Columns): [member: string, count: number][] {
  const exact = (places: readonly number[]) => places.filter((row) => columns.approximate[row] === 0).length;
  return [...placesBy(columns, columns.member)].flatMap(([member, places]) => {
    const count = exact(places);
    return member === null || count === 0 ? [] : [[member, count]];
  });
}
