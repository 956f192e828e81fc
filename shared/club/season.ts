/** Seasons: the twelve months from the one that a club starts with, and the other times that people look back on. */
import { addDays, type CalendarDay, calendarDay } from '../measure/day.ts';

/** This season, the one before, the last twelve months, and all that there is. */
export const SEASONS = ['season', 'last', 'year', 'always'] as const;

/** The name of one of them. */
export type Season = (typeof SEASONS)[number];

/** From one day to another, both included; null: no bound. */
export interface Span {
  from: CalendarDay | null;
  to: CalendarDay | null;
}

/** A span with both its ends. */
export interface WholeSpan {
  from: CalendarDay;
  to: CalendarDay;
}

function firstOf(year: number, month: number): CalendarDay {
  const day = calendarDay(year, month, 1);
  if (day === null) throw new RangeError(`there is no month ${month} of ${year}`);
  return day;
}

const yearOf = (day: CalendarDay): number => Number(day.slice(0, 4));
const monthOf = (day: CalendarDay): number => Number(day.slice(5, 7));

const seasonFrom = (year: number, startMonth: number): WholeSpan => ({
  from: firstOf(year, startMonth),
  to: addDays(firstOf(year + 1, startMonth), -1),
});

const startYear = (today: CalendarDay, startMonth: number): number =>
  yearOf(today) - (monthOf(today) < startMonth ? 1 : 0);

/**
 * The season that a day is in: twelve months.
 * @param startMonth 1 to 12
 * @example seasonOf('2026-02-10', 4) // { from: '2025-04-01', to: '2026-03-31' }
 */
export const seasonOf = (today: CalendarDay, startMonth: number): WholeSpan =>
  seasonFrom(startYear(today, startMonth), startMonth);

/**
 * The season before the one that a day is in.
 * @example seasonBefore('2026-02-10', 4) // { from: '2024-04-01', to: '2025-03-31' }
 */
export const seasonBefore = (today: CalendarDay, startMonth: number): WholeSpan =>
  seasonFrom(startYear(today, startMonth) - 1, startMonth);

/**
 * Twelve months up to a day.
 * @example yearTo('2026-07-04') // { from: '2025-07-05', to: '2026-07-04' }
 */
export function yearTo(today: CalendarDay): WholeSpan {
  const [year, month] = [yearOf(today) - 1, monthOf(today)];
  // The year before a 29 February has none.
  const before = calendarDay(year, month, Number(today.slice(8))) ?? calendarDay(year, month, 28);
  return { from: before === null ? today : addDays(before, 1), to: today };
}

const SPANS: Record<Season, (today: CalendarDay, startMonth: number) => Span> = {
  season: seasonOf,
  last: seasonBefore,
  year: yearTo,
  always: () => ({ from: null, to: null }),
};

/**
 * From when to when a season is.
 * @param startMonth of the club's seasons, 1 to 12
 * @example spanOf('always', today, 1) // { from: null, to: null }
 */
export const spanOf = (season: Season, today: CalendarDay, startMonth: number): Span =>
  SPANS[season](today, startMonth);
