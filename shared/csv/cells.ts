/** Reading one cell: keys as we write them, names and values as people do. */
import type { Club } from '../club/club.ts';
import { MemberError } from '../errors.ts';
import { isCurrency } from '../measure/currency.ts';
import type { CalendarDay } from '../measure/day.ts';
import type { Currency } from '../measure/money.ts';
import { readDay } from '../measure/read-day.ts';
import { CUTS, type Cut, cutOf } from '../trade/cuts.ts';
import { gradeOfSpecies, isGrade, readGrade } from '../trade/grades.ts';
import type { CutKey, GradeKey, StyleKey } from '../trade/keys.ts';
import { readCut } from '../trade/look-up.ts';
import { ALL_STYLES, readStyle } from '../trade/styles.ts';
import { oneLine } from '../words/quote.ts';
import type { Field } from './fields.ts';
import { valueFinder } from './plain-words.ts';
import { dayAsMeant, type Survey } from './survey.ts';
import { BONES, WRAPS, YES_NO } from './value-names.ts';

const MOST_PIECES = 99;
const LONGEST_NAME = 60;
/** The most characters that are kept of a text. */
const LONGEST = { shop: 60, note: 300, status: 1000 } as const;

const BY_KEY: ReadonlyMap<string, Cut> = new Map(CUTS.map((cut) => [cut.key, cut]));
const isStyle = (text: string): text is StyleKey => ALL_STYLES.includes(text);

function refuseLong(option: Field, text: string, limit: number): void {
  if (text.length > limit) throw new MemberError('text-too-long', { option, length: text.length, limit });
}

/**
 * By its key, else as a member names it.
 * @param own the club's own cuts
 * @throws MemberError or Ask, as `readCut` does.
 */
export function readCutCell(text: string, own: readonly CutKey[]): Cut {
  refuseLong('cut', text, LONGEST_NAME);
  return BY_KEY.get(text) ?? cutOf(readCut(text, 'cut', own));
}

/**
 * By its key, which is then that grade whatever the animal; else as a member names it, of this animal.
 * @throws MemberError or Ask, as `readGrade` does.
 */
export function readGradeCell(text: string, { species }: Cut, { gradeCountry }: Club): GradeKey {
  refuseLong('grade', text, LONGEST_NAME);
  if (isGrade(text)) return text;
  return gradeOfSpecies(readGrade(text, { option: 'grade', country: gradeCountry, species }), species);
}

/** By its key, else as a member names it, of this cut. @throws MemberError where the cut has no such style. */
export function readStyleCell(text: string, { key, styles }: Cut): StyleKey {
  refuseLong('style', text, LONGEST_NAME);
  if (isStyle(text)) return text;
  if (styles === null) throw new MemberError('styles-none', { read: text, cut: key as CutKey });
  return readStyle(text, styles);
}

/** A reader of one of a few values, by any of its names. It throws a MemberError for anything else. */
function choiceReader<Value extends string>(
  option: Field,
  names: Readonly<Record<Value, string>>,
): (text: string) => Value {
  const find = valueFinder(names);
  const choices = Object.keys(names);
  return (text) => {
    const found = find(text);
    if (found === null) throw new MemberError('choice-unknown', { option, read: text, choices });
    return found;
  };
}

/** With its bone, or without. @throws MemberError for anything else. */
export const readBone = choiceReader('bone', BONES);
/** What it was wrapped in. @throws MemberError for anything else. */
export const readWrap = choiceReader('wrap', WRAPS);
/** Whether it was injected before it was sold. @throws MemberError for anything but yes and no. */
export const readPumped = choiceReader('pumped', YES_NO);

/** From 1 to 99; spreadsheets write `2.0`. @throws MemberError for anything else. */
export function readCount(text: string): number {
  const value = Number(/^(\d{1,3})(?:[.,]0+)?$/.exec(text)?.[1]);
  if (value >= 1 && value <= MOST_PIECES) return value;
  throw new MemberError('number-unreadable', { option: 'pieces', read: text, low: 1, high: MOST_PIECES });
}

/** An ISO 4217 code, also in small letters. @throws MemberError for anything else. */
export function readCurrency(text: string): Currency {
  const code = text.toUpperCase();
  if (!isCurrency(code)) throw new MemberError('csv-currency-unknown', { read: text });
  return code;
}

/** On one line, without what nobody sees; null where nothing is left. @throws MemberError where it is too long. */
export function readText(option: keyof typeof LONGEST, text: string): string | null {
  const read = oneLine(text);
  refuseLong(option, read, LONGEST[option]);
  return read === '' ? null : read;
}

/** In the order that the table's days show. @throws MemberError or Ask, as `readDay` does. */
export const readDayCell = (text: string, today: CalendarDay, survey: Survey): CalendarDay =>
  readDay(dayAsMeant(text, survey), { option: 'date', today, decimalMark: survey.decimalMark });
