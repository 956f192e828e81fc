/** Made-up shoppers and dinners, as many as it takes to hold what is promised to a point or two. */
import { describe, expect, test } from 'vitest';
import { feedForty } from './dinners.ts';
import { type Shopping, shopFor, shopUnlike } from './shopper.ts';

type Size = Pick<Shopping, 'pieces' | 'members' | 'clubs'>;
const SMALL: Size = { pieces: 30, members: 8, clubs: 1000 };
const MIDDLE: Size = { pieces: 60, members: 12, clubs: 800 };
const LARGE: Size = { pieces: 300, members: 30, clubs: 500 };
const LARGEST: Size = { pieces: 3000, members: 80, clubs: 150 };

const print = (what: string, figures: object) => console.log(what, JSON.stringify(figures));

describe('ranges and odds, prices up to a tenth apart', () => {
  test.each([
    [SMALL, 0.9, 0.06],
    [MIDDLE, 0.84, 0.05],
    [LARGE, 0.84, 0.05],
  ])('%j', (size, most, off) => {
    const found = shopFor({ ...size, apart: 0.02, prices: 0.1 });
    print('shop', { ...size, ...found });
    for (const held of [found.newcomers, found.known]) {
      expect(held).toBeGreaterThanOrEqual(0.77);
      expect(held).toBeLessThanOrEqual(most);
    }
    for (const { said, right, times } of found.odds)
      if (times > 800) expect(Math.abs(said - right)).toBeLessThanOrEqual(off);
  });
});

describe('what following it costs, prices up to 5 % apart', () => {
  test.each([
    [SMALL, -0.001],
    [LARGE, 0.002],
    [LARGEST, -0.001],
  ])('%j', (size, least) => {
    const { saved } = shopFor({ ...size, apart: 0.02, prices: 0.05 });
    print('saved', { ...size, saved });
    expect(saved).toBeGreaterThanOrEqual(least);
  });

  test('a whole packer beside a trimmed flat', () => {
    const saved = [SMALL, LARGE].map(({ pieces, members }) => shopUnlike(pieces, members, 300));
    print('saved between unlike cuts', saved);
    for (const part of saved) expect(part).toBeGreaterThan(0.01);
  });
});

describe('dinners for forty', () => {
  test.each([
    [12, 4, 0.87, 0.96],
    [30, 8, 0.87, 0.93],
    [60, 12, 0.87, 0.93],
    [300, 30, 0.87, 0.93],
  ])('%i pieces of %i members', (pieces, members, least, most) => {
    const found = feedForty(pieces, members, 600);
    print('feed', { pieces, members, ...found });
    for (const fed of [found.newcomers, found.known]) {
      expect(fed).toBeGreaterThanOrEqual(least);
      expect(fed).toBeLessThanOrEqual(most);
    }
  });
});
