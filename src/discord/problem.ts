/** What of an error is written down: enough to find the bug, nothing of what a member wrote. */
import { adviceOn } from '../advice.ts';

/**
 * The facts of an error for the log. The platform's errors carry the whole message that was refused: that stays out.
 *
 * @example log.error({ interaction: id, ...problem(error) }, 'could not answer')
 */
export function problem(error: unknown): { problem: object } {
  if (!(error instanceof Error)) return { problem: { name: typeof error } };
  const { name, message, stack } = error;
  const code = 'code' in error ? error.code : undefined;
  const status = 'status' in error ? error.status : undefined;
  return { problem: { name, message, code, status, todo: adviceOn(error), stack } };
}
