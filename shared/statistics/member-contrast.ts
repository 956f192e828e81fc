/** Does one member lose more than the others: drawn-in effects compared. */
import { combination } from './combination.ts';
import { studentT } from './distributions.ts';
import { at } from './matrix.ts';
import { type ShareModel, shareAt } from './share-model.ts';
import { type Verdict, verdictOf } from './verdict.ts';

export interface MemberContrast {
  /** Pieces of the member; of two members the fewer. */
  pieces: number;
  /** On the logit scale. */
  logit: { difference: number; standardError: number; low: number; high: number };
  df: number;
  /** In shares, at the club's typical share. */
  difference: number;
  low: number;
  high: number;
  /** `more`: loses more than the others, or than the second. `early` below 3 pieces. */
  verdict: Verdict | 'early';
}

/** A member with fewer pieces is not compared, and not ranked. */
export const FEWEST_PIECES = 3;
/** 19 times in 20. */
const LEVEL = 0.95;

/**
 * A member against the mean of the others. Effects are drawn towards the club, which keeps the top of a long list from
 * being there by luck (Efron & Morris, "Stein's Paradox in Statistics", Scientific American 236:119, 1977).
 * Null for a member without pieces.
 * @param margin what is too small to argue about, in shares, above 0
 * @example contrastWithClub(model, 0, 0.01) // difference 0.140, 0.082 to 0.202: more
 */
export function contrastWithClub(model: ShareModel, member: number, margin: number): MemberContrast | null {
  const { members } = model.fit;
  const own = members.get(member);
  if (own === undefined) return null;
  const weights = new Map<number, number>();
  for (const code of members.keys()) weights.set(code, code === member ? 1 : -1 / (members.size - 1));
  return contrast(model, weights, own.pieces, margin);
}

/**
 * A member against another one. Null if either has no pieces.
 * @example contrastBetween(model, 4, 20, 0.01) // what 4 loses more than 20
 */
export function contrastBetween(
  model: ShareModel,
  member: number,
  other: number,
  margin: number,
): MemberContrast | null {
  const [own, theirs] = [model.fit.members.get(member), model.fit.members.get(other)];
  if (own === undefined || theirs === undefined || member === other) return null;
  const weights = new Map([
    [member, 1],
    [other, -1],
  ]);
  return contrast(model, weights, Math.min(own.pieces, theirs.pieces), margin);
}

function contrast(
  { fit }: ShareModel,
  weights: ReadonlyMap<number, number>,
  pieces: number,
  margin: number,
): MemberContrast {
  const { estimate, variance } = combination(fit, undefined, weights);
  const standardError = Math.sqrt(variance);
  const df = fit.members.size - 1;
  const reach = studentT((1 + LEVEL) / 2, df) * standardError;
  const typical = at(fit.coefficients, 0);
  const inShares = (difference: number) => shareAt(typical + difference) - shareAt(typical);
  const logit = { difference: estimate, standardError, low: estimate - reach, high: estimate + reach };
  const [low, high] = [inShares(logit.low), inShares(logit.high)];
  const verdict = pieces < FEWEST_PIECES ? 'early' : verdictOf(low, high, margin);
  return { pieces, logit, df, difference: inShares(estimate), low, high, verdict };
}
