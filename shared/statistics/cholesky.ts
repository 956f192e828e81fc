/** Symmetric matrices that are positive definite, by their triangular root. */
import { at } from './matrix.ts';

/** A pivot below this part of its diagonal entry is none: the column repeats those before it. */
const REPEATED = 1e-12;

/**
 * The lower triangle L with L L' = the matrix (Cholesky's method), row by row; null if the matrix is not positive
 * definite, or its columns repeat each other.
 * @param matrix size x size, symmetric, row by row; the lower half is read
 * @example cholesky(Float64Array.of(4, 2, 2, 5), 2) // [2, 0, 1, 2]
 */
export function cholesky(matrix: Float64Array, size: number): Float64Array | null {
  const root = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let left = at(matrix, row * size + column);
      for (let before = 0; before < column; before++) {
        left -= at(root, row * size + before) * at(root, column * size + before);
      }
      if (column < row) root[row * size + column] = left / at(root, column * size + column);
      else if (left > REPEATED * at(matrix, row * size + row)) root[row * size + row] = Math.sqrt(left);
      else return null;
    }
  }
  return root;
}

/**
 * The x of L L' x = right.
 * @example solve(Float64Array.of(2, 0, 1, 2), [8, 12]) // [1, 2]
 */
export function solve(root: Float64Array, right: ArrayLike<number>): Float64Array {
  const size = right.length;
  const x = Float64Array.from(right);
  for (let row = 0; row < size; row++) {
    for (let before = 0; before < row; before++)
      x[row] = at(x, row) - at(root, row * size + before) * at(x, before);
    x[row] = at(x, row) / at(root, row * size + row);
  }
  for (let row = size - 1; row >= 0; row--) {
    for (let after = row + 1; after < size; after++) {
      x[row] = at(x, row) - at(root, after * size + row) * at(x, after);
    }
    x[row] = at(x, row) / at(root, row * size + row);
  }
  return x;
}

/**
 * The inverse of L L', row by row.
 * @example inverse(Float64Array.of(2, 0, 1, 2), 2) // [0.3125, -0.125, -0.125, 0.25]
 */
export function inverse(root: Float64Array, size: number): Float64Array {
  const found = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    const unit = new Float64Array(size);
    unit[row] = 1;
    found.set(solve(root, unit), row * size);
  }
  return found;
}

/**
 * The natural logarithm of the determinant of L L'.
 * @example logDeterminant(Float64Array.of(2, 0, 1, 2), 2) // ln 16
 */
export function logDeterminant(root: Float64Array, size: number): number {
  let sum = 0;
  for (let row = 0; row < size; row++) sum += 2 * Math.log(at(root, row * size + row));
  return sum;
}
