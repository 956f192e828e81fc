/** Whatever members type is taken, asked about or refused, in words that hold none of it as markup. */
import { test } from 'vitest';
import { FORMS_AND_LINES, REQUESTS } from './asked.ts';
import { TYPED } from './typed.ts';

test.each(Object.entries({ ...TYPED, ...REQUESTS, ...FORMS_AND_LINES }))(
  '%s: a thousand cases',
  (_name, look) => look({ numRuns: 1000 }),
  60_000,
);
