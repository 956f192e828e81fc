/** Reading a day as a member types it. */
import { Ask, MemberError, type ProblemCode, type Reading } from '../errors.ts';
import { addDays, type CalendarDay, calendarDay, dayTime } from './day.ts';
import { monthNamed, RELATIVE_DAYS, weekdayNamed } from './day-words.ts';
import { fold, LONGEST_TEXT, plainLetters } from './fold.ts';
import type { Typed } from './terms.ts';
import type { DecimalMark } from './units.ts';

/** What reading a day depends on. */
export interface DayReader {
  option: string;
  today: CalendarDay;
  decimalMark: DecimalMark;
}

/** How far back a 29 February may be: 1900 to 1904 had none between them. */
const LEAP_REACH = 8;
const OLDEST = '1970-01-01';

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
