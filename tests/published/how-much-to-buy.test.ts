/** How much to buy, and how many it feeds, as published. Each source rounds in its own direction, told beside it. */
import { describe, expect, test } from 'vitest';
import { type Currency, moneyNumber, type Price, paid } from '../../shared/measure/money.ts';
import { shows } from '../../shared/measure/show.ts';
import { NANOGRAMS, type Nanograms } from '../../shared/measure/units.ts';
import { portionsIn, weightToBuy } from '../../shared/yield/portions.ts';
import { lb } from '../shared/yield/samples.ts';

const oz = (weight: number): Nanograms => Math.round(weight * NANOGRAMS.oz) as Nanograms;
const pounds = (weight: Nanograms): number => weight / NANOGRAMS.lb;
/** Pounds to buy of what yields so much of a pound. */
const toBuy = (needed: Nanograms, gives: number): number => pounds(weightToBuy(needed, lb(1), lb(gives)));

/** The Food Buying Guide's: amounts to buy go up to the next quarter pound, servings down to a whole one. */
const upToQuarter = (weight: number): number => Math.ceil(weight * 4 - 1e-9) / 4;

describe('USDA FNS, Food Buying Guide', () => {
  test('Method 1, example C: 127.5 oz of beef round at 0.61 are 13.06 lb, rounded up to 13 lb 4 oz', () => {
    const needed = oz(45 * 1.5 + 30 * 2);
    expect(needed / NANOGRAMS.oz).toBeCloseTo(127.5, 9);
    // 9.76 servings of an ounce to the pound.
    expect(lb(0.61) / NANOGRAMS.oz).toBeCloseTo(9.76, 9);
    expect(toBuy(needed, 0.61)).toBeCloseTo(13.06, 2);
    expect(upToQuarter(toBuy(needed, 0.61))).toBe(13.25);
    expect(shows({ locale: 'en-US', units: 'lb' }).weight(lb(13.25))).toBe('13 lb 4 oz');
  });

  test('appendix B: 2 lb at 0.61 are 3.28, rounded up to 3.5 lb', () => {
    expect(toBuy(lb(2), 0.61)).toBeCloseTo(3.28, 2);
    expect(upToQuarter(toBuy(lb(2), 0.61))).toBe(3.5);
  });

  test('ground beef at 0.74: 11.84 one-ounce servings a pound; a hundred take 8.446, rounded up to 8.5 lb', () => {
    expect(lb(0.74) / NANOGRAMS.oz).toBeCloseTo(11.84, 9);
    expect(toBuy(oz(100), 0.74)).toBeCloseTo(8.446, 3);
    expect(upToQuarter(toBuy(oz(100), 0.74))).toBe(8.5);
  });

  test('230 servings of 2 oz: 39.1 lb by hundreds that were rounded up before, where 38.85 would do', () => {
    const hundreds = (230 * 2) / 100;
    expect(hundreds * upToQuarter(toBuy(oz(100), 0.74))).toBeCloseTo(39.1, 9);
    expect(toBuy(oz(230 * 2), 0.74)).toBeCloseTo(38.85, 2);
  });

  test('36 lb of turkey at 0.47 are 16.92 lb, 270.72 oz: 90 servings of 3 oz, rounded down', () => {
    const served = lb(36 * 0.47);
    expect(pounds(served)).toBeCloseTo(16.92, 9);
    expect(served / NANOGRAMS.oz).toBeCloseTo(270.72, 6);
    expect(portionsIn(served, oz(3))).toBe(90);
  });
});

describe('UF/IFAS FCS8718', () => {
  const price = (amount: number): Price => ({
    amount: Math.round(amount * 10_000),
    basis: 'lb',
    currency: 'USD' as Currency,
    text: '',
  });

  // Cost of a serving: price over servings in a pound, printed to the cent, halves up.
  test.each([
    [3.29, 3, '$1.10'],
    [3.19, 2, '$1.60'],
  ])('%d a pound at %d servings is %s', (amount, servings, printed) => {
    const cost = paid(price(amount), Math.round(NANOGRAMS.lb / servings) as Nanograms);
    expect(moneyNumber(cost)).toBeCloseTo(amount / servings, 9);
    expect(shows({ locale: 'en-US', units: 'lb' }).money(paid(price(amount), lb(1 / servings)))).toBe(
      printed,
    );
  });

  // A pound that gives so many servings of 3 oz; the table gives halves, so nothing is rounded.
  test.each([
    ['brisket', 3],
    ['chuck, bone in', 2],
    ['chuck, boneless', 2.5],
    ['short ribs', 2],
    ['whole chicken', 2],
  ])('%s: %d servings a pound; 30 of them take 30 over that', (_, servings) => {
    const served = oz(3 * servings);
    expect(portionsIn((served * 2) as Nanograms, oz(3))).toBe(servings * 2);
    expect(toBuy(oz(30 * 3), (3 * servings) / 16)).toBeCloseTo(30 / servings, 9);
  });
});

describe('common practice, no source: shoulder for pulling loses 40 %', () => {
  test('16 oz give 9.6 oz, 2.4 servings of 4 oz', () => {
    const served = oz(16 * 0.6);
    expect(served / oz(4)).toBeCloseTo(2.4, 9);
    expect(portionsIn(served, oz(4))).toBe(2);
  });
  test.each([
    [30, 12.5],
    [60, 25],
  ])('%d servings need %d lb', (servings, needed) => {
    expect(toBuy(oz(4 * servings), 0.6)).toBeCloseTo(needed, 9);
  });
});
