import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cholesky, inverse, logDeterminant, solve } from '../../../shared/statistics/cholesky.ts';
import { at, timesVector } from '../../../shared/statistics/matrix.ts';

test('a matrix of two columns', () => {
  const root = cholesky(Float64Array.of(4, 2, 2, 5), 2) ?? new Float64Array();
  expect([...root]).toEqual([2, 0, 1, 2]);
  expect([...solve(root, [8, 12])]).toEqual([1, 2]);
  expect([...inverse(root, 2)]).toEqual([0.3125, -0.125, -0.125, 0.25]);
  expect(logDeterminant(root, 2)).toBeCloseTo(Math.log(16), 15);
});

test.each([
  ['repeating columns', [1, 2, 2, 4]],
  ['a column of zeros', [1, 0, 0, 0]],
  ['a saddle', [1, 3, 3, 1]],
  ['no numbers', [1, Number.NaN, Number.NaN, 1]],
])('%s have no root', (_name, matrix) => {
  expect(cholesky(Float64Array.from(matrix), 2)).toBeNull();
});

test('what is solved, put back, is the right side', () => {
  const values = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 20, maxLength: 20 });
  fc.assert(
    fc.property(values, (all) => {
      // Four columns' products of four rows, and 1 on the diagonal, so that there is a root.
      const matrix = Float64Array.from({ length: 16 }, (_, place) => {
        const [row, column] = [place >> 2, place & 3];
        const product = [0, 1, 2, 3].reduce(
          (sum, each) => sum + at(all, each * 4 + row) * at(all, each * 4 + column),
          0,
        );
        return product + Number(row === column);
      });
      const right = all.slice(16);
      const root = cholesky(matrix, 4);
      const back = root && timesVector(matrix, solve(root, right));
      right.forEach((value, place) => {
        expect(back?.[place]).toBeCloseTo(value, 9);
      });
    }),
  );
});
