/** A problem or a question as the sentence that its reader's language has for it. */
import { Ask, type MemberError } from '../errors.ts';
import type { Speech } from './index.ts';

/**
 * Each code has its own sentence, so the values that came with a code fit it.
 * @example worded(new MemberError('no-pieces', {}), say) // 'You have no pieces here yet. …'
 */
export function worded(problem: Ask | MemberError, say: Pick<Speech, 'errors' | 'questions'>): string {
  const kind = problem instanceof Ask ? say.questions : say.errors;
  const sentences = kind as Record<string, (values: unknown) => string>;
  return sentences[problem.code]?.(problem.values) ?? problem.message;
}
