/** Eigenvalues and eigenvectors of small symmetric matrices. */
import { at } from './matrix.ts';

export interface Eigen {
  /** In no order. */
  values: Float64Array;
  /** Of length 1 and at right angles, row by row: vector q belongs to value q. */
  vectors: Float64Array;
}

/** Convergence is quadratic: five to ten sweeps are usual, so many are never needed. */
const MOST_SWEEPS = 60;

/** What is left beside the diagonal, relative to the whole matrix, that no longer shows in a double. */
const NOTHING = 1e-17;

/**
 * The eigendecomposition of a symmetric matrix by Jacobi's rotations (Jacobi 1846; Golub & Van Loan, Matrix
 * Computations, 8.5): as exact as doubles allow, and quick for the dozen columns that a debate has.
 * @param matrix `size` x `size`, row by row, finite; not changed
 * @example symmetricEigen(Float64Array.of(2, 1, 1, 2), 2).values // 1 and 3
 */
export function symmetricEigen(matrix: Float64Array, size: number): Eigen {
  const rest = matrix.slice();
  const vectors = new Float64Array(size * size);
  for (let place = 0; place < size; place++) vectors[place * (size + 1)] = 1;
  let whole = 0;
  for (const entry of rest) whole += entry * entry;
  const nothing = NOTHING * Math.sqrt(whole);
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) if (!sweepOver(rest, vectors, size, nothing)) break;
  return { values: Float64Array.from({ length: size }, (_, place) => at(rest, place * (size + 1))), vectors };
}

/** One rotation for each pair of columns that still mix; false if there was none. */
function sweepOver(rest: Float64Array, vectors: Float64Array, size: number, nothing: number): boolean {
  let turned = false;
  for (let first = 0; first < size; first++) {
    for (let second = first + 1; second < size; second++) {
      if (Math.abs(at(rest, first * size + second)) <= nothing) continue;
      rotate(rest, vectors, size, first, second);
      turned = true;
    }
  }
  return turned;
}

/** Turns two axes by the angle that leaves nothing between them. */
function rotate(
  rest: Float64Array,
  vectors: Float64Array,
  size: number,
  first: number,
  second: number,
): void {
  const [onFirst, onSecond] = [first * (size + 1), second * (size + 1)];
  const between = at(rest, first * size + second);
  const ratio = (at(rest, onSecond) - at(rest, onFirst)) / (2 * between);
  // The smaller of the two angles; for huge ratios the square would overflow.
  const tangent =
    Math.abs(ratio) > 1e150
      ? 1 / (2 * ratio)
      : Math.sign(ratio || 1) / (Math.abs(ratio) + Math.sqrt(ratio * ratio + 1));
  const cosine = 1 / Math.sqrt(tangent * tangent + 1);
  const sine = tangent * cosine;
  rest[onFirst] = at(rest, onFirst) - tangent * between;
  rest[onSecond] = at(rest, onSecond) + tangent * between;
  rest[first * size + second] = 0;
  rest[second * size + first] = 0;
  for (let other = 0; other < size; other++) {
    if (other !== first && other !== second) {
      turn(rest, first * size + other, second * size + other, cosine, sine);
      rest[other * size + first] = at(rest, first * size + other);
      rest[other * size + second] = at(rest, second * size + other);
    }
    turn(vectors, first * size + other, second * size + other, cosine, sine);
  }
}

function turn(of: Float64Array, onFirst: number, onSecond: number, cosine: number, sine: number): void {
  const [a, b] = [at(of, onFirst), at(of, onSecond)];
  of[onFirst] = cosine * a - sine * b;
  of[onSecond] = sine * a + cosine * b;
}
