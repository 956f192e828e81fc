/**
 * The bias-reduced cluster-robust variance CR2 and its Satterthwaite degrees of freedom, members being the clusters (Bell &
 * McCaffrey 2002; with absorbed effects and where the adjustment is singular: Pustejovsky & Tipton 2018).
 */
import { addTo, at, dot, rowOf, timesVector } from './matrix.ts';
import { symmetricEigen } from './symmetric-eigen.ts';
import type { WithinFit } from './within-member.ts';

/** What is left of a direction without a member, below which nothing is. */
const NOTHING_LEFT = 1e-8;
/** A part of the whole below which it is none. */
const NO_PART = 1e-9;
/** A part that is nothing but rounding. */
const NOTHING = 1e-16;

/** The sums of one contrast over members, as far as they have been added. */
export interface Work {
  /** The contrast in the fit's directions. */
  along: Float64Array;
  unitVariance: number;
  squaredScores: number;
  /** Of the members' shares in the variance: their sum, their squares, and what two members share. */
  trace: number;
  squaredTraces: number;
  /** Its lower half. */
  outer: Float64Array;
  squaredLengths: number;
  members: number;
  topMemberShare: number;
  squaredShares: number;
  restsOnOne: boolean;
}

/**
 * A contrast before the first member.
 * @param along the contrast in the fit's directions
 * @example startWork(Float64Array.of(0.6, 0.8)).unitVariance // 1
 */
export const startWork = (along: Float64Array): Work => ({
  along,
  unitVariance: dot(along, along),
  squaredScores: 0,
  trace: 0,
  squaredTraces: 0,
  outer: new Float64Array(along.length * along.length),
  squaredLengths: 0,
  members: 0,
  topMemberShare: 0,
  squaredShares: 0,
  restsOnOne: false,
});

/** A direction in which a member's own pieces vary. */
export interface OwnDirection {
  vector: Float64Array;
  /** How much of the direction is the member's, and how much is left of it without them. */
  own: number;
  left: number;
  /** What the fit leaves of the member's response along it. */
  residual: number;
}

/**
 * The eigenvectors of Q = L'GL: L the fit's basis, G the products of the member's columns. None of a member whose pieces
 * do not vary.
 * @example
 * // of one column alone: one direction, own = the member's part of its sum of squares
 */
export function ownDirections({ sums, basis, along }: WithinFit, member: number): OwnDirection[] {
  const { columns } = sums;
  const products = rowOf(sums.products, member, columns * columns);
  if (products.every((value) => value === 0)) return [];
  const size = basis.length;
  const ownPart = new Float64Array(size * size);
  basis.forEach((direction, row) => {
    const through = timesVector(products, direction);
    for (let column = 0; column <= row; column++) {
      const part = dot(through, basis[column] ?? []);
      ownPart[row * size + column] = part;
      ownPart[column * size + row] = part;
    }
  });
  const withResponse = rowOf(sums.withResponse, member, columns);
  const response = basis.map((direction) => dot(direction, withResponse));
  const { values, vectors } = symmetricEigen(ownPart, size);
  return Array.from(values, (own, place) => {
    const vector = rowOf(vectors, place, size);
    return { vector, own, left: 1 - own, residual: dot(vector, response) - own * dot(vector, along) };
  }).filter(({ own }) => own > NOTHING);
}

/**
 * Adds a member to one contrast: the score for the variance, and what it is worth in degrees of freedom. `adjusted` is the
 * contrast times (I - Q) to the power -1/2, along a direction, if the others have that direction too.
 * @example
 * // of two members with the same weights and one column, unitVariance 1: trace 0.5 after the first, 1 after both
 */
export function addMember(work: Work, directions: readonly OwnDirection[]): void {
  const { along, unitVariance, outer } = work;
  const size = along.length;
  const carried = new Float64Array(size);
  let [score, trace, lengthSquared, share] = [0, 0, 0, 0];
  for (const { vector, own, left, residual } of directions) {
    const length = dot(vector, along);
    share += (own * length * length) / unitVariance;
    if (left < NOTHING_LEFT) {
      if (length * length > NO_PART * unitVariance) work.restsOnOne = true;
      continue;
    }
    const adjusted = length / Math.sqrt(left);
    const part = own * adjusted;
    score += adjusted * residual;
    trace += part * (adjusted - part);
    lengthSquared += part * part;
    for (let place = 0; place < size; place++) addTo(carried, place, part * at(vector, place));
  }
  work.squaredScores += score * score;
  work.trace += trace;
  work.squaredTraces += trace * trace;
  work.squaredLengths += lengthSquared * lengthSquared;
  for (let row = 0; row < size; row++) {
    const own = at(carried, row);
    for (let column = 0; column <= row; column++)
      addTo(outer, row * size + column, own * at(carried, column));
  }
  if (share > NO_PART) work.members += 1;
  work.topMemberShare = Math.max(work.topMemberShare, share);
  work.squaredShares += share * share;
}

/**
 * The sum of the squares of a symmetric matrix of which the lower half is there.
 * @example squaresOf(Float64Array.of(1, 0, 2, 3), 2) // 18
 */
export function squaresOf(lower: Float64Array, size: number): number {
  let sum = 0;
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      sum += (column === row ? 1 : 2) * at(lower, row * size + column) ** 2;
    }
  }
  return sum;
}
