/** Do bigger pieces lose less? What a club's pieces say so far, what is settled, and what a small club may bet. */
import { type Columns, eachOf } from '../club/columns.ts';
import { type Lean, lean, nextBest, type Split, split } from '../statistics/lean.ts';
import { type LumpedLook, looksOtherwise, lumpedLook } from '../statistics/size-explained.ts';
import { type SizeFinding, sizeQuestion } from '../statistics/size-question.ts';
import { type Debated, debated, HELD, levelsOf, SETTLED, SO_FAR, type Usual, usualOf } from './debate.ts';
import type { About, Looked } from './finding.ts';
import { type Scatter, scatterOf } from './scatter.ts';

export interface AskedSize extends About {
  /** In shares. */
  margin: number;
  /** Relative weighing error. */
  scaleError: number;
  /** The club's own: what a piece usually costs is told in it. */
  currency: string;
}

/** A size question's answer, without the regression behind it. */
export type SizeAnswer = Omit<SizeFinding, 'within'>;

export interface FoundSize {
  running: SizeAnswer;
  /** The latest ruling due; null before the first. */
  ruling: SizeAnswer | null;
  /** At how many counted pieces the next ruling is due. */
  nextAt: number;
  waiting: number;
  usual: Usual;
  /** What it looks like with everybody's pieces lumped together. */
  lumped: LumpedLook;
  /** Whether that tells another story. */
  looksOtherwise: boolean;
  split: Split | null;
  lean: Lean | null;
  /** The piece that would teach most; null where none would. */
  nextBest: { member: string; side: 'small' | 'big'; grams: number } | null;
  scatter: Scatter;
}

export function findSize({ plain }: Looked, asked: AskedSize): FoundSize {
  const of = debated(plain, false);
  const running = answer(of.running, asked, SO_FAR);
  const rows = eachOf(of.running);
  const { within, range, difference } = running;
  const lumped = lumpedLook(rows);
  const width = range === null ? 0 : range.big - range.small;
  const next = range === null ? null : nextBest(rows, range);
  return {
    running: withoutFit(running),
    ruling: of.ruled === null ? null : withoutFit(answer(of.ruled, asked, SETTLED)),
    nextAt: of.nextAt,
    waiting: of.waiting,
    usual: usualOf(of.running, asked.currency),
    lumped,
    looksOtherwise:
      difference !== null &&
      lumped.slope !== null &&
      looksOtherwise(difference, lumped.slope, width, asked.margin),
    split: within === null ? null : split(within.fit),
    lean: within === null ? null : lean(within.fit, within.contrast),
    nextBest:
      next === null ? null : { member: memberOf(of, next.member), side: next.side, grams: next.weight },
    scatter: scatterOf(rows),
  };
}

function answer(columns: Columns, { margin, scaleError }: AskedSize, level: number): SizeFinding {
  const factors = HELD.map((name) => levelsOf(columns, name));
  return sizeQuestion(eachOf(columns), factors, { level, margin, scaleError });
}

function withoutFit({ within: _within, ...answered }: SizeFinding): SizeAnswer {
  return answered;
}

const memberOf = ({ running }: Debated, code: number): string => running.member.values[code] ?? '';
