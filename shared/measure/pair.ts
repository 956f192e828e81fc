/** What a term of a weight can mean, where two numbers stand side by side or one stands alone. */
import { MemberError } from '../errors.ts';
import {
  bareInKilos,
  bareNumber,
  inOwnUnits,
  type Meaning,
  markOf,
  measured,
  numbers,
  poundsAndOunces,
  type Setting,
  type Settled,
  settling,
  unitOf,
  weightOf,
} from './meaning.ts';
import { add, below, type Ratio, ratio } from './ratio.ts';
import type { Numeral, Part, Term, Typed } from './terms.ts';
import { SYSTEM, type UnitMeaning, type UnitWord } from './unit-words.ts';
import type { DecimalMark } from './units.ts';

/** `2 lb 9.4 oz`, `6 kg 720 g`; `2 lb 17 oz` may be a slip for 2 lb 1.7 oz. */
function compound(large: Numeral, small: Numeral, unit: UnitMeaning, mark: DecimalMark): readonly Meaning[] {
  const inPounds = unit.unit === 'lb';
  const of = inPounds ? 16n : unit.unit === 'kg' ? 1000n : unit.times;
  const meanings: Meaning[] = [];
  for (const whole of numbers(large, unit.unit, mark)) {
    if (whole.value.n % whole.value.d !== 0n) continue;
    const larger = whole.value.n / whole.value.d;
    for (const part of numbers(small, inPounds ? 'oz' : 'g', mark)) {
      const take = (rest: Ratio, more: Settled) => {
        const settled = { ...markOf(whole), ...markOf(part), ...more };
        if (inPounds) meanings.push(poundsAndOunces(larger, rest, mark, settled));
        else meanings.push(weightOf(add(ratio(larger * of), rest), 'g', mark, settled));
      };
      const slip = { n: part.value.n, d: part.value.d * 10n };
      if (below(part.value, of)) take(part.value, {});
      else if (below(slip, of)) {
        take(part.value, { over: 'sum' });
        take(slip, { over: 'slip' });
      }
    }
  }
  return meanings;
}

const POUNDS: UnitMeaning = { times: 1n, unit: 'lb' };
const KILOS: UnitMeaning = { times: 1n, unit: 'kg' };
const OUNCES: UnitMeaning = { times: 1n, unit: 'oz' };
const GRAMS: UnitMeaning = { times: 1n, unit: 'g' };
const word = (meaning: UnitMeaning): UnitWord => ({ kind: meaning.unit, meanings: [meaning] });
const WHOLE = /^\d+$/;

/** Each list is a way of its own to join two numbers. */
const ways = (...all: readonly (readonly Meaning[])[]): readonly Meaning[] =>
  all.flatMap((meanings, index) => settling(meanings, { join: String(index) }));

/** The second number has no unit: `2 lb 9`, `14 lb 3/4`, `6 kg 720`, and `6 kg 7`, which may be 6.7 kg. */
function bareRest(
  large: Numeral,
  kind: UnitWord['kind'],
  small: Numeral,
  mark: DecimalMark,
): readonly Meaning[] {
  const { digits, fraction } = small;
  if (kind === 'lb') {
    const ounces = compound(large, small, POUNDS, mark);
    if (fraction === null) return /^\d/.test(digits) ? ounces : [];
    const mixed = digits === '' && large.fraction === null && WHOLE.test(large.digits);
    return mixed ? ways(measured({ digits: large.digits, fraction }, word(POUNDS), mark), ounces) : ounces;
  }
  if (kind !== 'kg' || fraction !== null || !WHOLE.test(digits) || digits.length > 3) return [];
  const grams = compound(large, small, KILOS, mark);
  if (digits.length === 3) return grams;
  const decimals = { digits: `${large.digits}${mark}${digits}`, fraction: null };
  return ways(WHOLE.test(large.digits) ? measured(decimals, word(KILOS), mark) : [], grams);
}

