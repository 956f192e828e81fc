/** Rulings fall due at checkpoints, on pieces that later ones cannot change. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Rows } from '../../../shared/statistics/rows.ts';
import { nextCheckpoint, ruledRows } from '../../../shared/statistics/ruling.ts';
import { cleanRows } from '../../../shared/statistics/screening.ts';

const seeded = (seed: number) => {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
};

/** A club with slips: other units, a decimal point off, nothing off. */
function club(seed: number, count: number, slips: number) {
  const random = seeded(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const rows = Array.from({ length: count }, () => {
    const base = 13.5 + 2.9 * normal();
    const share = 1 / (1 + Math.exp(1.1 - 0.25 * normal()));
    const slip = random() < slips ? 2.20462262 ** normal() * 10 ** Math.round(normal()) : 1;
    const odd = random();
    return {
      base: Math.max(1, base) * slip,
      loss: odd < 0.01 ? 0 : odd < 0.02 ? 99 : Math.max(1, base) * share,
    };
  });
  const confirmed = rows.map(() => (random() < 0.05 ? 1 : 0));
  return {
    rows: {
      count,
      base: rows.map(({ base }) => base),
      loss: rows.map(({ loss }) => loss),
      member: rows.map(() => Math.floor(9 * random())),
    },
    confirmed,
  };
}

/** The first so many rows. */
const first = ({ base, loss, member }: Rows, count: number): Rows => ({
  count,
  base: Array.from(base).slice(0, count),
  loss: Array.from(loss).slice(0, count),
  member: Array.from(member).slice(0, count),
});

/** The same by trying every beginning. */
function ruledSlowly(rows: Rows, confirmed: readonly number[]) {
  const counts = Array.from({ length: rows.count + 1 }, (_, length) =>
    cleanRows(first(rows, length), confirmed),
  );
  for (let checkpoint = 25 * 2 ** 10; checkpoint >= 25; checkpoint /= 2) {
    const places = counts.find((clean) => clean.length >= checkpoint);
    if (places !== undefined) return { places, checkpoint, nextAt: 2 * checkpoint };
  }
  return null;
}

test('the next checkpoint', () => {
  expect([0, 25, 50, 100].map(nextCheckpoint)).toEqual([25, 50, 100, 200]);
});

describe('the rows of a ruling', () => {
  test('are those that trying every beginning finds', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e9 }),
        fc.integer({ min: 0, max: 460 }),
        fc.constantFrom(0, 0.03, 0.15),
        (seed, count, slips) => {
          const { rows, confirmed } = club(seed, count, slips);
          expect(ruledRows(rows, confirmed)).toEqual(ruledSlowly(rows, confirmed));
        },
      ),
      { numRuns: 60 },
    );
  });

  test('stay what they are whatever is posted later, up to the next checkpoint', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const { rows } = club(seed, 199, 0.04);
      const early = ruledRows(first(rows, 130));
      const late = ruledRows(rows);
      if (early !== null && late?.checkpoint === early.checkpoint) expect(late).toEqual(early);
    }
  });

  test('come with the 25th piece, none of them unusual', () => {
    const base = Array.from({ length: 60 }, (_, row) => 10 + (row % 7));
    const rows = {
      count: 60,
      base,
      loss: base.map((own, row) => own * (0.2 + (row % 5) / 50)),
      member: base.map(() => 0),
    };
    expect(ruledRows(first(rows, 24))).toBeNull();
    const at25 = ruledRows(first(rows, 25));
    expect([at25?.places.length, at25?.checkpoint, at25?.nextAt]).toEqual([25, 25, 50]);
    expect(ruledRows(first(rows, 49))).toEqual(at25);
    expect(ruledRows(rows)?.checkpoint).toBe(50);
  });

  test('pieces without loss or without sense are neither counted nor in the way', () => {
    const base = Array.from({ length: 40 }, (_, row) => 10 + (row % 7));
    const loss = base.map((own, row) => (row < 10 ? 0 : own * (0.2 + (row % 5) / 50)));
    const rows = { count: 40, base, loss, member: base.map(() => 0) };
    expect(ruledRows(rows)?.places).toEqual(Array.from({ length: 25 }, (_, place) => place + 10));
  });
});
