/** The butcher's yield test: what follows from parts, what can't be, and that money and weights add up. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MemberError } from '../../../shared/errors.ts';
import {
  addMoney,
  type Currency,
  type Money,
  moneyNumber,
  pricePerKg,
  roundHalfUp,
} from '../../../shared/measure/money.ts';
import { NANOGRAMS, type Nanograms } from '../../../shared/measure/units.ts';
import {
  LARGEST_PORTION,
  type Part,
  type PartsTold,
  partedOf,
  readParts,
  refusePortion,
} from '../../../shared/yield/parts.ts';
import { portionCost } from '../../../shared/yield/piece.ts';
import { costAgain, partsFigures, portionsIn, weightToBuy } from '../../../shared/yield/portions.ts';
import { spendingOf } from '../../../shared/yield/spending.ts';
import { outcome, READERS } from '../measure/reading.ts';
import { g, lb, perUnit } from './samples.ts';

const PRICES = { option: 'parts', units: 'lb', currency: 'USD' as Currency } as const;
const read = (text: string) => outcome(() => readParts(text, { ...READERS.lb, option: 'parts' }, PRICES));

const part = (name: string, weight: Nanograms, worth: number | null = null): Part => ({
  name,
  weight,
  price: worth === null ? null : perUnit(worth, 'lb'),
});

const told = (some: Partial<PartsTold> = {}): PartsTold => ({
  pieces: 1,
  bought: lb(12),
  bagged: null,
  price: perUnit(6.65, 'lb'),
  parts: [part('fat', lb(3)), part('kidneys', lb(1), 6.1), part('flanks', lb(1.5), 4.6)],
  usable: null,
  loss: null,
  added: null,
  cooked: null,
  scraps: null,
  served: null,
  gained: false,
  ...some,
});
const refusal = (some: Partial<PartsTold>) => {
  const found = outcome(() => partedOf(told(some)));
  return found instanceof MemberError ? { code: found.code, ...found.values } : found;
};

describe('reading parts', () => {
  test.each([
    ['fat 3 lb, kidneys 1 lb @6.10, flanks 1 lb 8 oz @4.60', ['fat', 'kidneys', 'flanks']],
    ['fat 3 lb\nkidneys 1 lb @6.10\n\nflanks 1 lb 8 oz @4.60\n', ['fat', 'kidneys', 'flanks']],
    ['fat: 3 lb,\n short  ribs: 1 lb for 4.50;\nT-bone ends 2 lb', ['fat', 'short ribs', 'T-bone ends']],
  ])('%j', (text, names) => {
    const found = read(text);
    expect(found instanceof Error ? found : found.map(({ name }) => name)).toEqual(names);
  });

  test('a worth is per weight, or for all of the part', () => {
    const found = read('ribs 2 lb @4.50, bones 2 lb for 4.50, fat 1 kg @2/kg');
    if (found instanceof Error) throw found;
    expect(found.map(({ price }) => [price?.amount, price?.basis])).toEqual([
      [45_000, 'lb'],
      [45_000, 'all'],
      [20_000, 'kg'],
    ]);
  });

  test.each([
    [Array.from({ length: 9 }, (_, index) => `part ${'abcdefghi'[index]} 1 oz`).join(', '), 'parts-too-many'],
    ['fat -3 lb', 'weight-negative'],
    ['fat −3 lb', 'weight-negative'],
    ['fat', 'saved-unreadable'],
    ['@everyone 3 lb', 'saved-unreadable'],
    ['**fat** 3 lb', 'saved-unreadable'],
    ['<@123> 3 lb', 'saved-unreadable'],
    ['fat 3 lb @cheap', 'price-unreadable'],
    ['fat 3 lb @2/stone', 'price-basis'],
    ['fat 1.8', 'decimals-or-ounces'],
  ])('%j is refused or asked: %s', (text, code) => {
    const found = read(text);
    expect(found instanceof Error ? found.code : found).toBe(code);
  });
});

describe('what the parts leave', () => {
  const cases: [string, Partial<PartsTold>, number, number | null][] = [
    ['nothing told: all that is left is usable', {}, 6.5, null],
    ['a loss', { loss: lb(0.5) }, 6, 0.5],
    ['a usable weight', { usable: lb(6) }, 6, 0.5],
    ['both', { usable: lb(6), loss: lb(0.5) }, 6, 0.5],
    ['both, an ounce apart: the rest is the loss', { usable: lb(6), loss: lb(0.5625) }, 6, 0.5],
    ['out of its bag', { bagged: lb(11.5), usable: lb(6) }, 6, 0],
    ['no part at all', { parts: [], usable: lb(9) }, 9, 3],
  ];
  test.each(cases)('%s', (_, some, usable, loss) => {
    const found = partedOf(told(some));
    expect(found.usable).toBe(lb(usable));
    expect(found.loss).toBe(loss === null ? null : lb(loss));
  });

  test('what scales differ by is let pass, and told', () => {
    const found = partedOf(told({ usable: lb(6.55) }));
    expect(found).toMatchObject({ usable: lb(6.55), loss: 0, apart: lb(0.05) });
    expect(partedOf(told({ usable: lb(6), loss: lb(0.5625) }))).toMatchObject({
      loss: lb(0.5),
      apart: lb(0.0625),
    });
    expect(partedOf(told({ usable: lb(6), loss: lb(0.4375) })).apart).toBe(-lb(0.0625));
    for (const exact of [{}, { usable: lb(6) }, { loss: lb(0.5) }, { usable: lb(6), loss: lb(0.5) }])
      expect(partedOf(told(exact)).apart).toBe(0);
  });
});

describe('what can not be', () => {
  const cases: [Partial<PartsTold>, object][] = [
    [
      { usable: lb(7) },
      { code: 'parts-sum', parts: lb(5.5), usable: lb(7), loss: null, difference: lb(0.5) },
    ],
    [
      { usable: lb(6), loss: lb(2) },
      { code: 'parts-sum', difference: lb(1.5) },
    ],
    [
      { usable: lb(5), loss: lb(0.5) },
      { code: 'parts-sum', difference: -lb(1) },
    ],
    [{ parts: [part('fat', lb(13))] }, { code: 'parts-sum', parts: lb(13), of: lb(12), difference: lb(1) }],
    [
      { bagged: lb(11), usable: lb(6) },
      { code: 'parts-sum', of: lb(11), difference: lb(0.5) },
    ],
    [{ parts: [part('fat', lb(12))] }, { code: 'nothing-left' }],
    [{ bought: 0 as Nanograms }, { code: 'weight-zero', option: 'bought' }],
    [{ usable: 0 as Nanograms }, { code: 'weight-zero', option: 'usable' }],
    [{ cooked: 0 as Nanograms }, { code: 'weight-zero', option: 'cooked' }],
    [
      { usable: lb(6), scraps: lb(1) },
      { code: 'cooked-missing', scraps: lb(1) },
    ],
    [
      { usable: lb(6), cooked: lb(6.5) },
      { code: 'part-above-whole', part: 'cooked', of: lb(6) },
    ],
    [
      { usable: lb(6), served: lb(6.5) },
      { code: 'part-above-whole', part: 'served', of: lb(6) },
    ],
    [
      { usable: lb(6), cooked: lb(5), scraps: lb(5.5) },
      { code: 'part-above-whole', part: 'scraps' },
    ],
    [
      { usable: lb(6), cooked: lb(5.5), scraps: lb(1), served: lb(5) },
      { code: 'parts-off', cooked: lb(5.5), sum: lb(6) },
    ],
    [{ price: perUnit(6.65, 'lb', 'CAD') }, { code: 'currency-mixed', name: 'kidneys', paid: 'CAD' }],
    [{ price: perUnit(1, 'lb') }, { code: 'credit-above-paid' }],
    [
      {
        price: null,
        parts: [part('a', lb(1), 2), { ...part('b', lb(1)), price: perUnit(1, 'lb', 'EUR') }],
      },
      { code: 'currency-mixed', name: 'b', currency: 'EUR', paid: 'USD' },
    ],
  ];
  test.each(cases)('%j', (some, values) => expect(refusal(some)).toMatchObject(values));

  test('more off the heat than went in, unless its member stands by it or something was put in', () => {
    const heavy = { usable: lb(6), cooked: lb(6.5) };
    expect(partedOf(told({ ...heavy, gained: true })).piece.cooked).toBe(lb(6.5));
    expect(partedOf(told({ ...heavy, added: lb(1) })).piece.cooked).toBe(lb(6.5));
  });

  test.each([
    [0, 'weight-zero'],
    [NANOGRAMS.oz * 5, null],
    [LARGEST_PORTION, null],
    [LARGEST_PORTION + 1, 'portion-too-large'],
    [5 * NANOGRAMS.kg, 'portion-too-large'],
  ])('a portion of %d ng: %s', (portion, code) => {
    const found = outcome(() => refusePortion(partedOf(told()), portion as Nanograms));
    expect(found instanceof MemberError ? found.code : null).toBe(code);
  });

  test('nor a portion of more than there is', () => {
    const found = outcome(() => refusePortion(partedOf(told({ usable: lb(1), bought: lb(7) })), lb(1.5)));
    expect(found).toMatchObject({ code: 'portion-too-large', values: { most: lb(1) } });
  });
});

describe('portions', () => {
  test('are cut from the last part that was weighed', () => {
    const cost = (some: Partial<PartsTold>) => {
      const money = portionCost(partedOf(told({ usable: lb(6), ...some })).piece, lb(0.5));
      return money && moneyNumber(money);
    };
    expect(cost({})).toBeCloseTo(66.8 / 12, 12);
    expect(cost({ cooked: lb(5) })).toBeCloseTo(66.8 / 10, 12);
    expect(cost({ cooked: lb(5), scraps: lb(1) })).toBeCloseTo(66.8 / 8, 12);
    expect(cost({ served: lb(3) })).toBeCloseTo(66.8 / 6, 12);
    expect(cost({ price: null, parts: [] })).toBeNull();
  });

  test('cost at another price what the factor says', () => {
    const { piece } = partedOf(told({ usable: lb(6) }));
    const cost = portionCost(piece, (5 * NANOGRAMS.oz) as Nanograms) as Money;
    const again = costAgain(piece, cost, perUnit(7.15, 'lb')) as Money;
    expect(moneyNumber(again)).toBeCloseTo((((66.8 / 6) * 5) / 16) * (7.15 / 6.65), 12);
    expect(roundHalfUp(again)).toBe(374n);
    // The same price again, per kilo or in all: the same cost.
    for (const same of [perUnit(79.8, 'all'), perUnit(6.65, 'lb')])
      expect(costAgain(piece, cost, same)).toEqual(cost);
    expect(costAgain({ ...piece, price: perUnit(0, 'lb') }, cost, perUnit(7, 'lb'))).toBeNull();
    expect(costAgain({ ...piece, price: null }, cost, perUnit(7, 'lb'))).toBeNull();
  });

  test('round down; what to buy for them is enough, and no nanogram more', () => {
    const weights = fc.integer({ min: 1, max: 10 * NANOGRAMS.kg }).map((weight) => weight as Nanograms);
    fc.assert(
      fc.property(weights, weights, weights, (needed, bought, gives) => {
        const buy = weightToBuy(needed, bought, gives);
        const yields = (weight: number) => (BigInt(weight) * BigInt(gives)) / BigInt(bought);
        fc.pre(buy < Number.MAX_SAFE_INTEGER && gives <= bought);
        expect(yields(buy) >= BigInt(needed)).toBe(true);
        expect(yields(buy - 1) < BigInt(needed)).toBe(true);
        expect(portionsIn(bought, gives)).toBe(Math.floor(bought / gives));
      }),
    );
  });
});

/** Tests that a kitchen can have: parts and a usable weight that make the whole, with or without worth. */
const anyTest = fc
  .record({
    grams: fc.array(fc.integer({ min: 0, max: 3000 }), { maxLength: 8 }),
    usable: fc.integer({ min: 1, max: 20_000 }),
    loss: fc.integer({ min: 0, max: 2000 }),
    price: fc.integer({ min: 0, max: 100_0000 }),
    worths: fc.array(fc.option(fc.integer({ min: 0, max: 20_0000 })), { minLength: 8, maxLength: 8 }),
    told: fc.constantFrom('usable', 'loss', 'both'),
  })
  .map(({ grams, usable, loss, price, worths, told: what }) => {
    const sum = grams.reduce((total, weight) => total + weight, usable + loss);
    return told({
      bought: g(sum),
      price: perUnit(price / 10_000, 'kg'),
      parts: grams.map((weight, index) => ({
        ...part('x', g(weight)),
        price: worths[index] == null ? null : perUnit((worths[index] ?? 0) / 10_000, 'kg'),
      })),
      usable: what === 'loss' ? null : g(usable),
      loss: what === 'usable' ? null : g(loss),
    });
  });

