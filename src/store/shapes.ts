/** The shapes of what is kept as JSON. */
import { z } from 'zod';
import type { DraftReading } from '../../shared/club/draft.ts';
import type { Presets } from '../../shared/club/member.ts';
import type { Doubt } from '../../shared/errors.ts';
import type { Currency, PriceBasis } from '../../shared/measure/money.ts';
import { type Nanograms, UNITS } from '../../shared/measure/units.ts';
import { type CutKey, type GradeKey, type StyleKey, WRAPS } from '../../shared/trade/keys.ts';
import type { Saved } from '../../shared/yield/piece.ts';

const words = z.string();
const key = <T extends string>() => z.custom<T>((value) => typeof value === 'string' && value !== '');
const weight = z.custom<Nanograms>((value) => Number.isSafeInteger(value) && Number(value) >= 0);

/** What a price can be for. */
export const PRICE_BASES = ['lb', 'oz', 'kg', '100g', 'all'] as const satisfies readonly PriceBasis[];
/** How a member's bare decimals are meant: as they stand, or as pounds and ounces. */
export const DECIMALS = ['decimal', 'ounces'] as const;

const price = z.object({
  amount: z.int().nonnegative(),
  basis: z.enum(PRICE_BASES),
  currency: key<Currency>(),
  text: words,
});

/** Trimmings that were saved. */
export const savedShape: z.ZodType<readonly Saved[]> = z.array(
  z.object({ name: words, weight, price: price.nullable() }),
);

/** Texts by name: what was typed, by option. */
export const textsShape: z.ZodType<Readonly<Record<string, string>>> = z.record(words, words);

/** The doubts that were settled. */
export const doubtsShape: z.ZodType<readonly Doubt[]> = z.array(key<Doubt>());

const decimals = z.enum(DECIMALS);
const remembered = z.object({
  units: z.enum(UNITS).exactOptional(),
  labelDecimals: decimals.exactOptional(),
  scaleDecimals: decimals.exactOptional(),
});

/** What the buttons of a question do. */
export const readingsShape: z.ZodType<readonly DraftReading[]> = z.array(
  z.object({
    options: textsShape,
    confirms: key<Doubt>().nullable(),
    opens: words.nullable(),
    remember: remembered.nullable(),
  }),
);

/** A part of a piece: the fields that a correction changed. */
export const partShape: z.ZodType<Readonly<Record<string, unknown>>> = z.record(words, z.unknown());

/** What a member told last time. Presets that a later version knows are passed over. */
export const presetsShape: z.ZodType<Presets> = z.object({
  cut: key<CutKey>().exactOptional(),
  grade: key<GradeKey>().exactOptional(),
  styles: z.record(words, key<StyleKey>()).exactOptional(),
  shop: words.exactOptional(),
  wrap: z.enum(WRAPS).exactOptional(),
  priceUnit: z.enum(UNITS).exactOptional(),
  pan: words.exactOptional(),
});
