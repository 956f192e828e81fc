/** Members in order of what they lose, in an order that a lucky piece can't lead. */
import { combination, pointAt } from './combination.ts';
import { studentT } from './distributions.ts';
import { FEWEST_PIECES } from './member-contrast.ts';
import { type ShareModel, shareAt } from './share-model.ts';

export interface BoardRow {
  /** From 1; provisional rows follow the others. */
  place: number;
  member: number;
  pieces: number;
  /** Of a typical piece, drawn towards the club; money a kilo in a model of costs. */
  share: number;
  low: number;
  high: number;
  /** On the model's scale, against the leader. */
  difference: number;
  standardError: number;
  /** Whether the range of that difference leaves 0 out. Never so for the leader. */
  separable: boolean;
  /** Too few pieces for a place. */
  provisional: boolean;
}

/** 19 times in 20. */
const LEVEL = 0.95;

/**
 * Ranks members by drawn-in effect, least loss first, never by raw means: those of members with few pieces lie at both
 * ends by chance alone. The leader has pieces enough, if anyone has.
 * @param fewest members with fewer pieces are provisional
 * @param tie which of two members of equal effect comes first
 * @param isShown whether a member has a row; the model counts the pieces of the others all the same
 * @param valueAt what a place on the model's scale stands for: a share, or `costAt`
 * @example leaderboard(model)[1] // place 2, difference 0.070 with a standard error of 0.159: not separable
 */
export function leaderboard(
  { fit }: ShareModel,
  fewest: number = FEWEST_PIECES,
  tie: (one: number, other: number) => number = (one, other) => one - other,
  isShown: (member: number) => boolean = () => true,
  valueAt: (place: number) => number = shareAt,
): BoardRow[] {
  const reach = studentT((1 + LEVEL) / 2, fit.members.size - 1);
  const typical = pointAt(fit);
  const order = [...fit.members]
    .filter(([member]) => isShown(member))
    .map(([member, { pieces, effect }]) => ({ member, pieces, effect, provisional: pieces < fewest }))
    .sort(
      (one, other) =>
        Number(one.provisional) - Number(other.provisional) ||
        one.effect - other.effect ||
        tie(one.member, other.member),
    );
  const leader = order[0]?.member;
  return order.map(({ member, pieces, provisional }, index) => {
    const level = combination(fit, typical, new Map([[member, 1]]));
    const range = reach * Math.sqrt(level.variance);
    const behind =
      leader === undefined || member === leader
        ? { estimate: 0, variance: 0 }
        : combination(
            fit,
            undefined,
            new Map([
              [member, 1],
              [leader, -1],
            ]),
          );
    const standardError = Math.sqrt(behind.variance);
    return {
      place: index + 1,
      member,
      pieces,
      share: valueAt(level.estimate),
      low: valueAt(level.estimate - range),
      high: valueAt(level.estimate + range),
      difference: behind.estimate,
      standardError,
      separable: behind.estimate - reach * standardError > 0,
      provisional,
    };
  });
}
