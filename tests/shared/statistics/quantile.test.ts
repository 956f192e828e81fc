/** Type 7 of Hyndman & Fan, "Sample Quantiles in Statistical Packages", The American Statistician 50:361 (1996). */
import { describe, expect, test } from 'vitest';
import { quantile } from '../../../shared/statistics/quantile.ts';

/** By R's manual the p-quantile stands at (n - 1) p + 1, counted from 1, on the line between its neighbours. */
describe('between order statistics', () => {
  test.each([
    [[1, 2, 3, 4], 0.25, 1.75],
    [[1, 2, 3, 4], 0.5, 2.5],
    [[1, 2, 3, 4], 0.75, 3.25],
    [[1, 2, 3, 4, 5], 0.25, 2],
    [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.25, 3.25],
    [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.9, 9.1],
    [[0, 10, 30], 0.6, 14],
    [[7], 0.3, 7],
    [[1, 2], 0, 1],
    [[1, 2], 1, 2],
  ])('%j at %d: %d', (sorted, p, value) => {
    expect(quantile(sorted, p)).toBeCloseTo(value, 12);
  });

  test('of nothing is a fault of the caller', () => {
    expect(() => quantile([], 0.5)).toThrow(RangeError);
  });
});
