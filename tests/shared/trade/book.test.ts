/** Published figures stand as they were printed, each with its table and row. */
import { describe, expect, test } from 'vitest';
import { BOOK, BOOK_SOURCES, bookFor } from '../../../shared/trade/book.ts';
import { cutOf } from '../../../shared/trade/cuts.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';

const row = (number: string, cut: string) => {
  const found = BOOK.filter((one) => one.row === number && one.cut === cut);
  expect(found).toHaveLength(1);
  return found[0];
};

// USDA Table of Cooking Yields for Meat and Poultry, Release 2 (2014): row, yield %, n, smallest, largest, how.
test.each([
  ['13806', 'beef/brisket-flat', 69, 20, 3.042, [65, 76], 'braised'],
  ['13953', 'beef/tri-tip', 84, 20, 3.052, [77, 89], 'roasted'],
  ['23113', 'beef/chuck-eye', 80, 35, 4.64, [75.8, 93.5], 'roasted'],
  ['23125', 'beef/chuck-short-ribs', 66.07, 30, 11.76, [44.9, 97.3], 'braised'],
  ['23233', 'beef/back-ribs', 75.3, 36, 3.1, [65.2, 82.2], 'braised'],
  ['23191', 'beef/rib-roast', 76.9, 35, 2.8, [71.8, 83.5], 'roasted'],
  ['23198', 'beef/ribeye-roll', 75.8, 36, 3.9, [65.7, 84.9], 'roasted'],
  ['13870', 'beef/bottom-round', 84, 20, 2.741, [76, 88], 'roasted'],
  ['13878', 'beef/eye-of-round', 81, 20, 1.987, [75, 83], 'roasted'],
  ['10940', 'pork/spareribs', 76, 12, 3.208, [68, 79], 'roasted'],
  ['10193', 'pork/back-ribs', 82, 12, 4.09, [74, 90], 'roasted'],
  ['10075', 'pork/picnic', 74, 12, 2.72, [70, 78], 'braised'],
  ['10218', 'pork/tenderloin', 80, 1, null, null, 'roasted'],
  ['05004', 'poultry/chicken-whole', 78, null, null, [68, 84], 'roasted'],
  ['05166', 'poultry/turkey-whole', 71, 1, null, null, 'roasted'],
  ['05733', 'poultry/turkey-breast', 72, 1, null, null, 'roasted'],
] as const)('row %s: %s keeps %d % in the heat', (number, cut, percent, pieces, deviation, range, cooked) => {
  expect(row(number, cut)).toMatchObject({
    measure: 'cooking',
    tells: 'kept',
    source: 'cooking-yields',
    percent,
    pieces,
    deviation,
    range,
    cooked,
    notComparable: null,
  });
});

// USDA National Nutrient Database for Standard Reference, Release 28: refuse of the raw food, % of its weight.
test.each([
  ['13023', 'beef/brisket-whole', 30, 'trim', 'to-lean'],
  ['23596', 'beef/brisket-flat', 28, 'trim', 'to-lean'],
  ['13595', 'beef/brisket-flat', 10, 'trim', 'to-lean'],
  ['10070', 'pork/shoulder-whole', 25, 'plate', 'bone-after'],
  ['10080', 'pork/butt', 24, 'plate', 'bone-after'],
  ['10074', 'pork/picnic', 22, 'plate', 'bone-after'],
  ['10088', 'pork/spareribs', 30, 'plate', 'bone-after'],
  ['10192', 'pork/back-ribs', 37, 'plate', 'bone-after'],
  ['13147', 'beef/short-ribs', 27, 'plate', 'bone-after'],
  ['13149', 'beef/short-ribs', 59, 'plate', 'to-lean'],
  ['13815', 'beef/chuck-blade', 19, 'plate', 'bone-after'],
  ['05006', 'poultry/chicken-whole', 32, 'plate', 'bone-after'],
  ['05165', 'poultry/turkey-whole', 29, 'plate', 'bone-after'],
  ['17035', 'lamb/shoulder', 21, 'plate', 'bone-after'],
  ['17039', 'lamb/shoulder', 39, 'plate', 'to-lean'],
])('row %s: %s, %d % refuse, told under %s', (number, cut, percent, measure, notComparable) => {
  expect(row(number, cut)).toMatchObject({
    source: 'standard-reference',
    tells: 'lost',
    cooked: 'raw',
    percent,
    measure,
    notComparable,
  });
});

// USDA Food Buying Guide: 0.61 of beef round roast, 0.47 of a whole turkey, cooked and served, per pound bought.
test.each([
  ['beef/bottom-round', 61],
  ['poultry/turkey-whole', 47],
])('%s: %d % is served', (cut, percent) => {
  const served = bookFor(cutOf(cut as CutKey), 'plate').filter(({ source }) => source === 'buying-guide');
  expect(served).toMatchObject([{ percent, tells: 'kept' }]);
});

// The same database: 262 g edible of 453.6 g raw with 24 % refuse after cooking is 344.7 g off the heat, 76.0 % kept.
test('a Boston butt: edible over kept at the board is what came off the heat', () => {
  const [board] = bookFor(cutOf('pork/butt' as CutKey), 'carving');
  expect(board).toMatchObject({ percent: 24, tells: 'lost', cooked: 'roasted' });
  const cooked = 262 / (1 - (board?.percent ?? 0) / 100);
  expect(cooked).toBeCloseTo(344.7, 1);
  expect((cooked / 453.6) * 100).toBeCloseTo(76, 1);
});

describe('of a cut', () => {
  test('what can stand beside a club’s own comes first, with the most pieces', () => {
    const found = bookFor(cutOf('pork/loin' as CutKey), 'cooking');
    expect(found.map(({ row: number }) => number)).toEqual(['10039', '10047', '10031', '10990']);
    expect(bookFor(cutOf('beef/denver' as CutKey), 'cooking').map(({ percent }) => percent)).toEqual([
      64, 71,
    ]);
  });

  test('of which no table has anything, nothing', () => {
    expect(bookFor(cutOf('pork/whole-hog' as CutKey), 'cooking')).toEqual([]);
    expect(bookFor(cutOf('beef/tri-tip' as CutKey), 'trim')).toEqual([]);
  });

  test('steaks and single parts can’t stand beside a whole piece', () => {
    expect(bookFor(cutOf('beef/top-sirloin' as CutKey), 'cooking')[0]?.notComparable).toBe('portions');
    expect(bookFor(cutOf('pork/fresh-ham' as CutKey), 'cooking')[0]?.notComparable).toBe('part');
    expect(bookFor(cutOf('lamb/leg' as CutKey), 'cooking')[0]?.notComparable).toBe('several-cuts');
  });
});

test('every figure is of a cut that there is, possible, and within its own range', () => {
  for (const { cut, percent, range, row: number, source, pieces } of BOOK) {
    expect(cutOf(cut).key).toBe(cut);
    expect(percent).toBeGreaterThan(0);
    expect(percent).toBeLessThan(100);
    if (range !== null) expect(range[0] <= percent && percent <= range[1]).toBe(true);
    if (number !== null) expect(number).toMatch(/^\d{5}$/);
    if (pieces !== null) expect(Number.isInteger(pieces)).toBe(true);
    expect(BOOK_SOURCES[source].title.length).toBeGreaterThan(0);
  }
});
