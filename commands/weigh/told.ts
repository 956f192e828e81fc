/** What a line tells of a piece: its weights net of the pan, and everything that goes with them. */
import type { Given } from '../../shared/chat/option.ts';
import type { Piece, PieceChange } from '../../shared/club/piece.ts';
import { Ask, MemberError, type Reading } from '../../shared/errors.ts';
import { LONGEST_TEXT } from '../../shared/measure/fold.ts';
import { isEstimate } from '../../shared/measure/terms.ts';
import type { Nanograms } from '../../shared/measure/units.ts';
import type { Told } from '../../shared/replies/weighed.ts';
import { cutOf } from '../../shared/trade/cuts.ts';
import { gradeOfSpecies } from '../../shared/trade/grades.ts';
import type { CutKey, StyleKey } from '../../shared/trade/keys.ts';
import { readStyle } from '../../shared/trade/styles.ts';
import { WEIGHT_NAMES, type WeightName } from '../../shared/yield/piece.ts';
import type { WeighOptions } from './options.ts';

export type WeighGiven = Given<WeighOptions>;
export type Typed = Readonly<Record<string, string>>;

/** The weights that a line names, in the order in which a piece meets the scale. */
export const weightsGiven = (given: WeighGiven): WeightName[] =>
  WEIGHT_NAMES.filter((name) => given[name] !== undefined);

/** Everything else that is kept as it was told. */
const KEPT_AS_TOLD = ['grade', 'bone', 'wrap', 'shop', 'note'] as const;

/** How a line changes a piece: what it does not mention stays. */
export function changeTold(given: WeighGiven, typed: Typed, before: Piece | null, cut: CutKey): PieceChange {
  const weights = netWeights(given, typed);
  const change: { -readonly [Key in keyof PieceChange]: PieceChange[Key] } = {};
  for (const { name, weight } of weights) Object.assign(change, { [name]: weight });
  for (const name of KEPT_AS_TOLD) {
    if (given[name] !== undefined) Object.assign(change, { [name]: given[name] });
  }
  // A name that several animals' grades share means this animal's.
  if (given.grade) change.grade = gradeOfSpecies(given.grade, cutOf(cut).species);
  if (given.price !== undefined) change.price = given.price;
  if (given.saved !== undefined) change.saved = given.saved ?? [];
  if (given.pieces !== undefined) change.pieces = given.pieces ?? 1;
  if (given.pumped !== undefined) change.pumped = given.pumped ?? false;
  if (given.date) change.day = given.date;
  if (given.style !== undefined) change.style = given.style === null ? null : styleOf(given.style, cut);
  if (before !== null && cut !== before.cut) change.cut = cut;
  const texts = typedAfter(before?.typed ?? {}, withoutPan(given, typed));
  return { ...change, typed: texts, approximate: estimated(texts) };
}

/** A piece is an estimate while one of its weights is: an exact one in its place ends that. */
export const estimated = (typed: Typed): boolean =>
  WEIGHT_NAMES.some((name) => isEstimate(typed[name] ?? ''));

/** Texts of options that are about the line, not about the piece. */
const NOT_KEPT = new Set(['piece', 'quiet', 'why']);
const NOTHING_BY_ITSELF = new Set([...NOT_KEPT, 'pan', 'pans']);

/** Whether there is nothing in a line that could be kept. */
export const tellsNothing = (typed: Typed): boolean =>
  Object.keys(typed).every((name) => NOTHING_BY_ITSELF.has(name));

function typedAfter(before: Typed, typed: Typed): Typed {
  const texts = Object.entries({ ...before, ...typed });
  return Object.fromEntries(texts.filter(([name, text]) => !NOT_KEPT.has(name) && text.trim() !== '-'));
}

/** The style that a text means for a cut. @throws MemberError where nobody trims it by a measure, or so. */
export function styleOf(text: string, cut: CutKey): StyleKey {
  const { styles } = cutOf(cut);
  if (styles === null) throw new MemberError('styles-none', { read: text, cut });
  return readStyle(text, styles);
}

/** The weights that a line tells, each less the pan it was weighed in; `weight` null takes one back. */
function netWeights(
  given: WeighGiven,
  typed: Typed,
): { name: WeightName; weight: Nanograms | null; pan: Nanograms | null }[] {
  const names = weightsGiven(given);
  const pan = panUnder(given, typed, names);
  return names.map((name) => {
    const weight = given[name]?.weight ?? null;
    if (weight === null || pan === null || name !== pan.under) return { name, weight, pan: null };
    if (pan.weight > weight)
      throw new MemberError('pan-above-weight', { option: name, weight, pan: pan.weight });
    return { name, weight: (weight - pan.weight) as Nanograms, pan: pan.weight };
  });
}

/** Which weight the pan belongs to: the one from the member's own scale, since a label is net. */
function panUnder(given: WeighGiven, typed: Typed, names: readonly WeightName[]) {
  if (!given.pan) {
    if (given.pans) throw new MemberError('pans-none', { read: typed.pans ?? '' });
    return null;
  }
  const scale = names.filter((name) => name !== 'bought');
  const [under = 'bought', ...others] = scale;
  if (others.length > 0) throw askWhichPan(typed, scale, given.pans ?? 1);
  return { under, weight: (given.pan * (given.pans ?? 1)) as Nanograms };
}

/**
 * The texts with the pan taken off in the weight that it was under: kept beside all of a piece's texts, `pan:` alone
 * would not say any more which weight it belongs to.
 */
function withoutPan(given: WeighGiven, typed: Typed): Typed {
  const { pan, pans: _pans, ...others } = typed;
  const under = panUnder(given, typed, weightsGiven(given))?.under;
  if (pan === undefined || under === undefined) return typed;
  const less = `${typed[under] ?? ''}${` - ${pan}`.repeat(given.pans ?? 1)}`;
  return less.length > LONGEST_TEXT ? typed : { ...others, [under]: less };
}

function askWhichPan(typed: Typed, scale: readonly WeightName[], count: number): Ask {
  const pan = typed.pan ?? '';
  const less = (name: string) => ({ [name]: `${typed[name] ?? ''}${` - ${pan}`.repeat(count)}` });
  const taken = { pan: null, pans: null };
  const readings: Reading[] = scale.map((option) => ({
    label: { code: 'pan-under', values: { option } },
    set: { ...less(option), ...taken },
  }));
  const each: Reading = {
    label: { code: 'pan-under-each', values: {} },
    set: Object.assign({}, ...scale.map(less), taken),
  };
  return new Ask('which-weight-in-pan', { pan, options: scale }, [...readings.slice(0, 4), each]);
}

/** What to echo: every weight that was told, as it is kept. */
export const toldOf = (given: WeighGiven, typed: Typed): Told[] =>
  netWeights(given, typed).flatMap(({ name, weight, pan }) =>
    weight === null ? [] : [{ name, weight, pan }],
  );
