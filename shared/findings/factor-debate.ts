/** Do higher grades lose more? And so of the fat left on, the bone, the shop and the wrap. */
import { type Columns, eachOf } from '../club/columns.ts';
import type { FactorName } from '../club/narrow.ts';
import { factorQuestion, type PairFinding } from '../statistics/factor-question.ts';
import { type Lean, lean } from '../statistics/lean.ts';
import type { Reason } from '../statistics/verdict.ts';
import { debated, HELD, levelsOf, SETTLED, SO_FAR, type Usual, usualOf } from './debate.ts';
import type { About, Looked } from './finding.ts';

export const DEBATED_FACTORS = [
  'grade',
  'style',
  'bone',
  'shop',
  'wrap',
] as const satisfies readonly FactorName[];
export type DebatedFactor = (typeof DEBATED_FACTORS)[number];

export interface AskedFactorDebate extends About {
  factor: DebatedFactor;
  /** In shares. */
  margin: number;
  /** The club's own: what a piece usually costs is told in it. */
  currency: string;
}

/** A pair of values, the lower end of their scale first. */
export interface Pair extends Omit<PairFinding, 'first' | 'second' | 'contrast'> {
  first: string;
  second: string;
  /** The side to bet on while it is open; null where nobody has both. */
  lean: Lean | null;
}

export interface FactorAnswer {
  pieces: number;
  members: number;
  /** Why there is no pair, or none that may show an interval. */
  reason: Reason | null;
  level: number;
  margin: number;
  pairs: readonly Pair[];
}

export interface FoundFactor {
  running: FactorAnswer;
  /** The latest ruling due; null before the first. */
  ruling: FactorAnswer | null;
  nextAt: number;
  waiting: number;
  usual: Usual;
}

export function findFactor({ plain }: Looked, asked: AskedFactorDebate): FoundFactor {
  const of = debated(plain, true);
  return {
    running: answer(of.running, asked, SO_FAR),
    ruling: of.ruled === null ? null : answer(of.ruled, asked, SETTLED),
    nextAt: of.nextAt,
    waiting: of.waiting,
    usual: usualOf(of.running, asked.currency),
  };
}

function answer(columns: Columns, { factor, margin }: AskedFactorDebate, level: number): FactorAnswer {
  const asked = levelsOf(columns, factor);
  const others = HELD.filter((name) => name !== factor).map((name) => levelsOf(columns, name));
  const found = factorQuestion(eachOf(columns), asked, others, { level, margin });
  const { pieces, members, reason } = found;
  const key = (code: number) => asked.keys[code] ?? '';
  const pairs = found.pairs.map(({ first, second, contrast, ...pair }) => ({
    ...pair,
    first: key(first),
    second: key(second),
    lean: lean(found.fit, contrast),
  }));
  return { pieces, members, reason, level, margin, pairs };
}
