/** What to expect where a club has too few pieces for a model: a rule of thumb, drawn towards the pieces there are. */
import { at } from './matrix.ts';
import type { Expectation } from './prediction.ts';
import type { Rows } from './rows.ts';
import { logitShare } from './screening.ts';

/** On the logit scale. */
export interface RuleOfThumb {
  /** The share that is usual. */
  share: number;
  /** Standard deviations: between members, between the pieces of one, and of the rule itself. */
  members: number;
  pieces: number;
  level: number;
}

/**
 * The mean of the pieces with the rule as a normal prior: each of the two by its precision (Gelman et al., Bayesian Data
 * Analysis, 3rd ed., 2.5). The mean of n pieces of m members has the variance members^2 / m + pieces^2 / n.
 * @param rows clean ones; none will do
 * @example thumbExpectation({ share: 0.2, members: 0.2, pieces: 0.2, level: 0.3 }, noRows).centre // -1.386
 */
export function thumbExpectation(rule: RuleOfThumb, rows: Rows): Expectation {
  const usual = Math.log(rule.share / (1 - rule.share));
  let sum = 0;
  const members = new Set<number>();
  for (let row = 0; row < rows.count; row++) {
    sum += logitShare(at(rows.base, row), at(rows.loss, row));
    members.add(at(rows.member, row));
  }
  const known = rows.count === 0 ? 0 : 1 / (rule.members ** 2 / members.size + rule.pieces ** 2 / rows.count);
  const before = 1 / rule.level ** 2;
  const mean = rows.count === 0 ? usual : sum / rows.count;
  return {
    centre: (before * usual + known * mean) / (before + known),
    sharedVariance: 1 / (before + known) + rule.members ** 2,
    pieceVariance: rule.pieces ** 2,
    df: Number.POSITIVE_INFINITY,
    known: false,
  };
}
