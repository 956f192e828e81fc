/** The cells of a row as texts by column: units written out, apostrophes taken back. */
import { takeBack } from './defuse.ts';
import type { Field, RowTexts } from './fields.ts';
import type { Column, Header } from './header.ts';
import { asMeant, NUMBERS, type Survey } from './survey.ts';

/** Columns that hold text as it is, so that an apostrophe may guard them. */
const TEXTS: ReadonlySet<Field> = new Set(['piece', 'member', 'shop', 'note', 'status']);
const UNITS_APART = /[\p{L}#℔:]/u;
const CURRENCY_CODE = /\b[A-Z]{3}\b/g;

/** Whether a number stands alone: what is a unit comes after its first digit. */
const numberStandsAlone = (text: string): boolean => {
  const start = text.search(/\d|[¼½¾]/);
  return start >= 0 && !UNITS_APART.test(text.slice(start));
};

function cellText(cell: string, { field, unit }: Column, survey: Survey): string {
  const text = cell.trim();
  if (text === '' || TEXTS.has(field)) return takeBack(text);
  if (!NUMBERS.has(field)) return text;
  const meant = asMeant(text, survey);
  if (unit === '') return meant;
  const alone =
    field === 'price' ? !/[/@\p{L}]/u.test(meant.replace(CURRENCY_CODE, '')) : numberStandsAlone(meant);
  return alone ? `${meant}${unit}` : meant;
}

/**
 * The texts of a row. A weight in two columns becomes one text: `14` under pounds and `13.3` under ounces is
 * `14 lb 13.3 oz`.
 */
export function rowTexts(cells: readonly string[], header: Header, survey: Survey): RowTexts {
  const texts: Partial<Record<Field, string>> = {};
  for (const column of header.columns) {
    const text = cellText(cells[column.at] ?? '', column, survey);
    if (text === '') continue;
    const before = texts[column.field];
    texts[column.field] = before === undefined ? text : `${before} ${text}`;
  }
  return texts;
}
