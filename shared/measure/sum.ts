/** Adding up the terms of a weight, and taking pans off: every sum that its terms can mean together. */
import { MemberError } from '../errors.ts';
import { fold } from './fold.ts';
import { DOUBTS, type Meaning, type Setting, type Settled } from './meaning.ts';
import { meaningsOf } from './pair.ts';
import { add, ratio, times } from './ratio.ts';
import { joined, mayJoin, type Term, type Typed, termsOf } from './terms.ts';
import type { UnitWord } from './unit-words.ts';
import type { Nanograms } from './units.ts';
import type { WeightReader } from './weight.ts';

const NO_UNITS: ReadonlySet<UnitWord['kind']> = new Set();

/** A name of a pan as it is looked up: without case and spaces. `Blue  Pan` is `bluepan`. */
export const panKey = (name: string): string => fold(name).replaceAll(' ', '');

function panOf(term: Term, pans: WeightReader['pans']): Nanograms | undefined {
  const key = panKey(term.text);
  return [...pans].find(([name]) => panKey(name) === key)?.[1];
}

function kindsOf(terms: readonly Term[]): ReadonlySet<UnitWord['kind']> {
  const parts = terms.flatMap((term) => (term.parts instanceof MemberError ? [] : term.parts));
  return new Set(parts.flatMap(({ unit }) => unit?.kind ?? []));
}

/** What `term` can mean: a weight, or a pan that is taken off. */
function weightOrPan(term: Term, setting: Setting, pans: WeightReader['pans'], typed: Typed) {
  const meanings = meaningsOf(term, setting, typed);
  if (!(meanings instanceof MemberError) || term.sign === 1) return meanings;
  const pan = panOf(term, pans);
  if (pan !== undefined) {
    const nanograms = ratio(BigInt(pan));
    return [{ nanograms, text: () => term.text, form: 'g', system: null, settled: {} } satisfies Meaning];
  }
  if (meanings.code !== 'weight-unreadable' || !/^\p{L}/u.test(term.text)) return meanings;
  return new MemberError('pan-unknown', { ...typed, name: term.text, pans: [...pans.keys()] });
}

const agree = (a: Settled, b: Settled): boolean =>
  DOUBTS.every((doubt) => a[doubt] === undefined || b[doubt] === undefined || a[doubt] === b[doubt]);

const goTogether = (a: Meaning, b: Meaning): boolean =>
  agree(a.settled, b.settled) && (a.system === null || b.system === null || a.system === b.system);

const extend = (sum: Meaning, next: Meaning, sign: Term['sign']): Meaning => ({
  nanograms: add(sum.nanograms, times(next.nanograms, BigInt(sign))),
  text: () => `${sum.text()} ${sign === 1 ? '+' : '-'} ${next.text()}`,
  form: next.form === 'lb-oz' ? 'lb-oz' : sum.form,
  system: sum.system ?? next.system,
  settled: { ...sum.settled, ...next.settled },
});

const allSums = (
  sums: readonly Meaning[],
  more: readonly Meaning[],
  sign: Term['sign'],
): readonly Meaning[] =>
  sums.flatMap((sum) => more.filter((next) => goTogether(sum, next)).map((next) => extend(sum, next, sign)));

function sumOf(terms: readonly Term[], reader: WeightReader, typed: Typed): readonly Meaning[] | MemberError {
  const alone = terms.length === 1;
  const { units, decimals, decimalMark } = reader;
  let sums: readonly Meaning[] = [];
  for (const [index, term] of terms.entries()) {
    const before = alone ? NO_UNITS : kindsOf(terms.slice(0, index));
    const after = alone ? NO_UNITS : kindsOf(terms.slice(index + 1));
    const meanings = weightOrPan(term, { units, decimals, decimalMark, before, after }, reader.pans, typed);
    if (meanings instanceof MemberError) return meanings;
    sums = index === 0 ? meanings : allSums(sums, meanings, term.sign);
  }
  if (sums.length > 0) return sums;
  const kinds = kindsOf(terms);
  const metric = kinds.has('kg') || kinds.has('g');
  return new MemberError(
    metric && (kinds.has('lb') || kinds.has('oz')) ? 'weight-mixed' : 'weight-unclear',
    typed,
  );
}

/** The terms with every dash that may join two numbers taken to do so, if there is one. */
function withJoins(terms: readonly Term[]): readonly Term[] | null {
  const all: Term[] = [];
  for (const term of terms) {
    const last = all.at(-1);
    if (last && mayJoin(last, term)) all[all.length - 1] = joined(last, term);
    else all.push(term);
  }
  return all.length < terms.length ? all : null;
}

/** Every way to read a text as a sum, and what all of them share. */
export interface Sums {
  /** The likeliest first. */
  readonly sums: readonly Meaning[];
  readonly approximate: boolean;
  readonly summands: number;
}

/**
 * Every sum that a folded text can mean, or why it is none: `2-9` can be 2 lb 9 oz or 2.9 lb. Throws nothing.
 *
 * @example sumsOf('8 lb + 4 oz', reader, typed) // one sum, of 8.25 lb
 */
export function sumsOf(text: string, reader: WeightReader, typed: Typed): Sums | MemberError {
  const terms = termsOf(text, typed);
  const plain = sumOf(terms, reader, typed);
  const joins = withJoins(terms);
  const other = joins && sumOf(joins, reader, typed);
  const both = terms.some(({ dash }) => dash === 'tight') ? [other, plain] : [plain, other];
  const sums = both.flatMap((found) => (found === null || found instanceof MemberError ? [] : found));
  if (sums.length === 0 && plain instanceof MemberError) return plain;
  return {
    sums,
    approximate: terms.some(({ approximate }) => approximate),
    summands: terms.filter(({ sign }) => sign === 1).length,
  };
}
