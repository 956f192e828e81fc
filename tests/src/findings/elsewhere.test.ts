/** A thread that fails: whoever waited is told, and the next question is answered by another one. */
import { Worker } from 'node:worker_threads';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Elsewhere, openElsewhere } from '../../../src/findings/elsewhere.ts';

const ANSWERS = `
  const { parentPort } = require('node:worker_threads');
  parentPort.on('message', ({ id }) => parentPort.postMessage({ id, result: { version: 7, found: null } }));
`;
/** Longer than a thread takes to start on a busy machine. */
const PATIENT_MS = 20_000;
const FAILING: readonly (readonly [how: string, source: string, says: RegExp, withinMs: number])[] = [
  [
    'that ends',
    `require('node:worker_threads').parentPort.on('message', () => process.exit(3))`,
    /ended with 3/,
    PATIENT_MS,
  ],
  [
    'that throws',
    `require('node:worker_threads').parentPort.on('message', () => { throw new Error('out of memory') })`,
    /out of memory/,
    PATIENT_MS,
  ],
  ['that can not start', `throw new Error('no such file')`, /no such file/, PATIENT_MS],
  [
    'that never comes back',
    `require('node:worker_threads').parentPort.on('message', () => { for (;;); })`,
    /ended/,
    1500,
  ],
];
const ASKED = { cut: 'beef/brisket-whole', measure: 'trim', injected: false } as never;

let open: Elsewhere | null;
let started: number;
beforeEach(() => {
  open = null;
  started = 0;
});
afterEach(() => open?.close());

/** The first thread runs `first`, those after it answer. */
const opened = (first: string, withinMs: number): Elsewhere => {
  open = openElsewhere('file:none', {
    withinMs,
    start: () => {
      started += 1;
      return new Worker(started === 1 ? first : ANSWERS, { eval: true });
    },
  });
  return open;
};

test.each(FAILING)('one %s', async (_how, source, says, withinMs) => {
  const elsewhere = opened(source, withinMs);
  const asked = ['a', 'b'].map((club) => elsewhere.compute(club, 'beside', ASKED));
  for (const one of asked) await expect(one).rejects.toThrow(says);
  expect(await elsewhere.compute('a', 'beside', ASKED)).toEqual({ version: 7, found: null });
  expect(started).toBe(2);
});

test('asked anew before the old one has quite ended, what is asked is not lost with it', async () => {
  const elsewhere = opened(
    `require('node:worker_threads').parentPort.on('message', () => { throw new Error('x') })`,
    PATIENT_MS,
  );
  const later = elsewhere
    .compute('a', 'beside', ASKED)
    .catch(() => Promise.all([1, 2, 3].map(() => elsewhere.compute('a', 'beside', ASKED))));
  expect(await later).toHaveLength(3);
});
