/** Order statistics by selection are what sorting finds, to the last digit. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { at } from '../../../shared/statistics/matrix.ts';
import { median, select, selectQuantile } from '../../../shared/statistics/median.ts';
import { quantile } from '../../../shared/statistics/quantile.ts';

const many = { minLength: 1, maxLength: 300, size: 'max' } as const;
const values = fc.oneof(
  fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), many),
  // Many equal ones.
  fc.array(fc.integer({ min: 0, max: 5 }), many),
  fc.array(fc.integer(), many).map((numbers) => numbers.sort((one, two) => one - two)),
);

describe('what stands at a place of the sorted values', () => {
  test('is found, with the lesser before it and the greater behind it', () => {
    fc.assert(
      fc.property(values, fc.nat(), (given, any) => {
        const rank = any % given.length;
        const moved = Float64Array.from(given);
        const found = select(moved, rank);
        expect(found === at(Float64Array.from(given).sort(), rank)).toBe(true);
        expect(moved.subarray(0, rank).every((value) => value <= found)).toBe(true);
        expect(moved.subarray(rank).every((value) => value >= found)).toBe(true);
        expect(moved.slice().sort()).toEqual(Float64Array.from(given).sort());
      }),
    );
  });

  test('is found in values that were chosen to make it slow', () => {
    const slow = slowest(5000);
    const sorted = slow.slice().sort();
    for (const rank of [0, 1, 2500, 4998, 4999]) expect(select(slow.slice(), rank)).toBe(at(sorted, rank));
  });
});

describe('the median', () => {
  test('is the quantile of the sorted values at one half', () => {
    fc.assert(
      fc.property(values, (given) => {
        const sorted = Float64Array.from(given).sort();
        expect(median(Float64Array.from(given)) === quantile(sorted, 0.5)).toBe(true);
      }),
    );
  });

  test('and so is any other quantile', () => {
    fc.assert(
      fc.property(values, fc.double({ min: 0, max: 1, noNaN: true }), (given, p) => {
        const sorted = Float64Array.from(given).sort();
        expect(selectQuantile(Float64Array.from(given), p) === quantile(sorted, p)).toBe(true);
      }),
    );
  });

  test('of nothing is a fault of the caller', () => {
    expect(() => median(new Float64Array())).toThrow(RangeError);
  });
});

/**
 * Whenever three values are looked at, two of them turn out to be the least yet: each round parts off two values only
 * (after McIlroy, "A Killer Adversary for Quicksort", Software: Practice and Experience 29:341, 1999).
 */
function slowest(count: number): Float64Array {
  const chosen = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const order = Array.from({ length: count }, (_, place) => place);
  let least = 0;
  for (let low = 0; low < count - 1; low += 2) {
    const middle = (low + count - 1) >>> 1;
    chosen[at(order, low)] = least++;
    if (middle > low) chosen[at(order, middle)] = least++;
    // The pivot is the second of them, and changes places with what stands behind the first.
    [order[low + 1], order[middle]] = [at(order, middle), at(order, low + 1)];
  }
  return chosen.map((value) => (value === Number.POSITIVE_INFINITY ? least++ : value));
}
