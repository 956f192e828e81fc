/** The butcher's yield test: a piece cut into named parts, what the cutting lost, and what is left to cook or sell. */
import { MemberError } from '../errors.ts';
import { type Money, type PriceReader, paid } from '../measure/money.ts';
import { NANOGRAMS, type Nanograms } from '../measure/units.ts';
import type { WeightReader } from '../measure/weight.ts';
import { costsOf, lastPart, type Saved, type Weighed, weightsOf } from './piece.ts';
import { agree, refuseImpossible } from './plausible.ts';
import { partTexts, readSaved } from './saved.ts';

/** The most parts of one test. */
export const MOST_PARTS = 8;
/** The largest portion that is taken for one, 2 kg: above it somebody typed the whole piece. */
export const LARGEST_PORTION: Nanograms = (2 * NANOGRAMS.kg) as Nanograms;

/** One part: its name, its weight, and what it is worth where it is worth something. */
export type Part = Saved;

/** A test as it was told. What was not weighed is null. */
export interface PartsTold extends Omit<Weighed, 'trim' | 'left' | 'saved'> {
  /** At most {@link MOST_PARTS}. */
  parts: readonly Part[];
  /** What is left to cook or sell; without it, what the parts and the loss leave. */
  usable: Nanograms | null;
  /** Lost in cutting, as stated; without it, what the parts and the usable weight leave. */
  loss: Nanograms | null;
  /** Its member stands by more coming off the heat than went in. */
  gained: boolean;
}

/** A test whose weights add up. */
export interface Parted {
  /** The piece: `left` is the usable weight, `saved` are the parts. */
  piece: Weighed;
  usable: Nanograms;
  /** Lost in cutting; null where neither it nor the usable weight was told. */
  loss: Nanograms | null;
  /** How much more (below zero: less) was told than the whole weighs, no more than scales differ by; mostly 0. */
  apart: Nanograms;
}

/**
 * Reads the parts, parted by commas, semicolons or new lines.
 * @throws MemberError or Ask, as `readSaved` does, and a MemberError for a ninth part.
 * @example readParts('fat 3 lb, kidneys 1 lb @6.10', ...).map(({ name }) => name) // ['fat', 'kidneys']
 */
export function readParts(text: string, weights: WeightReader, prices: PriceReader): readonly Part[] {
  const { length } = partTexts(text);
  if (length > MOST_PARTS) throw new MemberError('parts-too-many', { count: length, most: MOST_PARTS });
  return readSaved(text, weights, prices);
}

/**
 * Completes a test: loss = whole - parts - usable, or usable = whole - parts - loss; the whole is what came out of
 * the bag, or else what was bought.
 * @throws MemberError where the parts don't add up, or can't be for another reason.
 * @example partedOf({ bought: 12 lb, parts: fat 3 lb, kidneys 1 lb, flanks 1.5 lb, usable: 6 lb, ... }).loss // 8 oz
 */
export function partedOf(told: PartsTold): Parted {
  const { parts, usable: weighed, loss: stated, gained: _gained, ...rest } = told;
  if (weighed === 0) throw new MemberError('weight-zero', { option: 'usable' });
  const whole = told.bagged ?? told.bought;
  const sum = parts.reduce((total, part) => total + part.weight, 0);
  const difference = sum + (weighed ?? 0) + (stated ?? 0) - whole;
  refuseWrongSum(told, sum, difference);
  const usable = (weighed ?? Math.max(0, -difference)) as Nanograms;
  if (usable === 0 && whole > 0) {
    throw new MemberError('nothing-left', { trim: (sum + (stated ?? 0)) as Nanograms, of: whole });
  }
  const piece: Weighed = { ...rest, trim: null, left: usable, saved: parts };
  refuseImpossible({ ...piece, left: null });
  refuseAfterHeat(piece, told);
  refuseMoney(piece);
  // Where all of it was told, the loss is what the others leave.
  const loss = (weighed === null ? stated : Math.max(0, whole - sum - weighed)) as Nanograms | null;
  const apart = (weighed !== null && stated !== null ? difference : Math.max(0, difference)) as Nanograms;
  return { piece, usable, loss, apart };
}

/** Too much, or, where every part was told, too little; scales may differ a little. */
function refuseWrongSum({ bought, bagged, usable, loss }: PartsTold, sum: number, difference: number): void {
  const of = bagged ?? bought;
  const allTold = usable !== null && loss !== null;
  if (of === 0 || agree(of + difference, of) || (difference < 0 && !allTold)) return;
  throw new MemberError('parts-sum', {
    parts: sum as Nanograms,
    usable,
    loss,
    of,
    difference: difference as Nanograms,
  });
}

/** What came off the heat, or of it, against what went in. */
function refuseAfterHeat(piece: Weighed, { gained }: PartsTold): void {
  const { cooked, scraps, served } = piece;
  if (scraps !== null && cooked === null && served === null)
    throw new MemberError('cooked-missing', { scraps });
  const { intoHeat } = weightsOf(piece);
  const part = cooked !== null ? 'cooked' : 'served';
  const weight = cooked ?? served;
  if (!gained && weight !== null && intoHeat !== null && weight > intoHeat)
    throw new MemberError('part-above-whole', { part, weight, whole: 'left', of: intoHeat });
}

/** Nothing here knows rates of exchange; and parts worth more than the whole was paid leave no cost to share out. */
function refuseMoney(piece: Weighed): void {
  const { price, saved } = piece;
  const priced = saved.flatMap((part) =>
    part.price === null ? [] : [{ name: part.name, currency: part.price.currency }],
  );
  const currency = price?.currency ?? priced[0]?.currency;
  const other = priced.find((part) => part.currency !== currency);
  if (other !== undefined && currency !== undefined)
    throw new MemberError('currency-mixed', { ...other, paid: currency });
  const costs = costsOf(piece);
  if (costs?.credit && costs.net.numerator < 0n)
    throw new MemberError('credit-above-paid', { credit: costs.credit, paid: costs.paid });
}

/** @throws MemberError for a portion of nothing, of more than 2 kg, or of more than there is. */
export function refusePortion({ piece }: Parted, portion: Nanograms): void {
  if (portion === 0) throw new MemberError('weight-zero', { option: 'portion' });
  const most = Math.min(LARGEST_PORTION, lastWeight(piece)) as Nanograms;
  if (portion > most) throw new MemberError('portion-too-large', { portion, most });
}

/**
 * The weight that portions are cut from: the last one that was weighed.
 * @example lastWeight({ left: 6 lb, cooked: 4 lb, ... }) // 4 lb
 */
export const lastWeight = (piece: Weighed): Nanograms =>
  weightsOf(piece)[lastPart(piece)] ?? (0 as Nanograms);

/** What a part is worth, exactly; null where no value was told. 1 lb 8 oz at 4.60 a pound is 6.90. */
export const creditOf = ({ price, weight }: Part): Money | null =>
  price === null ? null : paid(price, weight);
