/** Reading a shop's label as somebody types it in front of it: `14.2 lb @ 5.49 choice`. */
import { Ask, MemberError, type Reading } from '../errors.ts';
import { CURRENCIES } from '../measure/currency.ts';
import { type Price, type PriceReader, readPrice } from '../measure/money.ts';
import { placedIn } from '../measure/placed.ts';
import { UNIT_WORDS } from '../measure/unit-words.ts';
import type { Nanograms } from '../measure/units.ts';
import { readWeight, type WeightReader } from '../measure/weight.ts';
import type { Bone, CutKey, GradeKey } from './keys.ts';
import { readLabelWords } from './label-words.ts';

/** What a label says. */
export interface Label {
  weight: Nanograms;
  price: Price;
  grade: GradeKey | null;
  /** Where the label itself says so; null where it is the cut that is shopped for. */
  cut: CutKey | null;
  bone: Bone | null;
  /** The weight as typed, for the form in which it is weighed in. */
  weightText: string;
}

/** What reading a label depends on. */
export interface LabelReader {
  weights: WeightReader;
  prices: PriceReader;
  /** ISO 3166: whose grades are meant. */
  country: string;
  /** The club's own cuts. */
  own?: readonly CutKey[];
}

/** A whole label is a weight, a price and a few words: longer than any of them alone. */
const LONGEST = 120;

const NUMBER = String.raw`(?:\d+(?:[.,']\d+)*|[.,]\d+)`;
/** Codes that are words too are left out: a label says `all` and `top` of other things. */
const CODES = CURRENCIES.filter((code) => !['ALL', 'TOP'].includes(code)).join('|');
const SIGN = String.raw`(?:(?:[a-z]{1,2})?\p{Sc}|(?<!\p{L})(?:${CODES}|euros?|kr|zł)(?!\p{L}))`;
const UNITS = [...UNIT_WORDS.keys()].map((word) => (word === '#' ? '#' : `${word}(?![\\p{L}])`)).join('|');
const PER = String.raw`(?:\s*(?:\/|per\s|an?\s|the\s|je\s|pro\s|das\s|der\s|die\s|el\s|la\s|por\s|le\s|par\s|au\s)\s*(?:100\s*)?(?:${UNITS}))`;
const OTHER_PER = String.raw`(?:\s*(?:\/|per\s)\s*\p{L}+)`;
const IN_ALL = String.raw`(?:\s*(?:for all|in all|all in|in total|total|altogether|insgesamt|gesamt|zusammen|en total|en todo|au total)(?!\p{L}))`;
const BASIS = `(?:${PER}|${OTHER_PER}|${IN_ALL})`;
const LEAD = String.raw`(?:@|(?<!\p{L})(?:at|for|für|por|pour|zu)\s)`;

/** What is a price wherever it stands, the surest marks first. */
const PRICES = [
  `${LEAD}\\s*(?:-\\s*)?(?:${SIGN}\\s*)?-?${NUMBER}(?:\\s*${SIGN})?${BASIS}?`,
  `${SIGN}\\s*${NUMBER}${BASIS}?`,
  `-?${NUMBER}\\s*${SIGN}?${BASIS}`,
  `${NUMBER}\\s*${SIGN}`,
].map((pattern) => new RegExp(pattern, 'iu'));

/** A run of numbers, units and what joins them: a weight. */
const ATOM = String.raw`(?:${NUMBER}(?:\s*[/:]\s*\d+)?|[½¼¾⅓⅔⅛]|${UNITS})`;
const WEIGHT = new RegExp(
  String.raw`(?:(?:about|approx\.?|ca\.?|circa|etwa)\s+|~\s*)?(?:\d|[½¼¾])(?:\s*(?:[+–−-]\s*)?${ATOM})*`,
  'iu',
);
/** A number after a weight that is whole: what is left is the price, and what it is for was not said. */
const BARE = new RegExp(String.raw`^(.*?(?:${UNITS})\.?)\s+(${NUMBER})$`, 'iu');

interface Texts {
  weight: string;
  price: string;
  words: string;
}

/**
 * What a label says: its weight and its price, in any order, and the words beside them, which may name a grade, a cut and
 * whether the bone is in.
 * @throws MemberError where one of them is missing or can't be read; Ask where two careful people could read it
 * differently. A reading of such a question stands in its place in the label.
 * @example readLabel('8 lb @ 3.99 flat prime', reader) // 8 lb, 3.99 a pound, usda/prime, beef/brisket-flat
 */
export function readLabel(text: string, { weights, prices, country, own = [] }: LabelReader): Label {
  const { option } = weights;
  const read = text.replace(/\s+/g, ' ').trim();
  if (read.length > LONGEST || severalIn(read)) throw new MemberError('label-several', { option, read });
  const texts = split(read, option);
  const { weight } = within(read, texts.weight, () => readWeight(texts.weight, weights));
  if (weight === 0) throw new MemberError('label-weight', { option, read });
  const price = within(read, texts.price, () => readPrice(texts.price, prices));
  if (price.amount === 0) throw new MemberError('label-price', { option, read });
  const words = within(read, texts.words, () => readLabelWords(texts.words, { option, read, country, own }));
  return { weight, price, weightText: texts.weight, ...words };
}

/** Two prices are two labels; so are two parts with a comma or a semicolon between them. */
function severalIn(read: string): boolean {
  const [label = '', ...others] = read.split(/\s*(?:;|,(?!\d)|\n)\s*/).filter((part) => /\d/.test(part));
  return others.length > 0 && /[@/]|\p{Sc}/u.test(label) && others.some((part) => /[@/]|\p{Sc}/u.test(part));
}

function split(read: string, option: string): Texts {
  const priced = PRICES.map((pattern) => pattern.exec(read)).find((match) => match !== null);
  const price = priced?.[0]?.trim() ?? '';
  const rest = priced
    ? `${read.slice(0, priced.index)} | ${read.slice(priced.index + priced[0].length)}`
    : read;
  const weighed = WEIGHT.exec(rest);
  const run = weighed?.[0]?.trim() ?? '';
  const [, whole = run, bare = ''] = priced ? [] : (BARE.exec(run) ?? []);
  if (whole === '') throw new MemberError('label-weight', { option, read });
  if (price === '' && bare === '') throw new MemberError('label-price', { option, read });
  const words = weighed
    ? `${rest.slice(0, weighed.index)} ${rest.slice(weighed.index + weighed[0].length)}`
    : '';
  return { weight: whole, price: price || bare, words: words.replace(/[|,;\s]+/g, ' ').trim() };
}

/** A reading of a part stands in its place in the label. */
function within<Value>(label: string, part: string, read: () => Value): Value {
  try {
    return read();
  } catch (problem) {
    if (!(problem instanceof Ask)) throw problem;
    const placed = placedIn(problem, (taken) => {
      const at = label.lastIndexOf(part);
      return at < 0 ? `${label} ${taken}` : label.slice(0, at) + taken + label.slice(at + part.length);
    });
    throw new Ask(placed.code, placed.values, placed.readings.map(rememberedOfLabels));
  }
}

/** What a decimal means on a label is kept apart from what it means on a scale. */
function rememberedOfLabels(reading: Reading): Reading {
  const means = reading.remember?.scaleDecimals;
  return means === undefined ? reading : { ...reading, remember: { labelDecimals: means } };
}
