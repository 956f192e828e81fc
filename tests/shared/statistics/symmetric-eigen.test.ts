/** The eigendecomposition must give its matrix back, whatever the matrix. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { at, dot, rowOf, timesVector } from '../../../shared/statistics/matrix.ts';
import { symmetricEigen } from '../../../shared/statistics/symmetric-eigen.ts';

const sorted = (values: ArrayLike<number>) => Array.from(values).sort((a, b) => a - b);

describe('known matrices', () => {
  test.each([
    ['two by two', [2, 1, 1, 2], [1, 3]],
    ['a diagonal', [5, 0, 0, 0, -2, 0, 0, 0, 5], [-2, 5, 5]],
    ['nothing', [0, 0, 0, 0], [0, 0]],
    ['of rank one', [1, 2, 2, 4], [0, 5]],
    ['one number', [7], [7]],
    ['none', [], []],
    // Second differences: 2 - 2 cos(k pi / 4), k = 1..3.
    ['second differences', [2, -1, 0, -1, 2, -1, 0, -1, 2], [2 - Math.SQRT2, 2, 2 + Math.SQRT2]],
  ])('%s', (_name, matrix, values) => {
    const found = sorted(symmetricEigen(Float64Array.from(matrix), Math.sqrt(matrix.length)).values);
    found.forEach((value, place) => {
      expect(value).toBeCloseTo(values[place] ?? Number.NaN, 14);
    });
    expect(found).toHaveLength(values.length);
  });

  test("Hilbert's matrix of four, known for its small values", () => {
    const hilbert = Float64Array.from(
      { length: 16 },
      (_, place) => 1 / (Math.floor(place / 4) + (place % 4) + 1),
    );
    const found = sorted(symmetricEigen(hilbert, 4).values);
    const product = found.reduce((all, value) => all * value, 1);
    // Its determinant is 1 / 6048000.
    expect(product * 6_048_000).toBeCloseTo(1, 10);
  });
});

test('of any matrix: A v = value v, and the vectors are of length 1 at right angles', () => {
  const matrices = fc.integer({ min: 1, max: 9 }).chain((size) =>
    fc
      .array(fc.oneof(fc.double({ min: -1e3, max: 1e3, noNaN: true }), fc.constantFrom(0, 1, -1)), {
        minLength: size * size,
        maxLength: size * size,
      })
      .map((entries) => ({ size, entries })),
  );
  fc.assert(
    fc.property(matrices, ({ size, entries }) => {
      const matrix = Float64Array.from(entries, (_, place) => {
        const [row, column] = [Math.floor(place / size), place % size];
        return at(entries, Math.min(row, column) * size + Math.max(row, column));
      });
      const { values, vectors } = symmetricEigen(matrix, size);
      const whole = Math.sqrt(dot(matrix, matrix)) + 1e-300;
      for (let one = 0; one < size; one++) {
        const vector = rowOf(vectors, one, size);
        timesVector(matrix, vector).forEach((image, place) => {
          expect(Math.abs(image - at(values, one) * at(vector, place)) / whole).toBeLessThan(1e-13);
        });
        for (let other = 0; other <= one; other++) {
          const product = dot(vector, rowOf(vectors, other, size));
          expect(Math.abs(product - (one === other ? 1 : 0))).toBeLessThan(1e-13);
        }
      }
    }),
  );
});
