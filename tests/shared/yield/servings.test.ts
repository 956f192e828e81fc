/** Servings round down, what to buy rounds up. */
import { describe, expect, test } from 'vitest';
import { NANOGRAMS } from '../../../shared/measure/units.ts';
import { roundedUp, servingNamed, servingOf, servingsIn } from '../../../shared/yield/servings.ts';

const POUND = 453.59237;

describe('what to ask for in a shop', () => {
  // USDA Food Buying Guide: amounts to buy go up, to a quarter pound.
  test.each([
    [13.06, 13.25],
    [3.28, 3.5],
    [12.5, 12.5],
    [8.446, 8.5],
    [0.01, 0.25],
  ])('%d lb is %d lb', (pounds, up) => {
    expect(roundedUp(pounds * POUND, 'lb') / NANOGRAMS.lb).toBeCloseTo(up, 12);
  });

  test('in kilos to 100 g', () => {
    expect(roundedUp(6001, 'kg')).toBe(6.1 * NANOGRAMS.kg);
    expect(roundedUp(6000, 'kg')).toBe(6 * NANOGRAMS.kg);
  });
});

test('servings go down: 36 lb of turkey at 0.47 are 90 of three ounces', () => {
  // USDA Food Buying Guide: 16.92 lb, 270.72 oz.
  expect(servingsIn(36 * 0.47 * 16, 3)).toBe(90);
  expect(servingsIn(0.3, 0.1)).toBe(3);
});

test('what one eats', () => {
  expect(servingOf('sandwiches', 'lb')).toBe(4 * NANOGRAMS.oz);
  expect(servingOf('plates', 'kg')).toBe(150 * NANOGRAMS.g);
  expect(['sandwich', 'Sandwiches', ' plate', 'plates', 'plated', '5 oz'].map(servingNamed)).toEqual([
    'sandwiches',
    'sandwiches',
    'plates',
    'plates',
    null,
    null,
  ]);
});
