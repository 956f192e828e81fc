/** What was thrown, which may be anything. */

/** @example messageOf(new Error('no such file')) // 'no such file' */
export const messageOf = (problem: unknown): string =>
  problem instanceof Error ? problem.message : String(problem);