describe('of any test that adds up', () => {
  const partedOrNull = (test: PartsTold) => {
    const found = outcome(() => partedOf(test));
    if (found instanceof MemberError && found.code === 'credit-above-paid') return null;
    if (found instanceof Error) throw found;
    return found;
  };

  test('parts, loss and usable weight are the whole', () => {
    fc.assert(
      fc.property(anyTest, (test) => {
        const found = partedOrNull(test);
        if (found === null) return;
        const parts = found.piece.saved.reduce((sum, { weight }) => sum + weight, 0);
        expect(parts + (found.loss ?? 0) + found.usable).toBe(test.bought);
      }),
    );
  });

  test('where the money went adds up to what was paid, exactly, and nothing of it is negative', () => {
    fc.assert(
      fc.property(anyTest, (test) => {
        const found = partedOrNull(test);
        const spent = found && spendingOf(found);
        if (!spent) return;
        for (const { money } of spent) expect(money.numerator >= 0n).toBe(true);
        const sum = spent.map(({ money }) => money).reduce(addMoney);
        expect(moneyNumber(sum)).toBeCloseTo(
          (pricePerKg(test.price ?? perUnit(0, 'kg'), test.bought) * test.bought) / NANOGRAMS.kg,
          6,
        );
      }),
    );
  });

  test('the figures are numbers or null; usable cost times usable weight is what was paid less the credits', () => {
    fc.assert(
      fc.property(anyTest, (test) => {
        const found = partedOrNull(test);
        if (found === null) return;
        const asked = { portion: g(150), portions: 12, again: perUnit(9.99, 'kg') };
        const figures = partsFigures(found, asked, 'kg');
        const leaves = (value: unknown): unknown[] =>
          typeof value === 'object' && value !== null ? Object.values(value).flatMap(leaves) : [value];
        for (const leaf of leaves(figures)) {
          expect(leaf).not.toBeUndefined();
          if (typeof leaf === 'number') expect(leaf).toSatisfy(Number.isFinite);
        }
        const { usableCostPerKg, usableGrams, paid, credit, portionCost: cost } = figures;
        expect((Number(usableCostPerKg) * usableGrams) / 1000).toBeCloseTo(Number(paid) - Number(credit), 6);
        expect(cost).toBeCloseTo(Number(usableCostPerKg) * 0.15, 6);
      }),
    );
  });
});
