/** Do bigger pieces lose less? */
import { twoSided } from './distributions.ts';
import { dot } from './matrix.ts';
import { selectQuantile } from './median.ts';
import { morePieces } from './more-pieces.ts';
import { byRow, type Codes, lostShares, type Rows } from './rows.ts';
import { type ScaleError, scaleError } from './scale-error.ts';
import { type Reason, type Verdict, verdictOf } from './verdict.ts';
import { intervalOf, type WithinContrast, withinContrasts } from './within-contrast.ts';
import { type WithinFit, withinMember } from './within-member.ts';

/** How sure an answer must be, and what is too small to argue about. */
export interface Demand {
  /** Of the interval: 0.95 running, 0.99 for a ruling. */
  level: number;
  /** In shares: 0.02 is two points. */
  margin: number;
  /** Relative weighing error: one standard deviation, e.g. 0.02. */
  scaleError: number;
}

/** The small and the big end of the usual range, in the rows' unit. */
export interface UsualRange {
  small: number;
  big: number;
}

export interface SizeFinding {
  pieces: number;
  members: number;
  verdict: Verdict | 'early';
  reason: Reason | null;
  /** Null without pieces. */
  range: UsualRange | null;
  /** Share at the big end minus share at the small end; null where nobody has both. */
  difference: number | null;
  /** These, and what follows, are null while it is too early. */
  low: number | null;
  high: number | null;
  standardError: number | null;
  df: number | null;
  /** The chance of a difference so far from 0 if there were none. Not shown unless asked. */
  p: number | null;
  level: number;
  margin: number;
  /** The weighing error supposed. */
  scaleError: number;
  scale: ScaleError | null;
  /** The verdict without the check of the scales. */
  plainVerdict: Verdict | null;
  /** Of an open question only. */
  morePieces: number | null;
  /** The regression behind it and its contrast, for the bet of a small club; null where there is none. */
  within: { fit: WithinFit; contrast: WithinContrast } | null;
}

/**
 * Whether the share lost differs between the big and the small end of the club's usual range (its 10th and 90th
 * percentile), everyone compared only with themself (Mundlak 1978), the other factors held constant.
 * One interval is compared with 0 and with the margin, before and after what weighing errors could have done.
 * @param rows clean rows, losses and bases in one unit
 * @param factors what else differs between pieces: grade, style, ...
 * @example
 * // the ordinary club of the checks (149 pieces, 25 members, margin 0.01): difference 0.0067, -0.0141 to 0.0276, 'open'
 */
export function sizeQuestion(rows: Rows, factors: readonly Codes[], demand: Demand): SizeFinding {
  const { count, member } = rows;
  const range = usualRange(rows.base);
  const width = range === null ? 0 : range.big - range.small;
  const measured = inUsualRanges(rows.base, width);
  const response = lostShares(rows);
  const fit = withinMember({ count, member, response, measured, factors });
  const [contrast] = withinContrasts(fit, [{ of: 0 }]);
  const nothing = { ...NOTHING_YET, pieces: count, members: fit.sums.members, range, ...demand };
  if (contrast === undefined || width === 0) {
    const alone = count === 0 ? 'no_pieces' : 'one_member';
    return { ...nothing, verdict: 'early', reason: count < 2 ? alone : 'same_weights' };
  }
  const found = { ...nothing, difference: contrast.estimate, within: { fit, contrast } };
  const shown = intervalOf(contrast, demand.level);
  if (shown === null) return { ...found, verdict: 'early', reason: contrast.reason };

  const { estimate, standardError, df, low, high } = shown;
  const plainVerdict = verdictOf(low, high, demand.margin);
  const scale = scaleError(shown, demand.margin, {
    count,
    scaleError: demand.scaleError,
    spread: 1 / contrast.unitVariance,
    spreadDf: fit.residualDf + 1,
    squares: dot(measured, measured),
    withShares: dot(measured, response),
  });
  const verdict = scale.verdict === plainVerdict ? plainVerdict : 'open';
  return {
    ...{ ...found, low, high, standardError, df, scale, plainVerdict, verdict },
    // An interval that is open by itself needs no scales to stay so.
    reason: verdict === plainVerdict ? null : 'scale',
    p: twoSided(estimate / standardError, df),
    morePieces: verdict === 'open' ? morePieces(count, standardError, demand.level, demand.margin) : null,
  };
}

/** Of a question of which nothing is known. */
const NOTHING_YET = {
  difference: null,
  low: null,
  high: null,
  standardError: null,
  df: null,
  p: null,
  scale: null,
  plainVerdict: null,
  morePieces: null,
  within: null,
};

/**
 * The club's usual range of weights: from the 10th to the 90th percentile. Null for none.
 * @example usualRange([10, 11, 12]) // { small: 10.2, big: 11.8 }
 */
export function usualRange(base: ArrayLike<number>): UsualRange | null {
  const values = new Float64Array(base);
  return values.length === 0
    ? null
    : { small: selectQuantile(values, 0.1), big: selectQuantile(values, 0.9) };
}

/**
 * Weights in widths of the usual range, so that the effect of one is the difference between its ends; as they are where it
 * has no width.
 * @example inUsualRanges([10, 14], 8) // [1.25, 1.75]
 */
export const inUsualRanges = (base: ArrayLike<number>, width: number): Float64Array =>
  byRow(base.length, (row) => (base[row] ?? 0) / (width || 1));
