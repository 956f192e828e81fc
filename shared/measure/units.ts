/** The units weights are kept and printed in. Exact: NIST Handbook 44, Appendix C. */

/** A weight: a whole number of nanograms, exact up to 9 tonnes. One ounce is 28,349,523,125 of them. */
export type Nanograms = number & { readonly unit: 'ng' };

/** The systems of units. */
export const UNITS = ['lb', 'kg'] as const;
/** The system a member thinks in. */
export type Units = (typeof UNITS)[number];

/** How a decimal is written: `14.83` or `14,83`. */
export type DecimalMark = '.' | ',';

/** Nanograms in one of each unit. */
export const NANOGRAMS = {
  g: 1_000_000_000 as Nanograms,
  kg: 1_000_000_000_000 as Nanograms,
  /** 1/16 lb exactly. */
  oz: 28_349_523_125 as Nanograms,
  /** 453.59237 g exactly. */
  lb: 453_592_370_000 as Nanograms,
} as const;

/** The units that weights are written in. */
export type WeightUnit = keyof typeof NANOGRAMS;

/** Grams as a plain number, for `figures`: `grams(NANOGRAMS.lb)` is 453.59237. */
export const grams = (weight: Nanograms): number => weight / NANOGRAMS.g;
