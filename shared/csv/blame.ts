/** Which column a problem is about, where it is one of several that do not go together. */
import { Ask, type MemberError, type ProblemCode, type QuestionCode } from '../errors.ts';
import type { WeightName } from '../yield/piece.ts';
import type { Field } from './fields.ts';

const COLUMNS: Readonly<Partial<Record<ProblemCode | QuestionCode, Field>>> = {
  'nothing-left': 'trim',
  'parts-off': 'served',
  'saved-above-trim': 'saved',
  'bought-missing': 'bought',
  'cut-missing': 'cut',
  size: 'bought',
  'two-pieces-or-two-goes': 'bought',
  gain: 'cooked',
  gap: 'left',
};

/**
 * The column; null where the problem is that of the cell which was being read.
 * @example blame(new MemberError('nothing-left', values)) // 'trim'
 */
export function blame({ code, values }: MemberError | Ask): Field | null {
  const about = values as Partial<{ part: WeightName; option: WeightName }>;
  if (code === 'part-above-whole') return about.part ?? null;
  if (code === 'weight-zero' || code === 'came-off-or-left') return about.option ?? null;
  return COLUMNS[code] ?? null;
}

/** Questions about weights that can be read well enough but look odd: a row's status can settle them. */
const DOUBTS: ReadonlySet<string> = new Set<QuestionCode>(['size', 'came-off-or-left', 'gain', 'gap']);

/**
 * What would help: to mend or confirm what looks odd, to write what could be read two ways, or to mend what is wrong.
 * @example kindOf(new MemberError('csv-member-missing', {})) // 'wrong'
 */
export const kindOf = (problem: MemberError | Ask): 'doubt' | 'unclear' | 'wrong' =>
  !(problem instanceof Ask) ? 'wrong' : DOUBTS.has(problem.code) ? 'doubt' : 'unclear';
