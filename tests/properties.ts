/** Properties look at the same cases each time, so that a run can be repeated; `SEED=random` looks at new ones. */
import fc from 'fast-check';

const { SEED } = process.env;

if (SEED !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(SEED ?? 1) });
