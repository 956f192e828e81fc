/** The grammar of a weight: a folded text becomes terms, added or taken off, of one or two numbers with units. */
import { MemberError } from '../errors.ts';
import { fold } from './fold.ts';
import { type Ratio, ratio } from './ratio.ts';
import { OTHER_UNITS, UNIT_WORDS, type UnitWord } from './unit-words.ts';

/** A written number: digits with their marks, or whole digits (perhaps none) and a fraction. */
export interface Numeral {
  readonly digits: string;
  readonly fraction: Ratio | null;
}

/** A number, its unit if one is written, and what stands between it and the number before it. */
export interface Part {
  readonly numeral: Numeral;
  readonly unit: UnitWord | null;
  readonly joiner: 'space' | 'colon' | 'dash';
}

/** One term of a sum: `3 lb 2 oz`, `blue pan`. */
export interface Term {
  readonly sign: 1 | -1;
  /** How the sign is written: a dash may also join (`2-9`), most of all without a space on both sides. */
  readonly dash: 'none' | 'spaced' | 'tight';
  readonly approximate: boolean;
  readonly text: string;
  /** The numbers it is made of, or why it is no weight (it may still be a pan). */
  readonly parts: readonly Part[] | MemberError;
}

/** What was typed and where: what every refusal says. */
export interface Typed {
  readonly option: string;
  readonly read: string;
}

