/** Whatever members type is taken, asked about or refused, in words that hold none of it as markup. */
import { test } from 'vitest';
import { TARGETS } from './targets.ts';

test.each(Object.entries(TARGETS))(
  '%s: two thousand cases',
  (_name, fuzz) => fuzz({ numRuns: 2000 }),
  60_000,
);
