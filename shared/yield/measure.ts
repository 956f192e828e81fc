/** The measures that a club compares: each is a loss out of a base weight. */
import { grams, type Nanograms } from '../measure/units.ts';
import { type Weighed, type Weights, weightsOf } from './piece.ts';

/**
 * `trim`: came off raw, of bought. `cooking`: lost in the heat, of what went in. `carving`: lost at the board,
 * of what came off the heat. `plate`: not on the plate, of bought.
 */
export const MEASURES = ['trim', 'cooking', 'carving', 'plate'] as const;

/** One of them. */
export type Measure = (typeof MEASURES)[number];

/** What a club averages and ranks by: the four shares, and what a weight on the plate cost. */
export const AVERAGED = [...MEASURES, 'cost'] as const;

/** One of them. */
export type Averaged = (typeof AVERAGED)[number];

/**
 * Whether injected and pumped pieces are a group of their own in a measure: from the heat on. What came off raw is told
 * before any brine matters.
 * @example setsInjectedApart('cooking') // true
 */
export const setsInjectedApart = (measure: Averaged): boolean => measure !== 'trim';

/** A loss out of a base weight, both in grams. `loss` is negative where the piece gained. */
export interface Loss {
  base: number;
  loss: number;
}

/** The weights between which each measure looks: from the first to what remains of it. */
const ENDS: Record<Measure, (weights: Weights) => readonly [Nanograms | null, Nanograms | null]> = {
  trim: ({ bought, trim }) => [bought, trim === null ? null : ((bought - trim) as Nanograms)],
  cooking: ({ intoHeat, cooked }) => [intoHeat, cooked],
  carving: ({ cooked, served }) => [cooked, served],
  plate: ({ bought, served }) => [bought, served],
};

/**
 * The loss that `measure` looks at, or null where a weight that it needs was not taken.
 * @example lossOf('trim', { bought: 5000 g, trim: 1000 g, ... }) // { base: 5000, loss: 1000 }
 */
export function lossOf(measure: Measure, piece: Weighed): Loss | null {
  const [base, remaining] = ENDS[measure](weightsOf(piece));
  return base === null || remaining === null || base === 0
    ? null
    : { base: grams(base), loss: grams((base - remaining) as Nanograms) };
}
