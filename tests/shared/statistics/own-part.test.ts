/** A member's part in a regression: what its series says is what eigenvectors say. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { at, dot, rowOf, rowProducts } from '../../../shared/statistics/matrix.ts';
import { inverseRoot, ownPart } from '../../../shared/statistics/own-part.ts';
import { withinMember } from '../../../shared/statistics/within-member.ts';

const SIZE = 5;
const numbers = (length: number) =>
  fc.array(fc.integer({ min: -100, max: 100 }), { minLength: length, maxLength: length });
const entries = (given: readonly number[]) => Float64Array.from(given, (number) => number / 100);

describe('(I - Q) to the power -1/2 by its series', () => {
  test('of one direction: 1 / 0.95 where the part is 0.0975', () => {
    expect(at(inverseRoot(Float64Array.of(0.0975), 0.0975, Float64Array.of(1), 1), 0)).toBeCloseTo(
      1 / 0.95,
      15,
    );
  });

  test('twice, times I - Q, gives every vector back', () => {
    fc.assert(
      fc.property(
        numbers(SIZE * SIZE),
        numbers(3 * SIZE),
        fc.double({ min: 0, max: 0.125, noNaN: true }),
        (matrix, given, norm) => {
          // A A' has no eigenvalue below 0.
          const whole = rowProducts(entries(matrix), entries(matrix), SIZE);
          const length = Math.sqrt(dot(whole, whole)) || 1;
          const own = whole.map((value) => (norm * value) / length);
          const vectors = entries(given);
          const twice = inverseRoot(own, norm, inverseRoot(own, norm, vectors, SIZE), SIZE);
          const taken = rowProducts(twice, own, SIZE);
          vectors.forEach((value, place) => {
            expect(at(twice, place) - at(taken, place)).toBeCloseTo(value, 13);
          });
        },
      ),
    );
  });
});

describe("a member's part", () => {
  /** Each of so many members has the same four pieces: by turns two kinds, in two weights. */
  const fitOf = (members: number) =>
    withinMember({
      count: 4 * members,
      member: Array.from({ length: 4 * members }, (_, row) => row % members),
      measured: Array.from({ length: 4 * members }, (_, row) => 10 + Math.floor(row / members)),
      response: Array.from({ length: 4 * members }, (_, row) => Math.sin(row)),
      factors: [
        {
          codes: Array.from({ length: 4 * members }, (_, row) => Math.floor(row / members) % 2),
          levels: 2,
        },
      ],
    });

  // Up to 8 by eigenvectors, beyond by the series.
  test.each([2, 5, 40])('of %i who are alike is one in so many, and so the rest is stretched', (members) => {
    const fit = fitOf(members);
    const identity = Float64Array.of(1, 0, 0, 1);
    for (let member = 0; member < members; member++) {
      const part = ownPart(fit, member);
      expect(part?.alone).toEqual([]);
      part?.own.forEach((value, place) => {
        expect(value).toBeCloseTo(at(identity, place) / members, 12);
      });
      part?.adjust(identity).forEach((value, place) => {
        expect(value).toBeCloseTo(at(identity, place) / Math.sqrt(1 - 1 / members), 12);
      });
    }
  });

  test('of one alone is all there is', () => {
    const part = ownPart(fitOf(1), 0);
    expect(part?.alone.map(({ own }) => own)).toEqual([expect.closeTo(1, 12), expect.closeTo(1, 12)]);
    expect(part?.adjust(Float64Array.of(1, 2)).every((value) => value === 0)).toBe(true);
  });

  test('of pieces that do not vary is none', () => {
    const fit = withinMember({
      count: 4,
      member: [0, 0, 1, 1],
      measured: [10, 12, 11, 11],
      response: [0.2, 0.3, 0.2, 0.3],
      factors: [],
    });
    expect(rowOf(fit.basis, 0, 1)).toHaveLength(1);
    expect(ownPart(fit, 1)).toBeNull();
  });
});
