/** What a whole table tells of how its numbers and days are written, where one cell alone would not. */
import type { DecimalMark } from '../measure/units.ts';
import { WEIGHT_NAMES } from '../yield/piece.ts';
import type { Field } from './fields.ts';
import type { Header } from './header.ts';

/** How a table writes its numbers and days. */
export interface Survey {
  /** The mark that numbers are read with. */
  decimalMark: DecimalMark;
  /** Whether the table itself shows that it is that one, and no other. */
  evident: boolean;
  /** Whether days stand before months in `4/7/2026`; null where the table does not show it. */
  dayFirst: boolean | null;
}

/** What was seen so far. */
export interface Sightings {
  marks: Set<DecimalMark>;
  dayFirst: Set<boolean>;
}

/** Nothing seen yet: what `look` adds to. */
export const noSightings = (): Sightings => ({ marks: new Set(), dayFirst: new Set() });

/** Columns that hold numbers with a decimal mark. */
export const NUMBERS: ReadonlySet<Field> = new Set([...WEIGHT_NAMES, 'price', 'saved']);
const NUMBER = /\d+(?:[.,']\d+)*/g;
/** One mark, and not three digits after it, which could be a thousand. */
const DECIMAL = /^\d+([.,])(?:\d{1,2}|\d{4,})$/;
/** Thousands and decimals: the last mark is the decimal one. */
const GROUPED = /^\d{1,3}(?:([.,'])\d{3})(?:\1\d{3})*([.,])\d+$/;
const DAY = /^(\d{1,2})[/.-](\d{1,2})[/.-](?:\d{4}|\d{2})\b/;

/** Adds what one row shows. */
export function look(cells: readonly string[], { columns }: Header, seen: Sightings): void {
  for (const { field, at } of columns) {
    const text = cells[at] ?? '';
    if (NUMBERS.has(field)) {
      for (const [number] of text.matchAll(NUMBER)) {
        const mark = DECIMAL.exec(number)?.[1] ?? GROUPED.exec(number)?.[2];
        if (mark === '.' || mark === ',') seen.marks.add(mark);
      }
    } else if (field === 'date') {
      const [, one, two] = DAY.exec(text.trim()) ?? [];
      if (Number(one) > 12) seen.dayFirst.add(true);
      if (Number(two) > 12) seen.dayFirst.add(false);
    }
  }
}

/**
 * What the rows show together; where they show nothing, or differ, numbers are read as the club writes them.
 * @example conclude({ marks: new Set([',']), dayFirst: new Set() }, '.').decimalMark // ','
 */
export function conclude({ marks, dayFirst }: Sightings, own: DecimalMark): Survey {
  const [mark, otherMark] = marks;
  const [order, otherOrder] = dayFirst;
  const evident = mark !== undefined && otherMark === undefined;
  return {
    decimalMark: evident ? mark : own,
    evident,
    dayFirst: order === undefined || otherOrder !== undefined ? null : order,
  };
}

const EITHER = /^(\d{1,3})([.,])(\d{3})$/;

/**
 * Whether some number's mark could part thousands as well as decimals.
 * @example mayBeThousands('1,234 g') // true
 */
export const mayBeThousands = (text: string): boolean =>
  [...text.matchAll(NUMBER)].some(([number]) => EITHER.test(number));

/**
 * Numbers whose mark could part thousands, written as the table means them: `1,234` is 1234 beside `14.83`, and
 * `1.234` is then a decimal.
 * @example asMeant('1,234 g', { decimalMark: '.', evident: true, dayFirst: null }) // '1234 g'
 */
export function asMeant(text: string, { decimalMark, evident }: Survey): string {
  if (!evident) return text;
  return text.replace(NUMBER, (number) => {
    const [, whole, mark, rest] = EITHER.exec(number) ?? [];
    if (whole === undefined) return number;
    return mark === decimalMark ? `${number}0` : `${whole}${rest}`;
  });
}

/**
 * A day whose numbers' order the table shows, as ISO; any other as it is, without an hour.
 * @example dayAsMeant('4/7/2026', { ...survey, dayFirst: true }) // '2026-07-04'
 */
export function dayAsMeant(text: string, { dayFirst }: Survey): string {
  const day = text.replace(/(?<=\d)(?:T|\s+)\d{1,2}:\d{2}.*$/s, '');
  const [, one, two, year] = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4}|\d{2})$/.exec(day) ?? [];
  if (dayFirst === null || one === undefined || two === undefined || year === undefined) return day;
  const [d, m] = dayFirst ? [one, two] : [two, one];
  return `${year.length === 2 ? `20${year}` : year}-${m.padStart(2, '0')}-${d.padStart(2, '0')}`;
}
