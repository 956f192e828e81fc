import { describe, expect, it, test } from 'vitest';
import { ALL_FIELDS, FIELDS } from '../../../shared/csv/fields.ts';
import { readHeader } from '../../../shared/csv/header.ts';
import { HEADER_NAMES, TOTAL_NAMES } from '../../../shared/csv/header-names.ts';
import { spellings } from '../../../shared/csv/plain-words.ts';
import { PARTS } from '../../../shared/words/en/parts.ts';

/** The column that a cell names, beside the two that every table needs. */
const column = (name: string) => {
  const { columns, ignored } = readHeader(['cut', 'bought', name]);
  const found = columns.find(({ at }) => at === 2);
  return found === undefined ? ignored : [found.field, found.unit];
};

describe('the names of columns', () => {
  it('are those that stand in our own tables, in any order', () => {
    expect(FIELDS.join()).toBe(
      'piece,member,cut,grade,style,bone,pieces,bought,bagged,trim,added,cooked,scraps,served,saved,price,currency,' +
        'wrap,shop,date,note,status',
    );
    const cells = ALL_FIELDS.toReversed();
    expect(readHeader(cells).columns.map(({ field }) => field)).toEqual(cells);
  });

  it('stand for one column each, in all languages', () => {
    const claims = new Map<string, string>();
    for (const [field, names] of [...Object.entries(HEADER_NAMES), ['price in all', TOTAL_NAMES] as const]) {
      for (const name of Object.values(names).flatMap(spellings)) {
        expect([name, claims.get(name) ?? field]).toEqual([name, field]);
        claims.set(name, field);
      }
    }
  });

  it('are also the words that members read', () => {
    for (const [field, words] of Object.entries(PARTS)) {
      if (field !== 'bought') expect(column(words), words).toEqual([field, '']);
    }
  });

  test.each([
    ['Came off', 'trim', ''],
    ['  OFF THE HEAT ', 'cooked', ''],
    ['trim kg', 'trim', ' kg'],
    ['trim_kg', 'trim', ' kg'],
    ['Trim (lbs)', 'trim', ' lbs'],
    ['trim [oz]', 'trim', ' oz'],
    ['trim weight in pounds', 'trim', ' pounds'],
    ['came off, g', 'trim', ' g'],
    ['Abgeschnitten (kg)', 'trim', ' kg'],
    ['Geschaeft', 'shop', ''],
    ['Währung', 'currency', ''],
    ['WAEHRUNG', 'currency', ''],
    ['en el plato (g)', 'served', ' g'],
    ['Añadido', 'added', ''],
    ['price/lb', 'price', '/lb'],
    ['Price ($/lb)', 'price', ' $/lb'],
    ['price per kg', 'price', '/kg'],
    ['price per 100 g', 'price', '/100 g'],
    ['Preis €/kg', 'price', ' €/kg'],
    ['price EUR', 'price', ' eur'],
    ['total price', 'price', ' in all'],
    ['paid (USD)', 'price', ' usd in all'],
  ])('%j is %s, with%j after a bare number', (name, field, unit) => {
    expect(column(name)).toEqual([field, unit]);
  });

  test.each(['Farbe', 'trim stone', 'cut kg', 'price per hour', 'trim kg lb', '=1+1', '🙂'])(
    '%j is passed over, and told',
    (name) => {
      expect(column(name)).toEqual([name]);
    },
  );

  it('may have one weight in two columns, the larger unit first', () => {
    const { columns } = readHeader(['bought oz', 'cut', 'bought lb']);
    expect(columns.map(({ name }) => name)).toEqual(['bought lb', 'bought oz', 'cut']);
  });
});

describe('a header that can not be taken', () => {
  test.each([
    [['a', 'b'], 'csv-no-header', {}],
    [['cut', 'price'], 'csv-column-missing', { column: 'bought', near: null }],
    [['cut', 'boguht'], 'csv-column-missing', { column: 'bought', near: 'boguht' }],
    [['bought'], 'csv-column-missing', { column: 'cut', near: null }],
    [['cut', 'bought', 'Cut'], 'csv-column-twice', { column: 'cut', first: 'cut', second: 'Cut' }],
    [
      ['cut', 'bought', 'trim', 'came off'],
      'csv-column-twice',
      { column: 'trim', first: 'trim', second: 'came off' },
    ],
    [
      ['cut', 'bought lb', 'bought kg'],
      'csv-column-twice',
      { column: 'bought', first: 'bought lb', second: 'bought kg' },
    ],
  ])('%j: %s', (cells, code, values) => {
    expect(() => readHeader(cells)).toThrow(expect.objectContaining({ code, values }));
  });
});
