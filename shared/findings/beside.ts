/** What stands beside one piece: its club's figures, and whether it is unusual there. */
import { type GroupFigures, wholeGroup } from '../club/group.ts';
import { sift, usualPiece } from '../club/sift.ts';
import { distanceFrom, type UsualPiece } from '../statistics/screening.ts';
import type { About, Looked } from './finding.ts';

/** The club's figures for a measure, and what is usual of one piece in it. */
export interface Beside {
  club: GroupFigures;
  /** Null where there are too few pieces to call any of them unusual. Weights in grams. */
  usual: UsualPiece | null;
}

/** About the pieces of one cut, in the measure that a piece has come to. */
export interface AskedBeside extends About {
  /** Whether the pieces that took up brine are meant. */
  injected: boolean;
}

/** What stands beside a piece: the group that it belongs to, plain or injected. */
export function findBeside({ plain, injected }: Looked, asked: AskedBeside): Beside {
  const columns = asked.injected && injected !== null ? injected : plain;
  return { club: wholeGroup(sift(columns), asked.measure, asked.cut), usual: usualPiece(columns) };
}

/**
 * Whether one piece lies outside of what is usual.
 * @param base of one piece, in grams; `loss` above 0 and below it, or it is no share that could be unusual
 */
export const isUnusual = (usual: UsualPiece | null, base: number, loss: number): boolean =>
  usual !== null && loss > 0 && loss < base && distanceFrom(usual, base, loss) > usual.threshold;
