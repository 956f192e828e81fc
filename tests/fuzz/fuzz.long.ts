/** Tens of thousands of cases, other ones in each run; `FUZZ_RUNS=100000` for a night: a failure prints its seed, and `SEED=…` looks at the same again. */
import { test } from 'vitest';
import { TARGETS } from './targets.ts';

const RUNS = Number(process.env.FUZZ_RUNS ?? 30_000);
const { SEED } = process.env;
const seed = SEED === undefined ? {} : { seed: Number(SEED) };

test.each(Object.entries(TARGETS))(
  `%s: ${RUNS} cases`,
  (_name, fuzz) => fuzz({ numRuns: RUNS, ...seed }),
  1_800_000,
);
