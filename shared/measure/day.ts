/** Calendar days, and which day it is in a time zone. */
import { DAY_MS, HOUR_MS } from './time.ts';

/** `2026-07-04`: a day of the club's calendar, whatever the hour and the zone. */
export type CalendarDay = string & { readonly day: 'YYYY-MM-DD' };

/** The day of these numbers (year 1000 to 9999), or null if there is none: 30 February. */
export function calendarDay(year: number, month: number, day: number): CalendarDay | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  if (!(year >= 1000 && year <= 9999)) return null;
  if (date.getUTCFullYear() !== year || date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day)
    return null;
  return date.toISOString().slice(0, 10) as CalendarDay;
}

/** UTC milliseconds at the start of `day`, as if the club were in Greenwich: for arithmetic and printing. */
export const dayTime = (day: CalendarDay): number => Date.parse(`${day}T00:00:00Z`);

/**
 * Days since 1970-01-01.
 * @example dayNumber('1970-02-01' as CalendarDay) // 31
 */
export const dayNumber = (day: CalendarDay): number => Math.round(dayTime(day) / DAY_MS);

/** The day that is `count` days after `day`; before it, if `count` is below zero: 2026-03-01 less 1 is 2026-02-28. */
export const addDays = (day: CalendarDay, count: number): CalendarDay =>
  new Date(dayTime(day) + count * DAY_MS).toISOString().slice(0, 10) as CalendarDay;

const MOST_FORMATS = 1000;
const formats = new Map<string, Intl.DateTimeFormat>();

function zoneFormat(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const options = { day: '2-digit', month: '2-digit', year: 'numeric', calendar: 'gregory' } as const;
  const format = new Intl.DateTimeFormat('en', {
    ...options,
    numberingSystem: 'latn',
    timeZone: isZone(zone) ? zone : 'UTC',
  });
  if (formats.size < MOST_FORMATS) formats.set(zone, format);
  return format;
}

/** Whether `zone` is a time zone's name: `Europe/Kyiv` is, `Mars/North` is not. */
export function isZone(zone: string): boolean {
  try {
    // The list that Intl gives leaves out names that it does take, so taking it is the only way to know.
    return new Intl.DateTimeFormat('en', { timeZone: zone }).format(0) !== '';
  } catch {
    return false;
  }
}

/** The day it is at `time` (UTC milliseconds) in `zone` (IANA name; UTC if there is no such zone). */
export function dayAt(time: number, zone: string): CalendarDay {
  const parts = new Map(
    zoneFormat(zone)
      .formatToParts(time)
      .map(({ type, value }) => [type, value]),
  );
  return `${parts.get('year')}-${parts.get('month')}-${parts.get('day')}` as CalendarDay;
}

/**
 * The moment (UTC milliseconds) at which it is `hour` o'clock of `day` in `zone`. Where the clock is put forward over
 * that hour, an hour later or earlier.
 * @example timeAt('2026-07-05', 9, 'America/Chicago') // Date.UTC(2026, 6, 5, 14)
 */
export function timeAt(day: CalendarDay, hour: number, zone: string): number {
  const wanted = dayTime(day) + hour * HOUR_MS;
  // What the zone shows at that moment of UTC is off by the zone's offset.
  const offset = (time: number) => shownAt(time, zone) - time;
  return wanted - offset(wanted - offset(wanted));
}

/** What the clocks of `zone` show at `time`, as if it were UTC; whole minutes. */
function shownAt(time: number, zone: string): number {
  const format = new Intl.DateTimeFormat('en', {
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    hourCycle: 'h23',
    calendar: 'gregory',
    numberingSystem: 'latn',
    timeZone: isZone(zone) ? zone : 'UTC',
  });
  const part = new Map(format.formatToParts(time).map(({ type, value }) => [type, Number(value)]));
  const of = (type: Intl.DateTimeFormatPartTypes) => part.get(type) ?? 0;
  return Date.UTC(of('year'), of('month') - 1, of('day'), of('hour'), of('minute'));
}
