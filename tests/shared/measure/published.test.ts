/** Figures that others have published, each beside the name of its source. */
import { describe, expect, test } from 'vitest';
import {
  addMoney,
  type Currency,
  forWeight,
  moneyNumber,
  moneyRatio,
  paid,
  perWeight,
  readPrice,
  roundHalfUp,
  subtractMoney,
} from '../../../shared/measure/money.ts';
import { shows } from '../../../shared/measure/show.ts';
import { grams, NANOGRAMS, type Nanograms } from '../../../shared/measure/units.ts';
import { readWeight } from '../../../shared/measure/weight.ts';
import { READERS } from './reading.ts';

const USD = 'USD' as Currency;
const show = shows({ locale: 'en-US', units: 'lb' });
const weight = (text: string): Nanograms => readWeight(text, READERS.lb).weight;
const pounds = (text: string): number => weight(text) / NANOGRAMS.lb;
const price = (text: string) => readPrice(text, { option: 'price', units: 'lb', currency: USD });
const bill = (at: string, of: string) => paid(price(at), weight(of));

describe('NIST Handbook 44, App. C', () => {
  test('the avoirdupois pound and ounce are exact', () => {
    expect(grams(NANOGRAMS.lb)).toBe(453.59237);
    expect(grams(NANOGRAMS.oz)).toBe(28.349523125);
    expect(16 * NANOGRAMS.oz).toBe(NANOGRAMS.lb);
  });

  // The rest of this block is exact arithmetic on those two.
  test('a kilo is 2.204622621848776 lb, or 35.27396194958041 oz', () => {
    expect(NANOGRAMS.kg / NANOGRAMS.lb).toBeCloseTo(2.204622621848776, 14);
    expect(NANOGRAMS.kg / NANOGRAMS.oz).toBeCloseTo(35.27396194958041, 13);
  });

  test('2.9 lb is 2 lb 14.4 oz, not 2 lb 9 oz: 5.4 oz apart', () => {
    expect(weight('2.9 lb')).toBe(weight('2 lb 14.4 oz'));
    expect(grams(weight('2.9 lb'))).toBe(1315.417873);
    expect(weight('2 lb 9 oz')).toBe(weight('2.5625 lb'));
    expect(grams(weight('2 lb 9 oz'))).toBe(1162.330448125);
    expect((weight('2.9 lb') - weight('2 lb 9 oz')) / NANOGRAMS.oz).toBeCloseTo(5.4, 12);
  });

  test.each([
    ['12.8 lb', '12 lb 12.8 oz'],
    ['5.5 lb', '5 lb 8 oz'],
    ['7.625 lb', '7 lb 10 oz'],
    ['0.78125 lb', '12.5 oz'],
    ['2.5875 lb', '2 lb 9.4 oz'],
  ])('%s is %s', (decimal, mixed) => {
    expect(weight(decimal)).toBe(weight(mixed));
    expect(show.weight(weight(decimal))).toBe(mixed);
  });
});

describe('USDA SR28, WEIGHT', () => {
  test('row 13803: a pound is 453.6 g', () => {
    expect(grams(weight('1 lb')).toFixed(1)).toBe('453.6');
  });
  test('row 13804: an ounce is 28.35 g', () => {
    expect(grams(weight('1 oz')).toFixed(2)).toBe('28.35');
  });
});

describe('common practice, no source', () => {
  test.each([
    ['3 lb 1 oz', '3.06 lb'],
    ['3 lb 7.2 oz', '3.45 lb'],
  ])('%s is written %s', (mixed, decimal) => {
    expect(show.weightIn(weight(mixed), 'lb')).toBe(decimal);
    expect(pounds(mixed)).toBeCloseTo(Number.parseFloat(decimal), 2);
  });
});

describe('food-cost textbook exercises', () => {
  test('beef tenderloin, yield test: 8 lb 8 oz at 4.19 is 35.615 exactly, printed 35.62', () => {
    const money = bill('4.19/lb', '8 lb 8 oz');
    expect(money.numerator * 1000n).toBe(35_615n * money.denominator);
    expect(show.money(money)).toBe('$35.62');
  });

  test('beef tenderloin: 0-12 at 2.49 credited leaves 33.7475, 11.2492 a pound, 5.62 the portion, 2.6848 times', () => {
    const cost = subtractMoney(bill('4.19/lb', '8 lb 8 oz'), bill('2.49/lb', '12 oz'));
    expect(moneyNumber(cost)).toBe(33.7475);
    const each = perWeight(cost, weight('3 lb'), 'lb');
    if (each === null) throw new Error('3 lb is not nothing');
    expect(moneyNumber(each)).toBeCloseTo(11.2492, 4);
    expect(show.money(forWeight(each, weight('8 oz'), 'lb'))).toBe('$5.62');
    expect(moneyRatio(each, bill('4.19/lb', '1 lb'))).toBeCloseTo(2.6848, 4);
  });

  test('rib: 38 lb 12 oz at 3.19 is 123.61, and 10.1775 is credited', () => {
    expect(show.money(bill('3.19/lb', '38 lb 12 oz'))).toBe('$123.61');
    const credits = [
      bill('0.32/lb', '4 lb 4 oz'),
      bill('1.49/lb', '3 lb 4 oz'),
      bill('1.59/lb', '2 lb 8 oz'),
    ];
    expect(moneyNumber(credits.reduce(addMoney))).toBe(10.1775);
  });

  test('lamb loin: 12 lb at 6.65 is 79.80; 1 lb 8 oz at 4.60 is 6.90; 66.80 stays, 11.13 a pound', () => {
    expect(show.money(bill('6.65/lb', '12 lb'))).toBe('$79.80');
    expect(show.money(bill('4.60/lb', '1.5 lb'))).toBe('$6.90');
    const usable = subtractMoney(
      subtractMoney(bill('6.65/lb', '12 lb'), bill('6.10/lb', '1 lb')),
      bill('4.60/lb', '1 lb 8 oz'),
    );
    expect(show.money(usable)).toBe('$66.80');
    const each = perWeight(usable, weight('6 lb'), 'lb');
    expect(each && show.money(each)).toBe('$11.13');
    expect(each && show.money(forWeight(each, weight('5 oz'), 'lb'))).toBe('$3.48');
  });
});

describe('UF/IFAS FCS8718, servings in a pound', () => {
  test('3.19 a pound at two servings is 1.60, which floating point prints as 1.59', () => {
    expect((3.19 / 2).toFixed(2)).toBe('1.59');
    expect(show.money(bill('3.19/lb', '0.5 lb'))).toBe('$1.60');
  });
  test('3.29 a pound at three servings is 1.10', () => {
    expect(show.money(bill('3.29/lb', '1/3 lb'))).toBe('$1.10');
  });
});

describe('Price Marking Order (NI) 2004, art. 13', () => {
  test.each([
    ['1.0150/kg', '1 kg', 102n],
    ['1.0149/kg', '1 kg', 101n],
    ['.0050/kg', '1 kg', 1n],
  ])('%s for %s rounds a half up to %s', (at, of, cents) => {
    expect(roundHalfUp(paid(price(at), weight(of)))).toBe(cents);
  });
});
