/** Calendar days, as a member types them and as a club keeps them. */
import { Ask, MemberError, type ProblemCode, type Reading } from '../errors.ts';
import { monthNamed, RELATIVE_DAYS, weekdayNamed } from './day-words.ts';
import { fold, LONGEST_TEXT, plainLetters } from './fold.ts';
import type { Typed } from './terms.ts';
import type { DecimalMark } from './units.ts';

/** `2026-07-04`: a day of the club's calendar, whatever the hour and the zone. */
export type CalendarDay = string & { readonly day: 'YYYY-MM-DD' };

/** What reading a day depends on. */
export interface DayReader {
  option: string;
  today: CalendarDay;
  decimalMark: DecimalMark;
}

const DAY_MS = 86_400_000;
/** How far back a 29 February may be: 1900 to 1904 had none between them. */
const LEAP_REACH = 8;
const OLDEST = '1970-01-01';

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

/** How many days `later` is after `earlier`: from 2026-02-28 to 2026-03-01 it is 1. */
export const daysBetween = (earlier: CalendarDay, later: CalendarDay): number =>
  Math.round((dayTime(later) - dayTime(earlier)) / DAY_MS);

interface Parts {
  readonly year: number | null;
  readonly month: number;
  readonly day: number;
}

const yearOf = (text: string | undefined): number | null =>
  text === undefined || text === '' ? null : Number(text.length === 2 ? `20${text}` : text);

/** The latest day with these numbers that is not after today; with a year, that day. */
function dayOf({ year, month, day }: Parts, today: CalendarDay): CalendarDay | null {
  if (year !== null) return calendarDay(year, month, day);
  const now = Number(today.slice(0, 4));
  for (let back = 0; back <= LEAP_REACH; back += 1) {
    const found = calendarDay(now - back, month, day);
    if (found !== null && found <= today) return found;
  }
  return null;
}

function problemOf(day: CalendarDay | null, today: CalendarDay): (ProblemCode & `day-${string}`) | null {
  if (day === null) return 'day-not-there';
  if (day > today) return 'day-ahead';
  return day < OLDEST ? 'day-too-old' : null;
}

const NUMERIC = /^(\d{1,2})([./-])(\d{1,2})(?:\2(\d{4}|\d{2})?)?\.?$/;
const YEAR_FIRST = /^(\d{4})([./-])(\d{1,2})\2(\d{1,2})\.?$/;
const ORDINAL = /^(\d{1,2})(?:st|nd|rd|th)?$/;
const FILLERS = new Set(['of', 'the', 'on', 'de', 'del', 'den', 'am', 'el']);

/** `7/4`, `4.7.2026`, `2026-07-04`: every order in which the numbers may stand. */
function numeric(text: string, decimalMark: DecimalMark): readonly Parts[] {
  const first = YEAR_FIRST.exec(text);
  if (first) return [{ year: Number(first[1]), month: Number(first[3]), day: Number(first[4]) }];
  const found = NUMERIC.exec(text);
  if (!found) return [];
  const [, one = '', mark, two = '', three] = found;
  const [a, b, year] = [Number(one), Number(two), yearOf(three)];
  const dayFirst: Parts = { year, month: b, day: a };
  const monthFirst: Parts = { year, month: a, day: b };
  const dotted = mark === '.' && (decimalMark === ',' || /^\d+\.\d+\.$/.test(text));
  if (dotted) return [dayFirst];
  const orders = decimalMark === ',' ? [dayFirst, monthFirst] : [monthFirst, dayFirst];
  const short = mark === '-' && one.length === 2 && three?.length === 2;
  return short ? [...orders, { year: yearOf(one), month: b, day: Number(three) }] : orders;
}

/** `4 July`, `Jul 4 2026`, `4. Juli 2026`, `4 de julio`: the month in words, the rest in any order. */
function withMonth(words: readonly string[]): readonly Parts[] {
  const months = words.flatMap((word) => monthNamed(word) ?? []);
  const days = words.flatMap((word) => ORDINAL.exec(word)?.[1] ?? []);
  const years = words.filter((word) => /^\d{4}$/.test(word));
  const [month, day] = [months[0], days[0]];
  const all = months.length + days.length + years.length === words.length;
  if (month === undefined || day === undefined || !all || months.length + days.length > 2 || years.length > 1)
    return [];
  return [{ year: yearOf(years[0]), month, day: Number(day) }];
}

/** `today`, `yesterday`, a weekday: the latest that is not after today. */
function relative(word: string, today: CalendarDay): CalendarDay | null {
  const back = RELATIVE_DAYS.get(word);
  if (back !== undefined) return addDays(today, -back);
  const weekday = weekdayNamed(word);
  if (weekday === null) return null;
  return addDays(today, -((new Date(dayTime(today)).getUTCDay() - weekday + 7) % 7));
}

function candidates(folded: string, { today, decimalMark }: DayReader): readonly (CalendarDay | null)[] {
  const tight = folded.replace(/ ?([/.-]) ?/g, '$1');
  const numbers = numeric(tight, decimalMark);
  if (numbers.length > 0) return numbers.map((parts) => dayOf(parts, today));
  const words = plainLetters(folded)
    .split(/[ ,.]+/)
    .filter((word) => word !== '' && !FILLERS.has(word));
  const [only = '', other] = words;
  const near = other === undefined ? relative(only, today) : null;
  return near === null ? withMonth(words).map((parts) => dayOf(parts, today)) : [near];
}

function question(days: readonly CalendarDay[], typed: Typed): Ask {
  const readings = days.map(
    (day): Reading => ({ label: { code: 'day', values: { day } }, set: { [typed.option]: day } }),
  );
  return new Ask('which-day', typed, readings);
}

/**
 * Reads a day of the club's calendar from 1970 to today: ISO, `today`, `4 July`, `Jul 4 2026`, `4.7.`,
 * a weekday. Without a year it is the latest such day that is not after today.
 *
 * Throws an {@link Ask} for `7/4` (both days, the likelier first) and a {@link MemberError} for a day that
 * does not exist, is ahead or is before 1970, and for what is no day; nothing else.
 *
 * @example readDay('Sat', { ...reader, today: '2026-07-07' }) // '2026-07-04'
 */
export function readDay(text: string, reader: DayReader): CalendarDay {
  const read = text.trim();
  const typed = { option: reader.option, read };
  const { today } = reader;
  const found = read.length > LONGEST_TEXT ? [] : candidates(fold(read), reader);
  if (found.length === 0) throw new MemberError('day-unreadable', typed);
  const good = [...new Set(found)]
    .filter((day) => day !== null)
    .filter((day) => problemOf(day, today) === null);
  const [only, other] = good;
  if (only !== undefined) {
    if (other === undefined) return only;
    throw question(good, typed);
  }
  const problems = found.map((day) => problemOf(day, today));
  if (problems.includes('day-ahead')) throw new MemberError('day-ahead', { ...typed, today });
  throw new MemberError(problems.includes('day-too-old') ? 'day-too-old' : 'day-not-there', typed);
}

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
  if (formats.size < 1000) formats.set(zone, format);
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
  const wanted = dayTime(day) + hour * 3_600_000;
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
