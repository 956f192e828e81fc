/** What one member's own pieces are in a regression within members, and the fit as it would be without them. */
import { at, dot, rowOf, rowProducts } from './matrix.ts';
import { symmetricEigen } from './symmetric-eigen.ts';
import type { WithinFit } from './within-member.ts';

export interface OwnPart {
  /** Q = L'GL, L the fit's basis and G the products of the member's columns: how much of each direction is theirs. */
  own: Float64Array;
  /** What the fit leaves of the member's response, in the fit's directions. */
  residual: Float64Array;
  /** (I - Q) to the power -1/2 times each of these vectors, row by row, without what they have of `alone`. */
  adjust: (vectors: Float64Array) => Float64Array;
  /** The directions of which nothing is left without the member, and how much of each is theirs: 1, but for rounding. */
  alone: readonly { vector: Float64Array; own: number }[];
}

/** What is left of a direction without a member, below which nothing is. */
const NOTHING_LEFT = 1e-8;
/** Members who have no more of the whole than this, as nearly all in a large club, need no eigenvectors. */
const SMALL = 1 / 8;
/** What no longer shows in a double beside 1. */
const NO_DIGIT = 1e-16;

/**
 * A member's part in a fit; null of one whose pieces do not vary.
 * @example
 * // of one column alone: own = the member's part of its sum of squares
 */
export function ownPart({ sums, basis, along, rank }: WithinFit, member: number): OwnPart | null {
  const { columns } = sums;
  const products = rowOf(sums.products, member, columns * columns);
  if (products.every((value) => value === 0)) return null;
  const own = rowProducts(rowProducts(basis, products, columns), basis, columns);
  const residual = rowProducts(basis, rowOf(sums.withResponse, member, columns), columns);
  const fitted = rowProducts(own, along, rank);
  for (let place = 0; place < rank; place++) residual[place] = at(residual, place) - at(fitted, place);
  const norm = Math.sqrt(dot(own, own));
  const adjustment =
    norm > SMALL
      ? byEigenvectors(own, rank)
      : { adjust: (vectors: Float64Array) => inverseRoot(own, norm, vectors, rank), alone: [] };
  return { own, residual, ...adjustment };
}

/**
 * (I - Q) to the power -1/2 times each vector by its binomial series, the sum of (2k choose k) / 4^k Q^k: of a member
 * with a small part a few terms say it to the last digit, far sooner than eigenvectors.
 * @param norm the root of the sum of Q's squares, below 1: no eigenvalue is larger
 * @param vectors row by row, of `size` entries each
 * @example inverseRoot(Float64Array.of(0.19), 0.19, Float64Array.of(1), 1) // [1 / 0.9]
 */
export function inverseRoot(
  own: Float64Array,
  norm: number,
  vectors: Float64Array,
  size: number,
): Float64Array {
  const sum = vectors.slice();
  let [term, next] = [vectors.slice(), new Float64Array(vectors.length)];
  for (let power = 1, largest = norm; largest > NO_DIGIT; power++, largest *= norm) {
    rowProducts(term, own, size, next);
    [term, next] = [next, term];
    const factor = (2 * power - 1) / (2 * power);
    for (let place = 0; place < sum.length; place++) {
      term[place] = factor * (term[place] ?? 0);
      sum[place] = (sum[place] ?? 0) + (term[place] ?? 0);
    }
  }
  return sum;
}

/** The same by eigenvectors, of a part of any size. */
function byEigenvectors(own: Float64Array, size: number): Pick<OwnPart, 'adjust' | 'alone'> {
  const { values, vectors } = symmetricEigen(own, size);
  const directions = Array.from(values, (value, place) => ({
    vector: rowOf(vectors, place, size),
    own: value,
  }));
  const shared = directions.filter((direction) => 1 - direction.own >= NOTHING_LEFT);
  const root = new Float64Array(size * size);
  for (const { vector, own: part } of shared) {
    const stretch = 1 / Math.sqrt(1 - part);
    for (let place = 0; place < root.length; place++) {
      const [row, column] = [Math.floor(place / size), place % size];
      root[place] = at(root, place) + stretch * at(vector, row) * at(vector, column);
    }
  }
  return {
    adjust: (asked) => rowProducts(asked, root, size),
    alone: directions.filter((direction) => 1 - direction.own < NOTHING_LEFT),
  };
}
