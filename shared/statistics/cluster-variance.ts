/**
 * The bias-reduced cluster-robust variance CR2 and its Satterthwaite degrees of freedom, members being the clusters (Bell &
 * McCaffrey 2002; with absorbed effects and where the adjustment is singular: Pustejovsky & Tipton 2018).
 */
import { at, dot, rowProducts } from './matrix.ts';
import type { OwnPart } from './own-part.ts';

/** A part of the whole below which it is none. */
const NO_PART = 1e-9;
/** The sums of one contrast over members, as far as they have been added. */
export interface Work {
  /** The contrast in the fit's directions. */
  along: Float64Array;
  /** Through the part of the member added last. */
  carried: Float64Array;
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
  carried: new Float64Array(along.length),
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

/** A member's part, with the columns that contrasts are about taken through it, row by row. */
export interface Carried extends Pick<OwnPart, 'residual' | 'alone'> {
  /** W a of each column a, W being (I - Q) to the power -1/2. */
  adjusted: Float64Array;
  /** Q W a */
  carried: Float64Array;
}

/**
 * Takes columns through a member's part.
 * @param columns in the fit's directions, row by row; `size` is how many directions there are
 * @example
 * // of one direction of which a quarter is the member's, 1: adjusted 1 / sqrt(0.75), carried 0.25 / sqrt(0.75)
 */
export function carry(
  { own, residual, adjust, alone }: OwnPart,
  columns: Float64Array,
  size: number,
): Carried {
  const adjusted = adjust(columns);
  return { residual, alone, adjusted, carried: rowProducts(adjusted, own, size) };
}

/**
 * Adds a member to one contrast: the score for the variance, and what it is worth in degrees of freedom.
 * @param member with the columns that were carried through their part
 * @param of the row of the contrast's column among them; `over` that of the column that is taken off it
 * @example
 * // of two members with the same weights and one column, unitVariance 1: trace 0.5 after the first, 1 after both
 */
export function addMember(work: Work, member: Carried, of: number, over: number): void {
  const { along, unitVariance, outer, carried } = work;
  const size = along.length;
  let [score, whole, lengthSquared] = [0, 0, 0];
  for (let place = 0; place < size; place++) {
    const [one, other] = [of * size + place, over * size + place];
    const adjusted = (member.adjusted[one] ?? 0) - (member.adjusted[other] ?? 0);
    const own = (member.carried[one] ?? 0) - (member.carried[other] ?? 0);
    carried[place] = own;
    score += adjusted * (member.residual[place] ?? 0);
    whole += adjusted * own;
    lengthSquared += own * own;
  }
  // a'Qa, but for directions that nobody else has.
  const trace = whole - lengthSquared;
  let share = trace / unitVariance;
  for (const { vector, own } of member.alone) {
    const part = dot(vector, along) ** 2 / unitVariance;
    share += own * part;
    if (part > NO_PART) work.restsOnOne = true;
  }
  work.squaredScores += score * score;
  work.trace += trace;
  work.squaredTraces += trace * trace;
  work.squaredLengths += lengthSquared * lengthSquared;
  for (let row = 0; row < size; row++) {
    const [start, own] = [row * size, carried[row] ?? 0];
    for (let column = 0; column <= row; column++) {
      outer[start + column] = (outer[start + column] ?? 0) + own * (carried[column] ?? 0);
    }
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
