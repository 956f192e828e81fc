/** What tables and rules of thumb say of a cut that nobody weighed here. */
import { describe, expect, test } from 'vitest';
import { CUTS, cutOf } from '../../../shared/trade/cuts.ts';
import { plateOverBought, plateOverLeft } from '../../../shared/trade/kept.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';
import { thumbOf } from '../../../shared/trade/thumbs.ts';

const cut = (key: string) => cutOf(key as CutKey);

describe('of what is left to cook', () => {
  // USDA Table of Cooking Yields for Meat and Poultry, Release 2 (2014): yield and its standard deviation.
  test.each([
    ['beef/brisket-flat', 0.69, 0.03042],
    ['beef/tri-tip', 0.84, 0.03052],
  ])('%s by its cooking yield', (key, share, deviation) => {
    expect(plateOverLeft(cut(key))).toEqual({
      share,
      deviation: expect.closeTo(deviation, 12),
      source: 'book',
    });
  });

  test('less the bone that is thrown away at the board', () => {
    // Roasted 78 % (the same table), 32 % bone and skin of the raw bird (USDA SR28 05006).
    expect(plateOverLeft(cut('poultry/chicken-whole')).share).toBeCloseTo(0.78 - 0.32, 12);
  });

  test('by the rule of thumb, where no table has it', () => {
    const { share, source } = plateOverLeft(cut('beef/brisket-whole'));
    expect(share).toBeCloseTo(0.45 / 0.8, 12);
    expect(source).toBe('rule of thumb');
  });
});

describe('of what is bought', () => {
  test.each([
    // USDA Food Buying Guide: as served.
    ['poultry/turkey-whole', 0.47, 'book'],
    ['beef/bottom-round', 0.61, 'book'],
    // Common practice, no source.
    ['beef/brisket-whole', 0.45, 'rule of thumb'],
    ['pork/butt', 0.6, 'rule of thumb'],
  ])('%s', (key, share, source) => {
    expect(plateOverBought(cut(key), null)).toMatchObject({ share, source });
  });

  test('the cooking yield times what a usual trim leaves', () => {
    expect(plateOverBought(cut('beef/brisket-flat'), 0.12).share).toBeCloseTo(0.69 * 0.88, 12);
    expect(plateOverBought(cut('beef/brisket-flat'), null).share).toBeCloseTo(0.69 * 0.9, 12);
  });
});

test('of every cut something can be said', () => {
  for (const one of CUTS) {
    for (const { share, deviation } of [plateOverLeft(one), plateOverBought(one, null)]) {
      expect(share).toBeGreaterThan(0.2);
      expect(share).toBeLessThan(1);
      if (deviation !== null) expect(deviation).toBeLessThan(share / 3);
    }
    expect(thumbOf(one).trim).toBeGreaterThan(0);
  }
});
