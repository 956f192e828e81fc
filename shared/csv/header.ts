/** Reading the header of a table: which column holds what, and in which unit its bare numbers are. */
import { Ask, MemberError } from '../errors.ts';
import type { Currency } from '../measure/money.ts';
import { readPrice } from '../measure/money.ts';
import { UNIT_WORDS } from '../measure/unit-words.ts';
import { isOneSlip } from '../trade/fold-name.ts';
import { WEIGHT_NAMES } from '../yield/piece.ts';
import { ALL_FIELDS, type Field } from './fields.ts';
import { HEADER_NAMES, TOTAL_NAMES } from './header-names.ts';
import { foldLetters, plainWords, spellings } from './plain-words.ts';

/** One column that is read. */
export interface Column {
  /** Its place in a row, from 0. */
  at: number;
  field: Field;
  /** As the file calls it. */
  name: string;
  /** What is written after a bare number in it: ` kg`, `/lb`; empty where the header says nothing. */
  unit: string;
}

/** The header of a table as read: its columns, and what is passed over. */
export interface Header {
  columns: readonly Column[];
  /** Names of columns that are passed over. */
  ignored: readonly string[];
  /** How many cells the header has. */
  width: number;
}

/** Without these there is no piece. */
const NEEDED: readonly Field[] = ['cut', 'bought'];

/** Units of which two columns make one weight: pounds before ounces, kilos before grams. */
const PAIRS: Readonly<Record<string, string>> = { lb: 'oz', kg: 'g' };

const FIELD_OF: ReadonlyMap<string, Field> = new Map(
  ALL_FIELDS.flatMap((field) =>
    [field, ...Object.values(HEADER_NAMES[field]).flatMap(spellings)].map((name) => [name, field] as const),
  ),
);
const TOTALS: ReadonlySet<string> = new Set(Object.values(TOTAL_NAMES).flatMap(spellings));
const WEIGHTS: ReadonlySet<Field> = new Set(WEIGHT_NAMES);
/** Of what a name is followed by, words that say nothing. */
const FILLERS = /^(?:in|en|weight|gewicht|peso)\s+/;
const PER = /^(?:\/|per\b|pro\b|je\b|por\b|a\b|al\b)\s*/;

/** The column of one cell of the header; null where it names none that is read. */
function columnOf(name: string, at: number): Column | null {
  const words = plainWords(name);
  if (TOTALS.has(words)) return { at, field: 'price', name, unit: ' in all' };
  const whole = FIELD_OF.get(words);
  if (whole !== undefined) return { at, field: whole, name, unit: '' };
  // The longest name that it starts with; what follows must be a unit.
  const parts = words.split(' ');
  for (let count = parts.length - 1; count >= 1; count -= 1) {
    const start = parts.slice(0, count);
    const total = TOTALS.has(start.join(' '));
    const field = total ? 'price' : FIELD_OF.get(start.join(' '));
    const rest = field === undefined ? '' : restAfter(name, count);
    const unit = field === undefined ? null : unitOf(field, total ? `${rest} in all` : rest);
    if (field !== undefined && unit !== null) return { at, field, name, unit };
  }
  return null;
}

/** What stands after the first `count` words, without brackets: `bought weight (lb)` after two is `lb`. */
function restAfter(name: string, count: number): string {
  const letters = foldLetters(name);
  const words = [...letters.matchAll(/[\p{Letter}\p{Number}]+/gu)].slice(0, count);
  const last = words.at(-1);
  const rest = last === undefined ? '' : letters.slice(last.index + last[0].length);
  return rest.replace(/[()[\]{},;:_]+|\.$/g, ' ').trim();
}

/** What a bare number of a column is followed by; null where the words after its name are no unit of it. */
function unitOf(field: Field, rest: string): string | null {
  if (rest === '') return null;
  if (WEIGHTS.has(field)) {
    const word = rest.replace(FILLERS, '');
    return UNIT_WORDS.has(word) ? ` ${word}` : null;
  }
  return field === 'price' ? priceUnit(rest) : null;
}

function priceUnit(rest: string): string | null {
  const unit = rest.replace(PER, '');
  const after = UNIT_WORDS.has(unit) || unit === '100 g' ? `/${unit}` : ` ${rest}`;
  try {
    readPrice(`1${after}`, { option: 'price', units: 'kg', currency: 'EUR' as Currency });
    return after;
  } catch (problem) {
    // A sign that is not the euro's, a bare currency, a pound that is several: the rows decide.
    if (problem instanceof Ask || (problem instanceof MemberError && problem.code === 'price-sign'))
      return after;
    if (problem instanceof MemberError) return null;
    throw problem;
  }
}

/**
 * How many cells of a row are names of columns.
 * @example namesKnown(['Meat', 'Bought (lb)', 'x']) // 2
 */
export const namesKnown = (cells: readonly string[]): number =>
  cells.filter((cell, at) => columnOf(cell, at) !== null).length;

/**
 * Reads the header of a table.
 * @throws MemberError where it names no column, lacks one that is needed, or names one twice.
 * @example readHeader(['Meat', 'Bought (lb)', 'x']).columns[1] // { at: 1, field: 'bought', name: 'Bought (lb)', unit: ' lb' }
 */
export function readHeader(cells: readonly string[]): Header {
  const columns = cells.flatMap((cell, at) => columnOf(cell.trim(), at) ?? []);
  const known = new Set(columns.map(({ at }) => at));
  const ignored = cells.map((cell) => cell.trim()).filter((cell, at) => cell !== '' && !known.has(at));
  if (columns.length === 0) throw new MemberError('csv-no-header', {});
  for (const name of NEEDED) {
    if (columns.some(({ field }) => field === name)) continue;
    throw new MemberError('csv-column-missing', { column: name, near: nearest(name, ignored) });
  }
  refuseTwice(columns);
  return { columns: columns.toSorted(largerFirst), ignored, width: cells.length };
}

const kindOf = ({ unit }: Column): string => UNIT_WORDS.get(unit.trim())?.kind ?? '';

/** Pounds stand before their ounces, wherever the file has them. */
const largerFirst = (one: Column, other: Column): number =>
  Number(!(kindOf(one) in PAIRS)) - Number(!(kindOf(other) in PAIRS));

function refuseTwice(columns: readonly Column[]): void {
  for (const field of ALL_FIELDS) {
    const [first, second, third] = columns.filter((column) => column.field === field);
    if (first === undefined || second === undefined) continue;
    const kinds = [kindOf(first), kindOf(second)];
    const isPair = Object.entries(PAIRS).some((pair) => pair.every((kind) => kinds.includes(kind)));
    if (isPair && third === undefined && WEIGHTS.has(field)) continue;
    throw new MemberError('csv-column-twice', { column: field, first: first.name, second: second.name });
  }
}

/** A name of the file's that is one slip from a name of this column. */
function nearest(field: Field, ignored: readonly string[]): string | null {
  const names = Object.values(HEADER_NAMES[field]).flatMap(spellings);
  return ignored.find((cell) => names.some((name) => isOneSlip(plainWords(cell), name))) ?? null;
}
