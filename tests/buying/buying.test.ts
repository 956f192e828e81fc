/** Made-up shoppers and dinners, few of them: the bounds are wide. `buying.long.ts` has many, and narrow ones. */
import { describe, expect, test } from 'vitest';
import { feedForty } from './dinners.ts';
import { shopFor, shopUnlike } from './shopper.ts';

describe('somebody who follows /shop', () => {
  test('finds what comes off in its range 8 times in 10', () => {
    const { newcomers, known } = shopFor({ pieces: 60, members: 12, clubs: 25, apart: 0.02, prices: 0.2 });
    expect(newcomers).toBeGreaterThan(0.73);
    expect(newcomers).toBeLessThan(0.9);
    expect(known).toBeGreaterThan(0.73);
    expect(known).toBeLessThan(0.88);
  });

  test('is right about as often as was said', () => {
    const { odds } = shopFor({ pieces: 60, members: 12, clubs: 25, apart: 0.02, prices: 0.1 });
    const seen = odds.filter(({ times }) => times > 0);
    const of = (look: (one: (typeof odds)[number]) => number) =>
      seen.reduce((sum, one) => sum + look(one) * one.times, 0) /
      seen.reduce((sum, { times }) => sum + times, 0);
    expect(Math.abs(of(({ said }) => said) - of(({ right }) => right))).toBeLessThan(0.08);
  });

  test('does not pay more than for the lowest price a pound', () => {
    expect(shopFor({ pieces: 30, members: 8, clubs: 25, apart: 0.02, prices: 0.05 }).saved).toBeGreaterThan(
      -0.004,
    );
  });

  test('saves where unlike cuts are on offer', () => {
    expect(shopUnlike(30, 8, 40)).toBeGreaterThan(0.01);
  });
});

test('what /feed says for forty is enough about 9 times in 10', () => {
  for (const [pieces, members] of [
    [12, 4],
    [30, 8],
  ] as const) {
    const { newcomers, known } = feedForty(pieces, members, 25);
    expect(newcomers).toBeGreaterThan(0.8);
    expect(known).toBeGreaterThan(0.8);
  }
});
