/** The regression within members: everyone compared only with themself, so who buys big cannot matter. */
import { addTo, at, dot, rowOf, rowProducts } from './matrix.ts';
import { type MemberSums, memberSums, type Regression } from './member-sums.ts';
import { symmetricEigen } from './symmetric-eigen.ts';

export interface WithinFit {
  sums: MemberSums;
  /** How many directions the columns have apart from each other. */
  rank: number;
  /** By column: 1 / its length, or 0 where the column does not vary within any member. */
  scales: Float64Array;
  /** The directions in scaled columns, each of length 1. */
  directions: readonly Float64Array[];
  /** The same directions, row by row, scaled so that the columns' products along them are the identity. */
  basis: Float64Array;
  /** By direction: how far the response goes along it. */
  along: Float64Array;
  /** By column: effects, of all that fit equally well the smallest. Only contrasts of them mean anything. */
  effects: Float64Array;
  /** The sum of squares that the columns leave of the response, at least 0. */
  residualSquares: number;
  /** Pieces - members - rank; 0 or less when nothing is left to tell noise by. */
  residualDf: number;
}

/** A column that varies less than this part of its sum of squares does not vary. */
const CONSTANT = 1e-10;
/** A direction shorter than this part of the longest is a repetition of the others. */
const REPEATED = 1e-9;

/**
 * Least squares of a response on columns with a level of its own for every member (fixed effects; Mundlak 1978), from
 * sums by member. No level of a factor is the reference: columns that repeat others are left to the rank, and
 * `withinContrasts` tells which differences the data can show.
 * @example
 * // two members, each with 10 and 12 lb and shares 0.20, 0.22 and 0.30, 0.34: effects [0.015] a pound, residualDf 1
 */
export function withinMember(regression: Regression): WithinFit {
  const sums = memberSums(regression);
  const { columns, members, count } = sums;
  const products = totalOver(members, sums.products, columns * columns);
  const withResponse = totalOver(members, sums.withResponse, columns);
  const scales = Float64Array.from({ length: columns }, (_, column) => {
    const squares = at(products, column * (columns + 1));
    return squares > CONSTANT * at(sums.rawSquares, column) ? 1 / Math.sqrt(squares) : 0;
  });
  const { directions, basis } = directionsOf(products, scales);
  const along = rowProducts(basis, withResponse, columns);
  const effects = new Float64Array(columns);
  along.forEach((length, direction) => {
    rowOf(basis, direction, columns).forEach((part, column) => {
      addTo(effects, column, part * length);
    });
  });
  return {
    sums,
    rank: directions.length,
    scales,
    directions,
    basis,
    along,
    effects,
    residualSquares: Math.max(0, sums.responseSquares - dot(along, along)),
    residualDf: count - members - directions.length,
  };
}

/** The sum over members of what each has `size` entries of. */
function totalOver(members: number, byMember: Float64Array, size: number): Float64Array {
  const total = new Float64Array(size);
  for (let member = 0; member < members; member++) {
    const start = member * size;
    for (let place = 0; place < size; place++) {
      total[place] = (total[place] ?? 0) + (byMember[start + place] ?? 0);
    }
  }
  return total;
}

/** The directions in which the columns vary, from the eigenvectors of their correlations. */
function directionsOf(products: Float64Array, scales: Float64Array) {
  const columns = scales.length;
  const correlations = products.map((value, place) => {
    const [row, column] = [Math.floor(place / columns), place % columns];
    return at(scales, row) * value * at(scales, column);
  });
  const { values, vectors } = symmetricEigen(correlations, columns);
  let most = 0;
  for (const value of values) if (value > most) most = value;
  const kept = Array.from(values.keys()).filter((place) => at(values, place) > REPEATED * most);
  const directions = kept.map((place) => rowOf(vectors, place, columns));
  const basis = new Float64Array(kept.length * columns);
  kept.forEach((place, row) => {
    const length = Math.sqrt(at(values, place));
    rowOf(vectors, place, columns).forEach((part, column) => {
      basis[row * columns + column] = (at(scales, column) * part) / length;
    });
  });
  return { directions, basis };
}
