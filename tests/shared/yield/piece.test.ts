/** What follows from the weights of a piece, by exact arithmetic. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moneyNumber, roundHalfUp } from '../../../shared/measure/money.ts';
import {
  costFactor,
  costPer,
  costsOf,
  pieceFigures,
  portionCost,
  type Weights,
  weightsOf,
} from '../../../shared/yield/piece.ts';
import { g, inGrams, lb, perUnit, piece, possiblePieces } from './samples.ts';

const grams = (weights: Weights) =>
  Object.fromEntries(
    Object.entries(weights).map(([name, weight]) => [name, weight === null ? null : weight / g(1)]),
  );

describe('weights that follow from others', () => {
  test.each([
    [{ bought: 5000 }, { juice: null, trim: null, left: null, intoHeat: null, served: null, scraps: null }],
    [
      { bought: 5000, trim: 1000 },
      { left: 4000, intoHeat: 4000 },
    ],
    [
      { bought: 5000, left: 4000 },
      { trim: 1000, intoHeat: 4000 },
    ],
    [{ bought: 5000, trim: 0 }, { left: 5000 }],
    [
      { bought: 5000, bagged: 4900, trim: 900 },
      { juice: 100, left: 4000 },
    ],
    [
      { bought: 5000, bagged: 4900, left: 4000 },
      { juice: 100, trim: 900 },
    ],
    [
      { bought: 5000, trim: 990, left: 4000 },
      { trim: 990, left: 4000 },
    ],
    [
      { bought: 5000, trim: 1000, added: 400 },
      { left: 4000, intoHeat: 4400 },
    ],
    [
      { bought: 5000, added: 400 },
      { left: null, intoHeat: null },
    ],
    [{ bought: 5000, cooked: 2500, scraps: 500 }, { served: 2000 }],
    [{ bought: 5000, cooked: 2500, served: 2000 }, { scraps: 500 }],
    [
      { bought: 5000, served: 2000 },
      { cooked: null, scraps: null, served: 2000 },
    ],
    [
      { bought: 5000, scraps: 500 },
      { cooked: null, scraps: 500, served: null },
    ],
  ])('%j: %j', (told, follow) => {
    expect(grams(weightsOf(inGrams(told)))).toMatchObject(follow);
  });
});

describe('figures', () => {
  test.each([
    [
      { bought: 5000, trim: 1000 },
      { trimShare: 0.2, cookingYield: null, plateYield: null },
    ],
    [
      { bought: 5000, trim: 0 },
      { trimShare: 0, leftGrams: 5000 },
    ],
    [
      { bought: 5000, bagged: 4900, trim: 1000 },
      { trimShare: 0.2, juiceGrams: 100, leftGrams: 3900 },
    ],
    [
      { bought: 5000, left: 4000, cooked: 3000 },
      { cookingYield: 0.75, plateYield: null, carvingYield: null },
    ],
    [{ bought: 5000, left: 4000, added: 1000, cooked: 3000 }, { cookingYield: 0.6 }],
    [
      { bought: 5000, cooked: 3000 },
      { cookingYield: null, trimShare: null },
    ],
    [
      { bought: 5000, cooked: 3000, scraps: 600 },
      { carvingYield: 0.8, plateYield: 0.48, servedGrams: 2400 },
    ],
    [
      { bought: 5000, cooked: 3000, served: 0 },
      { carvingYield: 0, plateYield: 0 },
    ],
    [
      { bought: 5000, served: 2500 },
      { plateYield: 0.5, carvingYield: null },
    ],
  ])('%j: %j', (told, figures) => {
    expect(pieceFigures(inGrams(told))).toMatchObject(figures);
  });

  test('without a price there is no cost', () => {
    const figures = pieceFigures(inGrams({ bought: 5000, left: 4000, cooked: 3000, served: 2000 }));
    expect(figures).toMatchObject({
      paid: null,
      credit: null,
      pricePerKg: null,
      costPerLeftKg: null,
      costPerCookedKg: null,
      costPerServedKg: null,
      costFactorLeft: null,
      costFactorServed: null,
    });
  });

  test('with one, each weight that is known has its cost', () => {
    const told = {
      ...inGrams({ bought: 5000, left: 4000, cooked: 2500, served: 2000 }),
      price: perUnit(10, 'kg'),
    };
    expect(pieceFigures(told)).toMatchObject({
      paid: 50,
      pricePerKg: 10,
      costPerLeftKg: 12.5,
      costPerCookedKg: 20,
      costPerServedKg: 25,
      costFactorLeft: 1.25,
      costFactorServed: 2.5,
    });
  });

  test('nothing on the plate, or nothing paid, has no cost per weight of it', () => {
    const nothing = { ...inGrams({ bought: 5000, cooked: 2500, served: 0 }), price: perUnit(10, 'kg') };
    expect(pieceFigures(nothing)).toMatchObject({ costPerServedKg: null, costFactorServed: null });
    const gift = { ...inGrams({ bought: 5000, left: 4000 }), price: perUnit(0, 'all') };
    expect(pieceFigures(gift)).toMatchObject({ paid: 0, costPerLeftKg: 0, costFactorLeft: null });
  });

  test('what was saved is taken off what was paid', () => {
    const saved = [
      { name: 'tallow', weight: g(500), price: perUnit(4, 'kg') },
      { name: 'grind', weight: g(250), price: null },
      { name: 'stock', weight: g(100), price: perUnit(3, 'all') },
      { name: 'abroad', weight: g(100), price: perUnit(3, 'all', 'CAD') },
    ];
    const told = { ...inGrams({ bought: 5000, left: 4000 }), price: perUnit(10, 'kg'), saved };
    expect(pieceFigures(told)).toMatchObject({ paid: 50, credit: 5, pricePerKg: 10, costPerLeftKg: 11.25 });
    expect(costFactor(told, 'left')).toBeCloseTo(1.125, 12);
  });

  test('a price for all of a lot, by any unit, is one and the same', () => {
    const lot = { ...piece({ bought: lb(10), pieces: 2 }), price: perUnit(50, 'all') };
    const byPound = { ...lot, price: perUnit(5, 'lb') };
    const byOunce = { ...lot, price: perUnit(0.3125, 'oz') };
    for (const one of [lot, byPound, byOunce]) expect(pieceFigures(one).paid).toBeCloseTo(50, 9);
  });

  test('a portion costs its share of the last part that was weighed', () => {
    const left = { ...inGrams({ bought: 5000, left: 4000 }), price: perUnit(10, 'kg') };
    const portion = (of: typeof left) => {
      const cost = portionCost(of, g(200));
      return cost === null ? null : moneyNumber(cost);
    };
    expect(portion(left)).toBeCloseTo(2.5, 12);
    expect(portion({ ...left, served: g(2000) })).toBeCloseTo(5, 12);
    expect(portion({ ...left, left: null })).toBeNull();
  });

  test('half a cent is rounded up, once', () => {
    const costs = costsOf(piece({ bought: lb(8.5), price: perUnit(4.19, 'lb') }));
    expect(costs && roundHalfUp(costs.paid)).toBe(3562n);
  });
});

describe('of any piece that can be', () => {
  const weightsArbitrary = possiblePieces;

  test('juice, trim and what is left make what was bought', () => {
    fc.assert(
      fc.property(weightsArbitrary, (told) => {
        const { bought, juice, trim, left } = weightsOf(told);
        if (juice !== null && trim !== null && left !== null) expect(juice + trim + left).toBe(bought);
      }),
    );
  });

  test('scraps and what is served make what came off the heat', () => {
    fc.assert(
      fc.property(weightsArbitrary, (told) => {
        const { cooked, scraps, served } = weightsOf(told);
        if (cooked !== null && scraps !== null && served !== null) expect(scraps + served).toBe(cooked);
      }),
    );
  });

  test('shares lie from 0 to 1, and no figure is NaN or endless', () => {
    fc.assert(
      fc.property(weightsArbitrary, (told) => {
        const figures = pieceFigures(told);
        for (const name of ['trimShare', 'cookingYield', 'carvingYield'] as const) {
          expect(figures[name] ?? 0).toBeGreaterThanOrEqual(0);
          expect(figures[name] ?? 0).toBeLessThanOrEqual(1);
        }
        for (const figure of Object.values(figures)) {
          if (figure !== null) expect(Number.isFinite(figure)).toBe(true);
        }
      }),
    );
  });

  test('less meat for the same money is never cheaper', () => {
    fc.assert(
      fc.property(weightsArbitrary, (told) => {
        const costs = (['bought', 'left'] as const).map((part) => costPer(told, part, 'kg'));
        const [bought, left] = costs.map((cost) => (cost === null ? null : moneyNumber(cost)));
        if (bought != null && left != null) expect(left).toBeGreaterThanOrEqual(bought - 1e-9);
      }),
    );
  });
});
