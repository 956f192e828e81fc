/** Do higher grades lose more? And so for any factor: style, bone, shop, wrap. */
import { twoSided } from './distributions.ts';
import { morePieces } from './more-pieces.ts';
import { type Codes, lostShares, type Rows } from './rows.ts';
import { type Demand, inUsualRanges, usualRange } from './size-question.ts';
import { type Reason, type Verdict, verdictOf } from './verdict.ts';
import { intervalOf, type WithinContrast, withinContrasts } from './within-contrast.ts';
import { type WithinFit, withinMember } from './within-member.ts';

/** A factor whose levels are compared: its levels in the order of their scale, the low end first. */
export interface AskedFactor extends Codes {
  /** A number for each level; only levels of one number are compared. All, if absent. */
  scale?: ArrayLike<number>;
}

export interface PairFinding {
  /** Levels; the second is the higher in the scale's order. */
  first: number;
  second: number;
  verdict: Verdict | 'early';
  reason: Reason | null;
  /** Share of the second minus share of the first; null where nobody has both. */
  difference: number | null;
  /** These, and what follows, are null while it is too early. */
  low: number | null;
  high: number | null;
  standardError: number | null;
  df: number | null;
  /** Of this pair's own interval, so that all of them together keep the question's. */
  level: number | null;
  /** Two-sided, and adjusted for the number of pairs by Holm's method. Not shown unless asked. */
  p: number | null;
  holm: number | null;
  /** Of an open pair only. */
  morePieces: number | null;
  contrast: WithinContrast;
}

export interface FactorFinding {
  pieces: number;
  members: number;
  /** Why there is no pair at all, or none that passes; null if one does. */
  reason: Reason | null;
  /** How many pairs passed. */
  tested: number;
  level: number;
  margin: number;
  /** Every two levels present on one scale, in the scale's order. */
  pairs: PairFinding[];
  /** The regression behind them, for the bet of a small club. */
  fit: WithinFit;
}

/**
 * The differences between all pairs of levels of a factor, weight and the other factors held constant, everyone compared
 * only with themself. Each pair is judged by its own interval, widened for the number of pairs (Bonferroni; Dunn 1961),
 * never from other pairs. Holm (1979) p as an extra.
 * @param rows clean rows
 * @param others the factors held constant
 * @example
 * // the ordinary club of the checks: Choice to Prime 0.0119, -0.0110 to 0.0349 at level 0.9833, 'open'
 */
export function factorQuestion(
  rows: Rows,
  asked: AskedFactor,
  others: readonly Codes[],
  { level, margin }: Omit<Demand, 'scaleError'>,
): FactorFinding {
  const { count, member } = rows;
  const range = usualRange(rows.base);
  const measured = inUsualRanges(rows.base, range === null ? 0 : range.big - range.small);
  const fit = withinMember({
    count,
    member,
    response: lostShares(rows),
    measured,
    factors: [asked, ...others],
  });
  const couples = couplesOf(asked, (code) => fit.sums.columnOf(0, code) >= 0);
  const contrasts = withinContrasts(
    fit,
    couples.map(({ first, second }) => ({
      of: fit.sums.columnOf(0, second),
      over: fit.sums.columnOf(0, first),
    })),
  );
  const tested = contrasts.filter(({ reason }) => reason === null).length;
  const found = couples.flatMap(({ first, second }, place) => {
    const contrast = contrasts[place];
    return contrast === undefined
      ? []
      : [{ first, second, ...judge(contrast, 1 - (1 - level) / tested, margin, count) }];
  });
  const adjusted = holm(found.map(({ p }) => p));
  const pairs = found.map((pair, place) => ({ ...pair, holm: adjusted[place] ?? null }));
  const { members } = fit.sums;
  return {
    pieces: count,
    members,
    reason: whyNone(count, members, pairs),
    tested,
    level,
    margin,
    pairs,
    fit,
  };
}

function judge(contrast: WithinContrast, level: number, margin: number, count: number) {
  const shown = intervalOf(contrast, level);
  if (shown === null)
    return { ...NOTHING_YET, reason: contrast.reason, difference: contrast.estimate, contrast };
  const { estimate, standardError, df, low, high } = shown;
  const verdict: Verdict | 'early' = verdictOf(low, high, margin);
  return {
    ...{ verdict, reason: null, difference: estimate, low, high, standardError, df, level, contrast },
    p: twoSided(estimate / standardError, df),
    morePieces: verdict === 'open' ? morePieces(count, standardError, level, margin) : null,
  };
}

/** Of a pair of which nothing is known. */
const NOTHING_YET = {
  verdict: 'early' as const,
  low: null,
  high: null,
  standardError: null,
  df: null,
  level: null,
  p: null,
  morePieces: null,
};

/** Every two levels that are there and comparable. */
function couplesOf({ levels, scale }: AskedFactor, isThere: (code: number) => boolean) {
  const present = Array.from({ length: levels }, (_, code) => code).filter(isThere);
  return present.flatMap((first, place) =>
    present
      .slice(place + 1)
      .filter((second) => scale === undefined || scale[first] === scale[second])
      .map((second) => ({ first, second })),
  );
}

function whyNone(count: number, members: number, pairs: readonly PairFinding[]): Reason | null {
  if (count === 0) return 'no_pieces';
  if (pairs.length === 0) return 'one_level';
  if (pairs.some(({ verdict }) => verdict !== 'early')) return null;
  if (members === 1) return 'one_member';
  return pairs[0]?.reason ?? null;
}

/**
 * Holm's step-down adjustment of p-values (Holm 1979), in their order; null stays null and does not count.
 * @example holm([0.01, 0.04, 0.03]) // [0.03, 0.06, 0.06]
 */
export function holm(values: readonly (number | null)[]): (number | null)[] {
  const sorted = values.flatMap((p, place) => (p === null ? [] : [{ p, place }])).sort((a, b) => a.p - b.p);
  const adjusted: (number | null)[] = values.map(() => null);
  let least = 0;
  sorted.forEach(({ p, place }, rank) => {
    least = Math.max(least, Math.min(1, (sorted.length - rank) * p));
    adjusted[place] = least;
  });
  return adjusted;
}