interface Token {
  readonly kind: 'number' | 'word' | 'mark';
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

const TOKEN = /(\d+(?:[.,']\d+)*|[.,]\d+(?:[.,']\d+)*)|([#℔]|\p{L}[\p{L}\p{M}]*(?:\.(?!\d))?)|\S/gu;
const SIGN_WORDS: ReadonlyMap<string, 1 | -1> = new Map([
  ['+', 1],
  ['plus', 1],
  ['más', 1],
  ['-', -1],
  ['minus', -1],
  ['less', -1],
  ['weniger', -1],
  ['menos', -1],
  ['moins', -1],
]);
const ABOUT = new Set(
  '~ ≈ about approx approximately around roughly ca circa etwa ungefähr rund unos aprox environ'.split(' '),
);
const AND = new Set(['and', '&', 'und', 'y']);
const WHOLE = /^\d+$/;

function tokens(text: string): readonly Token[] {
  const all: Token[] = [];
  TOKEN.lastIndex = 0;
  for (let match = TOKEN.exec(text); match !== null; match = TOKEN.exec(text)) {
    const kind = match[1] !== undefined ? 'number' : match[2] !== undefined ? 'word' : 'mark';
    all.push({ kind, text: match[0], start: match.index, end: match.index + match[0].length });
  }
  return all;
}

const bare = (token: Token): string => (token.kind === 'word' ? token.text.replace(/\.$/, '') : token.text);

/** The number that starts at `at`, and how many tokens it takes: `14 3/4` takes four. */
function numeralAt(
  all: readonly Token[],
  at: number,
): { numeral: Numeral; length: number } | 'by-zero' | null {
  const first = all[at];
  if (first?.kind !== 'number') return null;
  const skip = AND.has(all[at + 1]?.text ?? '') ? 1 : 0;
  for (const [whole, from] of [
    ['', at],
    [first.text, at + 1 + skip],
  ] as const) {
    const [over, slash, under] = all.slice(from, from + 3);
    if (slash?.text !== '/' || over?.kind !== 'number') continue;
    if (!under || ![whole || '0', over.text, under.text].every((text) => WHOLE.test(text))) return null;
    const fraction = ratio(BigInt(over.text), BigInt(under.text));
    if (fraction.d === 0n) return 'by-zero';
    if (whole !== '' && fraction.n >= fraction.d) return null;
    return { numeral: { digits: whole, fraction }, length: from + 3 - at };
  }
  return { numeral: { digits: first.text, fraction: null }, length: 1 };
}

/** What stands between a number (with a unit or not) and the next, and how many tokens it takes. */
function joinerAt(all: readonly Token[], at: number, afterUnit: boolean): [Part['joiner'], number] {
  const text = all[at]?.text ?? '';
  if (text === ':' && !afterUnit) return ['colon', 1];
  return ['space', afterUnit && (text === ',' || AND.has(text)) ? 1 : 0];
}

function partsOf(all: readonly Token[], typed: Typed): readonly Part[] | MemberError {
  const parts: Part[] = [];
  let [joiner, at]: [Part['joiner'], number] = ['space', 0];
  const unreadable = () => new MemberError('weight-unreadable', { ...typed, part: all[at]?.text ?? '' });
  while (at < all.length || parts.length === 0 || joiner === 'colon') {
    const found = numeralAt(all, at);
    if (found === 'by-zero') return new MemberError('weight-by-zero', typed);
    if (found === null || parts.length === 2) return unreadable();
    at += found.length;
    const after = all[at];
    const word = after?.kind === 'word' ? bare(after) : null;
    const unit = word === null ? null : (UNIT_WORDS.get(word) ?? null);
    if (word !== null && OTHER_UNITS.has(word))
      return new MemberError('weight-other-unit', { ...typed, unit: word });
    if (unit !== null) at += 1;
    parts.push({ numeral: found.numeral, unit, joiner });
    const [next, length] = joinerAt(all, at, unit !== null);
    if (length > 0 && at + length === all.length && next === 'space') return unreadable();
    [joiner, at] = [next, at + length];
  }
  return parts;
}

function termOf(text: string, all: readonly Token[], sign: Token | null, typed: Typed): Term {
  const [first] = all;
  const approximate = first !== undefined && all.length > 1 && ABOUT.has(bare(first));
  const start = first?.start ?? text.length;
  const end = all.at(-1)?.end ?? start;
  const spaced = sign === null || (text[sign.start - 1] === ' ' && text[sign.end] === ' ');
  return {
    sign: (sign && SIGN_WORDS.get(sign.text)) ?? 1,
    dash: sign?.text !== '-' ? 'none' : spaced ? 'spaced' : 'tight',
    approximate,
    text: text.slice(start, end),
    parts: partsOf(approximate ? all.slice(1) : all, typed),
  };
}

/**
 * The terms of a folded text, in order. Says of each whether it is a weight; throws nothing.
 *
 * @example termsOf('3 lb 2 oz - blue pan', typed) // two terms: +3 lb 2 oz, and 'blue pan' (sign -1)
 */
export function termsOf(text: string, typed: Typed): readonly Term[] {
  const terms: Term[] = [];
  let [sign, own]: [Token | null, Token[]] = [null, []];
  for (const token of tokens(text)) {
    const begins = SIGN_WORDS.has(token.text) && (own.length > 0 || sign !== null);
    if (!begins) {
      own.push(token);
      continue;
    }
    terms.push(termOf(text, own, sign, typed));
    [sign, own] = [token, []];
  }
  return [...terms, termOf(text, own, sign, typed)];
}

/**
 * Whether the text of a weight says that it is an estimate. Throws nothing.
 *
 * @example isEstimate('about 14.5 lb') // true
 */
export const isEstimate = (text: string): boolean =>
  termsOf(fold(text), { option: '', read: text }).some(({ approximate }) => approximate);

/** Whether the dash before `term` may as well join its number to the one before it: `2-9`, `3lb-1oz`. */
export function mayJoin(before: Term, term: Term): boolean {
  if (term.dash === 'none' || before.parts instanceof MemberError || term.parts instanceof MemberError)
    return false;
  const [last, next] = [before.parts.at(-1), term.parts[0]];
  if (!last || !next || term.parts.length !== 1) return false;
  const open =
    last.unit === null ||
    last.unit.kind === 'lb' ||
    last.unit.kind === 'kg' ||
    last.unit.kind === 'some-pound';
  return open && (term.dash === 'tight' || next.unit === null);
}

/** `before` and `term` read as one weight whose numbers a dash joins. */
export function joined(before: Term, term: Term): Term {
  const [left, right] = [before.parts, term.parts];
  if (left instanceof MemberError || right instanceof MemberError) return before;
  return { ...before, parts: [...left, ...right.map((part) => ({ ...part, joiner: 'dash' as const }))] };
}
