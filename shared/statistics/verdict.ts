/** How a question stands: read from one interval, so that the picture and the words cannot disagree. */

/** What an interval says about a difference against a margin. */
export type Verdict = 'less' | 'more' | 'same' | 'open';

/** Why nothing can be said yet, or why an open question is open. */
export type Reason =
  /** There are no pieces. */
  | 'no_pieces'
  /** All pieces are one member's. */
  | 'one_member'
  /** The big and the small end of the usual range are one weight. */
  | 'same_weights'
  /** Fewer than two levels of the factor were told. */
  | 'one_level'
  /** No member has pieces on both sides, or not apart from what else differed between them. */
  | 'nobody_both'
  /** As many things to tell apart as pieces. */
  | 'saturated'
  /** The shares repeat exactly, as copied ones would. */
  | 'no_variation'
  /** One member's pieces alone carry the comparison, whole or in one direction. */
  | 'rests_on_one'
  /** One or two members have pieces on both sides; three are needed. */
  | 'few_members'
  /** Most of the comparison is one member's: fewer than 2 degrees of freedom. */
  | 'mostly_one_member'
  /** Open because weighing errors of the supposed size change the answer. */
  | 'scale';

/**
 * The verdict on a difference that lies between `low` and `high`: `same` within the margin on both sides, else `less` or
 * `more` where 0 is outside, else `open`. `same` by inclusion of the interval is two one-sided tests (Schuirmann 1987).
 * @param margin what is too small to argue about, above 0, in the unit of the interval
 * @example verdictOf(-0.036, -0.008, 0.02) // 'less'
 * @example verdictOf(-0.015, 0.012, 0.02) // 'same'
 */
export function verdictOf(low: number, high: number, margin: number): Verdict {
  if (-margin < low && high < margin) return 'same';
  if (high < 0) return 'less';
  return low > 0 ? 'more' : 'open';
}
