/** Pieces for the tests of yields, weights in grams. */
import fc from 'fast-check';
import type { Currency, Price } from '../../../shared/measure/money.ts';
import { NANOGRAMS, type Nanograms } from '../../../shared/measure/units.ts';
import type { Weighed, WeightName } from '../../../shared/yield/piece.ts';

export const g = (weight: number): Nanograms => Math.round(weight * NANOGRAMS.g) as Nanograms;
export const lb = (weight: number): Nanograms => Math.round(weight * NANOGRAMS.lb) as Nanograms;

export const perUnit = (amount: number, basis: Price['basis'], currency = 'USD'): Price => ({
  amount: Math.round(amount * 10_000),
  basis,
  currency: currency as Currency,
  text: `${amount}/${basis}`,
});

/** A piece of which only what is told is known. */
export const piece = (told: Partial<Weighed> = {}): Weighed => ({
  pieces: 1,
  bought: g(5000),
  bagged: null,
  trim: null,
  left: null,
  added: null,
  cooked: null,
  scraps: null,
  served: null,
  saved: [],
  price: null,
  ...told,
});

/** The same, in grams. */
export const inGrams = (told: Partial<Record<WeightName, number>>): Weighed =>
  piece(Object.fromEntries(Object.entries(told).map(([name, weight]) => [name, g(weight)])));

const share = fc.double({ min: 0, max: 1, noNaN: true });
const someOr = <Value>(value: Value): fc.Arbitrary<Value | null> => fc.constantFrom(value, null);

/** Pieces that a kitchen can have, each weight known or not: no part outweighs what it came from. */
export const possiblePieces: fc.Arbitrary<Weighed> = fc
  .record({
    bought: fc.integer({ min: 1000, max: 50_000_000 }),
    juice: share,
    trim: share,
    added: share,
    cooked: share,
    scraps: share,
    price: fc.option(fc.integer({ min: 0, max: 1_000_000 }), { nil: null }),
    asLeft: fc.boolean(),
    asServed: fc.boolean(),
  })
  .chain((told) => {
    const bought = told.bought * 1000;
    const bagged = bought - Math.floor((told.juice * bought) / 4);
    const trim = Math.floor(told.trim * (bagged - 1));
    const left = bagged - trim;
    const added = Math.floor((told.added * left) / 4);
    const cooked = Math.max(1, Math.floor(told.cooked * (left + added)));
    const scraps = Math.floor(told.scraps * cooked);
    const weight = (value: number) => someOr(value as Nanograms);
    return fc.record({
      pieces: fc.integer({ min: 1, max: 9 }),
      bought: fc.constant(bought as Nanograms),
      // What was taken off is told from the weight out of the bag, so the bag is known.
      bagged: fc.constant(bagged as Nanograms),
      trim: told.asLeft ? fc.constant(null) : weight(trim),
      left: told.asLeft ? weight(left) : fc.constant(null),
      // Told always: without it what came off the heat could be more than went in.
      added: fc.constant(added as Nanograms),
      cooked: weight(cooked),
      scraps: told.asServed ? fc.constant(null) : weight(scraps),
      served: told.asServed ? weight(cooked - scraps) : fc.constant(null),
      saved: fc.constant([]),
      price: fc.constant(
        told.price === null
          ? null
          : { amount: told.price, basis: 'kg' as const, currency: 'USD' as Currency, text: '' },
      ),
    });
  });
