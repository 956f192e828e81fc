/** What one person eats: a sandwich, a plate, or a weight that was told; and how many of them a weight makes. */
import { MemberError } from '../errors.ts';
import { NANOGRAMS, type Nanograms, type Units } from '../measure/units.ts';
import { LARGEST_PORTION } from './parts.ts';

/** What people call what they eat. */
export const SERVINGS = ['sandwiches', 'plates'] as const;

/** One of them. */
export type Serving = (typeof SERVINGS)[number];

/** Meat as served. Common practice, no source: a quarter pound a sandwich, a third of a pound on a plate with sides. */
const WEIGHTS: Readonly<Record<Units, Readonly<Record<Serving, Nanograms>>>> = {
  lb: {
    sandwiches: (NANOGRAMS.lb / 4) as Nanograms,
    plates: Math.round(NANOGRAMS.lb / 3) as Nanograms,
  },
  kg: {
    sandwiches: (115 * NANOGRAMS.g) as Nanograms,
    plates: (150 * NANOGRAMS.g) as Nanograms,
  },
};

/** A child eats three quarters of it: a quarter pound where a grown-up eats a third. Common practice, no source. */
export const CHILD_PART = 0.75;

/** The weight of one serving, round in the reader's own units. `servingOf('sandwiches', 'lb')` is 4 oz. */
export const servingOf = (serving: Serving, units: Units): Nanograms => WEIGHTS[units][serving];

const NAMED: readonly (readonly [RegExp, Serving])[] = [
  [/^sandwich(?:es)?$/, 'sandwiches'],
  [/^plates?$/, 'plates'],
];

/** The serving that a text names; null where it names none. `servingNamed('Plate')` is `plates`. */
export const servingNamed = (text: string): Serving | null =>
  NAMED.find(([pattern]) => pattern.test(text.trim().toLowerCase()))?.[1] ?? null;

/** Keeps what is whole but for its last digits whole. */
const DUST = 1e-9;

/**
 * How many whole servings a weight makes: rounded down. Both in one unit, the serving above 0.
 * @example servingsIn(270.72, 3) // 90
 */
export const servingsIn = (weight: number, serving: number): number => Math.floor(weight / serving + DUST);

/** @throws MemberError for a portion of nothing, or of more than 2 kg: somebody typed the whole dinner. */
export function refuseServing(portion: Nanograms): void {
  if (portion === 0) throw new MemberError('weight-zero', { option: 'portion' });
  if (portion > LARGEST_PORTION)
    throw new MemberError('portion-too-large', { portion, most: LARGEST_PORTION });
}

/** Shops cut to about that: what is bought is rounded up to a quarter pound, or 100 g. */
const STEP: Readonly<Record<Units, number>> = { lb: NANOGRAMS.lb / 4, kg: NANOGRAMS.kg / 10 };

/**
 * What to ask for in a shop: rounded up.
 * @param grams above 0
 * @example roundedUp(13.06 lb in grams, 'lb') // 13.25 lb
 */
export function roundedUp(grams: number, units: Units): Nanograms {
  const step = STEP[units];
  return (Math.ceil((grams * NANOGRAMS.g) / step - DUST) * step) as Nanograms;
}
