/** Small dense matrices and vectors as flat arrays of numbers, row by row. */

/**
 * The entry at `place`; places are the caller's to keep inside. Loops over many rows read their arrays themselves
 * (`values[place] ?? 0`): here arrays of all kinds come by, for which no engine makes it quick.
 */
export const at = (from: ArrayLike<number>, place: number): number => from[place] ?? 0;

/** Adds `value` to the entry at `place`. */
export function addTo(to: Float64Array, place: number, value: number): void {
  to[place] = (to[place] ?? 0) + value;
}

/**
 * The sum of the products of two rows of numbers of one length.
 * @example dot([1, 2], [3, 4]) // 11
 */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let total = 0;
  for (let place = 0; place < a.length; place++) total += (a[place] ?? 0) * (b[place] ?? 0);
  return total;
}

/** Row `row` of a matrix with `columns` columns, as a view: what is written there is written to the matrix. */
export const rowOf = (matrix: Float64Array, row: number, columns: number): Float64Array =>
  matrix.subarray(row * columns, (row + 1) * columns);

/**
 * A matrix, of as many columns as the vector is long, times the vector.
 * @example timesVector(Float64Array.of(1, 2, 3, 4), [1, 1]) // [3, 7]
 */
export function timesVector(matrix: Float64Array, vector: ArrayLike<number>): Float64Array {
  const columns = vector.length;
  const product = new Float64Array(columns === 0 ? 0 : matrix.length / columns);
  for (let row = 0; row < product.length; row++) {
    let total = 0;
    for (let column = 0; column < columns; column++) {
      total += (matrix[row * columns + column] ?? 0) * (vector[column] ?? 0);
    }
    product[row] = total;
  }
  return product;
}

/**
 * The products of the rows of one matrix with the rows of another, both of `columns` columns: A B'.
 * @param into where they are written
 * @example rowProducts(Float64Array.of(1, 2, 3, 4), Float64Array.of(1, 1), 2) // [3, 7]
 */
export function rowProducts(
  a: Float64Array,
  b: Float64Array,
  columns: number,
  into: Float64Array = new Float64Array(columns === 0 ? 0 : (a.length * b.length) / columns ** 2),
): Float64Array {
  let place = 0;
  for (let one = 0; one < a.length; one += columns) {
    for (let other = 0; other < b.length; other += columns) {
      let total = 0;
      for (let column = 0; column < columns; column++) {
        total += (a[one + column] ?? 0) * (b[other + column] ?? 0);
      }
      into[place++] = total;
    }
  }
  return into;
}
