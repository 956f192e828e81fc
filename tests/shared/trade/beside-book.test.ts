/** Which published figure stands beside a club's own, and when it can't be compared. */
import { describe, expect, test } from 'vitest';
import { besideBook } from '../../../shared/trade/beside-book.ts';
import { BOOK, BOOK_SOURCES } from '../../../shared/trade/book.ts';
import { cutOf } from '../../../shared/trade/cuts.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';
import { speak } from '../../../shared/words/index.ts';

const NOTHING = { style: null, bone: null };
const beside = (cut: string, measure: 'trim' | 'cooking' | 'carving' | 'plate', told = {}) =>
  besideBook(cutOf(cut as CutKey), measure, { ...NOTHING, ...told });

// USDA Table of Cooking Yields for Meat and Poultry, Release 2 (2014); Food Buying Guide (turkey served, 0.47);
// SR28 refuse of cooked Boston butt (24 %) and brisket (1 %).
test.each([
  ['beef/brisket-flat', 'cooking', 0.69],
  ['beef/tri-tip', 'cooking', 0.84],
  ['pork/spareribs', 'cooking', 0.76],
  ['pork/picnic', 'cooking', 0.74],
  ['poultry/chicken-whole', 'cooking', 0.78],
  ['poultry/turkey-whole', 'cooking', 0.71],
  ['poultry/turkey-whole', 'plate', 0.47],
  ['pork/butt', 'carving', 0.76],
  ['beef/brisket-whole', 'carving', 0.99],
] as const)('%s, %s: %d', (cut, measure, share) => {
  const found = beside(cut, measure);
  expect(found?.unlike).toBeNull();
  expect(found?.share).toBeCloseTo(share, 12);
});

describe('is not comparable', () => {
  // SR28, refuse of the raw food: whole brisket to lean 30 %, Boston butt 24 %.
  test.each([
    ['beef/brisket-whole', 'trim', 0.3, 'to-lean'],
    ['pork/butt', 'plate', 0.24, 'bone-after'],
    ['beef/top-sirloin', 'cooking', 0.8, 'portions'],
    ['beef/clod', 'cooking', 0.6628, 'part'],
    ['lamb/leg', 'cooking', 0.74, 'several-cuts'],
  ] as const)('%s, %s: %d, %s', (cut, measure, share, unlike) => {
    const found = beside(cut, measure);
    expect(found?.unlike).toBe(unlike);
    expect(found?.share).toBeCloseTo(share, 12);
  });

  test('with other fat left on', () => {
    const of = (style: string) =>
      beside('beef/brisket-flat', 'cooking', { style: `brisket/${style}` })?.unlike;
    expect([of('thick'), of('quarter'), of('thin')]).toEqual(['fat', 'fat', null]);
    // A style of another family says nothing of inches.
    expect(beside('beef/brisket-flat', 'cooking', { style: 'butt/squared' })?.unlike).toBeNull();
  });

  test('without its bone', () => {
    const of = (bone: 'in' | 'out') => beside('pork/loin', 'cooking', { bone });
    expect(of('in')?.unlike).toBeNull();
    expect(of('out')?.unlike).toBe('bone');
  });
});

test('no table has a cut of the club’s own, or a cost', () => {
  expect(besideBook({ key: 'own/1' as CutKey }, 'cooking', NOTHING)).toBeNull();
  expect(beside('beef/tri-tip', 'trim')).toBeNull();
});

describe('in words', () => {
  const say = speak({ locale: 'en-US', units: 'lb' });
  test('every figure has a line without a hole', () => {
    for (const { cut, measure } of BOOK) {
      const found = beside(cut, measure);
      if (found === null) throw new Error('a figure that is not found');
      const { figure, share, unlike } = found;
      for (const units of ['lb', 'kg'] as const) {
        const { book } = speak({ locale: 'en-US', units });
        const of = { ...figure, share };
        const line = unlike === null ? book.comparable(of) : book.notComparable({ ...of, unlike });
        expect(line).toMatch(
          /^The book(?:: | has )\d+\.\d % .*\((?:USDA [\w ]+)\)(?:\.|: not comparable\.)$/,
        );
        expect(line).not.toMatch(/undefined|null|NaN/);
      }
    }
  });

  test('the tables are told in full', () => {
    expect(say.book.sources()).toHaveLength(Object.keys(BOOK_SOURCES).length);
    expect(say.book.sources()[0]).toBe(
      'USDA Cooking Yields: USDA Agricultural Research Service, Table of Cooking Yields for Meat and Poultry, Release 2, 2014.',
    );
  });
});
