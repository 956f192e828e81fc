/** Which of several pieces comes out cheapest: by integration, by counting, and by what must hold of either. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceFirstCheaper } from '../../../shared/statistics/cheaper-of-two.ts';
import { chancesCheapest, counted } from '../../../shared/statistics/cheapest.ts';
import { standardNormalBelow } from '../../../shared/statistics/distributions.ts';
import { normalDraws } from '../../../shared/statistics/draws.ts';
import type { Offer } from '../../../shared/statistics/offer.ts';

const offer = (centre: number, ownVariance: number, price: number): Offer => ({ centre, ownVariance, price });

const PAIRS: readonly (readonly [string, readonly [Offer, Offer], readonly number[]])[] = [
  ['alike but for the price', [offer(-1.1, 0.04, 5.49), offer(-1.1, 0.04, 5.29)], [0.05, 0.05, 0.05, 0.05]],
  ['of unlike grades', [offer(-1, 0.04, 5.49), offer(-1.15, 0.04, 5.39)], [0.05, 0.045, 0.045, 0.06]],
  ['of unlike cuts', [offer(0.3, 0.3, 3.49), offer(-1.15, 0.04, 5.29)], [0.4, 0, 0, 0.1]],
];

describe('two offers', () => {
  test.each(PAIRS)('%s: as a million draws have it, to a thousandth', (_name, offers, shared) => {
    const [drawn = 0] = counted(offers, Float64Array.from(shared), 1_000_000, 7);
    // Three standard errors of the draws beside it.
    expect(Math.abs(chanceFirstCheaper(offers, shared) - drawn)).toBeLessThan(0.001 + 0.0005);
  });

  test('at one price, of one kind, it is one in two', () => {
    expect(
      chanceFirstCheaper([offer(-1, 0.04, 5), offer(-1, 0.04, 5)], [0.05, 0.05, 0.05, 0.05]),
    ).toBeCloseTo(0.5, 9);
  });

  test('without any doubt the cheaper one is it', () => {
    const sure = [offer(-1, 0, 5), offer(-1, 0, 5.01)] as const;
    expect(chancesCheapest(sure, new Float64Array(4))[0]).toBeCloseTo(1, 8);
  });

  test('one twice as dear as the other whole never is', () => {
    expect(chanceFirstCheaper([offer(-3, 0.01, 10), offer(-3, 0.01, 5)], [0, 0, 0, 0])).toBeLessThan(1e-9);
  });

  const offers = fc.record({
    centre: fc.double({ min: -3, max: 1, noNaN: true }),
    ownVariance: fc.double({ min: 0.001, max: 0.5, noNaN: true }),
    price: fc.double({ min: 1, max: 20, noNaN: true }),
  });
  const variance = fc.double({ min: 0, max: 0.3, noNaN: true });

  test('either way round it is the same, and a lower price is never worse', () => {
    fc.assert(
      fc.property(offers, offers, variance, variance, variance, (one, other, common, own, others) => {
        const shared = [common + own, common, common, common + others];
        const turned = [common + others, common, common, common + own];
        const chance = chanceFirstCheaper([one, other], shared);
        expect(chance + chanceFirstCheaper([other, one], turned)).toBeCloseTo(1, 5);
        expect(
          chanceFirstCheaper([{ ...one, price: 0.9 * one.price }, other], shared),
        ).toBeGreaterThanOrEqual(chance - 1e-9);
      }),
    );
  });
});

test('of more the chances sum to 1, and are the same each time', () => {
  const three = [offer(-1, 0.04, 5), offer(-1.1, 0.04, 5.2), offer(0, 0.04, 4)];
  const shared = new Float64Array(9).fill(0.03);
  const found = chancesCheapest(three, shared);
  expect(found.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 12);
  expect(chancesCheapest(three, shared)).toEqual(found);
  expect(chancesCheapest([offer(-1, 0.04, 5)], Float64Array.of(0.1))).toEqual([1]);
  expect(chancesCheapest([], new Float64Array())).toEqual([]);
});

test('of three alike each is it one time in three', () => {
  const three = [0, 1, 2].map(() => offer(-1, 0.04, 5));
  for (const chance of chancesCheapest(three, new Float64Array(9).fill(0.05)))
    expect(Math.abs(chance - 1 / 3)).toBeLessThan(0.015);
});

// Abramowitz & Stegun, Handbook of Mathematical Functions, table 26.1.
test.each([
  [0, 0.5],
  [1, 0.841344746068543],
  [-1, 0.158655253931457],
  [2, 0.977249868051821],
  [-3, 0.00134989803163],
  [9, 1],
  [-9, 0],
])('the normal below %d is %d', (z, chance) => {
  expect(standardNormalBelow(z)).toBeCloseTo(chance, 14);
});

test('draws look normal, and come again from their seed', () => {
  const [normal, again] = [normalDraws(3), normalDraws(3)];
  let [sum, squares] = [0, 0];
  for (let draw = 0; draw < 100_000; draw++) {
    const value = normal();
    expect(again()).toBe(value);
    sum += value;
    squares += value ** 2;
  }
  expect(Math.abs(sum / 100_000)).toBeLessThan(0.015);
  expect(Math.abs(squares / 100_000 - 1)).toBeLessThan(0.02);
});