/** Two numbers with at most one unit, at the end: `2 9.4`, `2-9`, `14 8 lb`, `6 720 g`. */
function sideBySide(large: Numeral, small: Part, setting: Setting): readonly Meaning[] {
  const { decimalMark: mark, units } = setting;
  const { digits, fraction } = small.numeral;
  if (large.fraction !== null || !WHOLE.test(large.digits)) return [];
  const kind = small.unit?.kind ?? null;
  if (fraction !== null) {
    if (digits !== '' || fraction.n >= fraction.d) return [];
    const mixed = { digits: large.digits, fraction };
    return small.unit === null ? bareNumber(mixed, setting) : measured(mixed, small.unit, mark);
  }
  const run = { digits: large.digits + digits, fraction: null };
  const pointed = { digits: `${large.digits}${mark}${digits}`, fraction: null };
  const one = WHOLE.test(digits) && digits.length !== 3 ? pointed : run;
  const inOunces = compound(large, small.numeral, POUNDS, mark).filter(
    ({ settled }) => settled.over === undefined,
  );
  const pounds = () => ways(inOunces, measured(one, word(POUNDS), mark));
  if (kind === 'lb') return pounds();
  if (kind === 'kg') return measured(one, word(KILOS), mark);
  if (kind === 'oz') return ways(inOunces, measured(small.joiner === 'dash' ? one : run, word(OUNCES), mark));
  if (kind === 'g')
    return ways(compound(large, small.numeral, KILOS, mark), measured(run, word(GRAMS), mark));
  if (kind !== null) return [];
  const kilos = () => ways(one === run ? bareInKilos(run, mark) : measured(one, word(KILOS), mark));
  return inOwnUnits(setting, pounds, () => (units === null ? kilos() : ways(kilos(), inOunces)));
}

/** Two numbers: with both units, or as `2:9.4`, or with fewer. */
function pair(large: Part, small: Part, setting: Setting): readonly Meaning[] {
  const mark = setting.decimalMark;
  const [unit, rest] = [large.unit, small.unit];
  if (small.joiner === 'colon') {
    const asOunces = WHOLE.test(large.numeral.digits) && (rest === null || rest.kind === 'oz');
    return asOunces ? compound(large.numeral, small.numeral, POUNDS, mark) : [];
  }
  if (unit === null) return sideBySide(large.numeral, small, setting);
  if (rest === null) return bareRest(large.numeral, unit.kind, small.numeral, mark);
  if (unit.kind === 'lb' && rest.kind === 'oz') return compound(large.numeral, small.numeral, POUNDS, mark);
  if (rest.kind !== 'g' || (unit.kind !== 'kg' && unit.kind !== 'some-pound')) return [];
  return unit.meanings
    .filter((meaning) => SYSTEM[meaning.unit] === 'metric')
    .flatMap((meaning, index, all) =>
      settling(
        compound(large.numeral, small.numeral, meaning, mark),
        all.length > 1 ? { pound: String(index) } : {},
      ),
    );
}

const systemOf = (unit: UnitWord | null): string | null =>
  unit && unitOf(unit) ? SYSTEM[unitOf(unit) ?? 'g'] : null;

/** Everything that `term` can mean, the likeliest first, or why it is no weight. Throws nothing. */
export function meaningsOf(term: Term, setting: Setting, typed: Typed): readonly Meaning[] | MemberError {
  if (term.parts instanceof MemberError) return term.parts;
  const [first, second] = term.parts;
  if (!first) return new MemberError('weight-unreadable', { ...typed, part: term.text });
  const { numeral, unit } = first;
  const meanings = second
    ? pair(first, second, setting)
    : unit === null
      ? bareNumber(numeral, setting)
      : measured(numeral, unit, setting.decimalMark);
  if (meanings.length > 0) return meanings;
  const systems = new Set(term.parts.map((part) => systemOf(part.unit)).filter((system) => system !== null));
  if (systems.size > 1) return new MemberError('weight-mixed', typed);
  const odd = term.parts.find((part) => numbers(part.numeral, null, setting.decimalMark).length === 0);
  if (odd) return new MemberError('weight-number', { ...typed, part: odd.numeral.digits });
  return new MemberError('weight-unreadable', { ...typed, part: term.text });
}
