/** What a small club gets while nothing is settled: a count of heads, a bet, and the piece that would teach most. */
import { addTo, at } from './matrix.ts';
import { numbered, type Rows } from './rows.ts';
import type { UsualRange } from './size-question.ts';
import type { Verdict } from './verdict.ts';
import type { WithinContrast } from './within-contrast.ts';
import type { WithinFit } from './within-member.ts';

/** Of the members who cooked big and small: how many lost more off the big ones, and how many less. */
export interface Split {
  up: number;
  down: number;
}

/** Weights this close, in squared usual ranges, are not apart. */
const APART = 1e-9;

/**
 * Counts the members by the sign of their own slope.
 * @param fit of the size question, so that its first column is the weight in usual ranges
 * @example
 * // two members, each with a big and a small piece, both losing more off the big one: { up: 2, down: 0 }
 */
export function split({ sums }: WithinFit): Split {
  const found = { up: 0, down: 0 };
  for (let member = 0; member < sums.members; member++) {
    if (!(at(sums.products, member * sums.columns ** 2) > APART)) continue;
    const together = at(sums.withResponse, member * sums.columns);
    if (together > 0) found.up += 1;
    if (together < 0) found.down += 1;
  }
  return found;
}

/** A bet, never a ruling. */
export interface Lean {
  side: 'less' | 'more';
  /** Of that side: 0.5 to 1. Nothing stronger is to be said from it: no range, no colour. */
  chance: number;
}

/** Before any piece: a standard deviation of 1 point for the difference, of 5 for one piece, worth 4 pieces. */
const EFFECT_SPREAD = 0.01;
const PIECE_SPREAD = 0.05;
const PRIOR_PIECES = 4;
/** Members' own differences, as a standard deviation. */
const OWN_SPREAD = 0.015;
const STEP = 0.00025;
const STEPS = 480;

/**
 * The side to bet on: a difference known beforehand to be small (normal, mean 0) meets the estimate (t), summed over a
 * grid from -0.12 to 0.12 (Bayes' rule with a weak prior: Gelman et al., Bayesian Data Analysis, 3rd ed., ch. 2-3). Null
 * where nobody has both.
 * @param contrast of shares, whether or not it may show an interval
 * @example
 * // no difference at all: { side: 'less', chance: 0.5 }
 */
export function lean(fit: WithinFit, contrast: WithinContrast): Lean | null {
  const { estimate } = contrast;
  if (estimate === null) return null;
  const df = Math.max(fit.residualDf, 0) + PRIOR_PIECES;
  const pieceVariance = (fit.residualSquares + PRIOR_PIECES * PIECE_SPREAD ** 2) / df;
  const variance = pieceVariance * contrast.unitVariance + OWN_SPREAD ** 2 * contrast.squaredShares;
  const logDensity = (difference: number) =>
    -((df + 1) / 2) * Math.log1p((estimate - difference) ** 2 / variance / df) -
    (difference / EFFECT_SPREAD) ** 2 / 2;
  // Relative to the highest point, so that estimates far outside the grid do not vanish.
  let highest = Number.NEGATIVE_INFINITY;
  for (let step = -STEPS; step <= STEPS; step++) highest = Math.max(highest, logDensity(step * STEP));
  let [below, above] = [0, 0];
  for (let step = 1; step <= STEPS; step++) {
    below += Math.exp(logDensity(-step * STEP) - highest);
    above += Math.exp(logDensity(step * STEP) - highest);
  }
  const half = Math.exp(logDensity(0) - highest) / 2;
  const side = above > below ? 'more' : 'less';
  return { side, chance: (Math.max(above, below) + half) / (above + below + 2 * half) };
}

/** What the answer is worth on one usual piece. */
export interface Stake {
  /** In the rows' unit of weight. */
  perPiece: number;
  /** Null without a usual price. */
  perPieceCost: number | null;
}

/**
 * The difference on one usual piece: the one found where it is settled or so far so, else the margin.
 * @param usualBase the median weight
 * @param price per unit of weight, or null
 * @example stake('open', -0.012, 0.02, 14, 5) // { perPiece: 0.28, perPieceCost: 1.4 }
 */
export function stake(
  verdict: Verdict | 'early',
  difference: number | null,
  margin: number,
  usualBase: number,
  price: number | null,
): Stake {
  const told = (verdict === 'less' || verdict === 'more') && difference !== null;
  const perPiece = (told ? Math.abs(difference) : margin) * usualBase;
  return { perPiece, perPieceCost: price === null ? null : perPiece * price };
}

/** The piece that would teach most. */
export interface NextBest {
  /** The member's number, as in the rows. */
  member: number;
  side: 'small' | 'big';
  /** The weight at that end of the usual range, in the rows' unit. */
  weight: number;
}

/**
 * Whose next piece, from which end of the usual range, adds most to the comparison of members with themselves: to the sum
 * of squares of weights around the member's mean (D-optimal for one slope: Fedorov 1972). Ties to who came first and to
 * the big end. Null where the range has no width, or there are no pieces.
 * @example
 * // of two members with one 10 lb piece each, in a usual range of 10 to 16 lb: { member: 0, side: 'big', weight: 16 }
 */
export function nextBest({ count, base, member }: Rows, { small, big }: UsualRange): NextBest | null {
  if (!(big > small)) return null;
  const { of, codes } = numbered({ count, member });
  const [pieces, means] = [new Float64Array(codes.length), new Float64Array(codes.length)];
  for (let row = 0; row < count; row++) {
    const own = of[row] ?? 0;
    addTo(pieces, own, 1);
    addTo(means, own, ((base[row] ?? 0) - (means[own] ?? 0)) / (pieces[own] ?? 1));
  }
  let best: NextBest | null = null;
  let most = 0;
  for (const [own, code] of codes.entries()) {
    const posted = at(pieces, own);
    for (const [side, weight] of [['big', big] as const, ['small', small] as const]) {
      const gain = (posted / (posted + 1)) * (weight - at(means, own)) ** 2;
      if (!(gain > most * (1 + 1e-12))) continue;
      most = gain;
      best = { member: code, side, weight };
    }
  }
  return best;
}
