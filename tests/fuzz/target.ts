/** A property, looked at with as many cases as asked. */
import type fc from 'fast-check';
import { test } from 'vitest';

export type Target = (parameters: fc.Parameters<unknown>) => Promise<void>;

const RUNS = Number(process.env.FUZZ_RUNS ?? 100_000);
const { SEED } = process.env;
const seed = SEED === undefined ? {} : { seed: Number(SEED) };

/** Many cases of each, other ones in each run: a failure prints its seed, and `SEED=…` looks at the same again. */
export const fuzz = (targets: Readonly<Record<string, Target>>): void =>
  test.each(Object.entries(targets))(
    `%s: ${RUNS} cases`,
    (_name, look) => look({ numRuns: RUNS, ...seed }),
    1_800_000,
  );
