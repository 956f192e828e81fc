/** Options that hold weights and money. What a bare number means is its reader's own: see the readers below. */
import type { Option, Reader } from '../shared/chat/option.ts';
import { type Price, type PriceReader, readPrice } from '../shared/measure/money.ts';
import { decimalMark } from '../shared/measure/show.ts';
import type { Nanograms } from '../shared/measure/units.ts';
import { readWeight, type Weight, type WeightReader } from '../shared/measure/weight.ts';
import { type Label, readLabel } from '../shared/trade/label.ts';
import { type Part, readParts } from '../shared/yield/parts.ts';
import type { Saved } from '../shared/yield/piece.ts';
import { readSaved } from '../shared/yield/saved.ts';
import { SERVINGS, type Serving, servingNamed } from '../shared/yield/servings.ts';
import { matching, matchingNames, words } from './options.ts';

const weightReader = ({ option, member, units, locale, pans }: Reader): WeightReader => ({
  option,
  units,
  decimals: option === 'bought' ? member.labelDecimals : member.scaleDecimals,
  decimalMark: decimalMark(locale),
  pans,
});

const priceReader = ({ option, member, units, club }: Reader): PriceReader => ({
  option,
  units: member.presets.priceUnit ?? units ?? club.units,
  currency: club.currency,
});

/** A weight, as the scale or the label shows it. */
export const weight = (): Option<Weight> => ({
  kind: 'text',
  tellsUnits: true,
  read: (text, reader) => readWeight(text, weightReader(reader)),
});

/** A price; what it is for is asked after the weights are kept. */
export const price = (): Option<Price> => ({
  kind: 'text',
  tellsUnits: true,
  extra: true,
  read: (text, reader) => readPrice(text, priceReader(reader)),
});

/** Trimmings that were kept, each with its worth if any. */
export const saved = (): Option<readonly Saved[]> => ({
  kind: 'text',
  extra: true,
  read: (text, reader) => readSaved(text, weightReader(reader), priceReader(reader)),
});

/** Parts of a piece, each with its weight and what it is worth: one a line, or parted by commas. */
export const parts = (): Option<readonly Part[]> => ({
  kind: 'text',
  tellsUnits: true,
  read: (text, reader) => readParts(text, weightReader(reader), priceReader(reader)),
});

/** A shop's label, in its own words: `14.2 lb @ 5.49 choice`. */
export const label = (): Option<Label> => ({
  kind: 'text',
  tellsUnits: true,
  read: (text, reader) =>
    readLabel(text, {
      weights: { ...weightReader(reader), decimals: reader.member.labelDecimals },
      prices: priceReader(reader),
      country: reader.club.gradeCountry,
      own: reader.ownCuts,
    }),
});

/** What one person eats: sandwiches, plates, or a weight each. */
export const serving = (): Option<Serving | Nanograms> => ({
  kind: 'text',
  tellsUnits: true,
  read: (text, reader) => servingNamed(text) ?? readWeight(text, weightReader(reader)).weight,
  complete: (typed, { say }) =>
    matching(
      typed,
      SERVINGS.map((value) => ({ label: say.feed.serving(value), value })),
    ),
});

/** The weight of a pan: by the name it was kept under, or as a weight. */
export const pan = (): Option<Nanograms> => ({
  kind: 'text',
  read: (text, reader) =>
    reader.pans.get(text.trim().replace(/\s+/g, ' ').toLowerCase()) ??
    readWeight(text, weightReader(reader)).weight,
  complete: (typed, { pans }) => matchingNames(typed, [...pans.keys()]),
});

/** What a pan is called. */
export const panName = (): Option<string> => ({
  ...words(60),
  complete: (typed, { pans }) => matchingNames(typed, [...pans.keys()]),
});
