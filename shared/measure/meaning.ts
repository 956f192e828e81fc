/** What one number of a weight can mean: every reading that a careful person could give it. */
import { type NumberReading, readNumber } from './number.ts';
import { add, below, exactText, type Ratio, ratio, times } from './ratio.ts';
import type { Numeral } from './terms.ts';
import { SYSTEM, type UnitWord, WHOLE_NANOGRAMS } from './unit-words.ts';
import type { DecimalMark, Units, WeightUnit } from './units.ts';

/** The doubts that a text can leave open, the most telling first. */
export const DOUBTS = ['units', 'decimals', 'mark', 'size', 'over', 'pound', 'join'] as const;

/** How a meaning settles each doubt; two meanings that settle one differently don't go into one sum. */
export type Settled = Readonly<Partial<Record<(typeof DOUBTS)[number], string>>>;

/** One thing that a term, or a sum of terms, can mean. */
export interface Meaning {
  readonly nanograms: Ratio;
  /** Written so that it can be read in no other way; a function, since few are ever shown. */
  readonly text: () => string;
  readonly form: 'lb' | 'lb-oz' | 'kg' | 'g';
  /** Null for a pan, which goes with both. */
  readonly system: 'metric' | 'pounds' | null;
  readonly settled: Settled;
}

/** What the meaning of a bare number depends on. */
export interface Setting {
  readonly units: Units | null;
  readonly decimals: 'decimal' | 'ounces' | null;
  readonly decimalMark: DecimalMark;
  /** The units written in the other terms, before this one and after it. */
  readonly before: ReadonlySet<UnitWord['kind']>;
  readonly after: ReadonlySet<UnitWord['kind']>;
}

const FORM = { lb: 'lb', oz: 'lb-oz', kg: 'kg', g: 'g' } as const;
/** `8`, `05`, `10`: decimals that a scale showing pounds and ounces could have meant as ounces. */
const MAYBE_OUNCES = /^(?:[1-9]|0[1-9]|1[0-5])$/;

/** So much of one unit: 2.9 lb. */
export const weightOf = (value: Ratio, unit: WeightUnit, mark: DecimalMark, settled: Settled): Meaning => ({
  nanograms: times(value, WHOLE_NANOGRAMS[unit]),
  text: () => `${exactText(value, mark)} ${unit}`,
  form: FORM[unit],
  system: SYSTEM[unit],
  settled,
});

/** Pounds and ounces, as typed; ounces that make a pound or more are written as ounces alone (`49 oz`). */
export function poundsAndOunces(pounds: bigint, ounces: Ratio, mark: DecimalMark, settled: Settled): Meaning {
  const all = weightOf(add(ratio(pounds * 16n), ounces), 'oz', mark, settled);
  if (pounds === 0n || !below(ounces, 16n)) return all;
  return { ...all, text: () => `${pounds} lb ${exactText(ounces, mark)} oz` };
}

/** The readings of a number; `either`: both marks may part thousands, since nobody weighs milligrams. */
export function numbers(
  { digits, fraction }: Numeral,
  unit: WeightUnit | null,
  mark: DecimalMark,
): readonly NumberReading[] {
  if (fraction === null) return readNumber(digits, mark, unit === 'g');
  return [{ value: add(ratio(BigInt(digits || '0')), fraction), decimals: '' }];
}

/**
 * What a number's mark was taken for, as a settled doubt.
 * @example markOf({ value, decimals: '', mark: 'thousands' }) // { mark: 'thousands' }
 */
export const markOf = ({ mark }: NumberReading): Settled => (mark === undefined ? {} : { mark });
/** The one unit that a word stands for, or null if it is a pound that differs from place to place. */
export const unitOf = (word: UnitWord): WeightUnit | null => (word.kind === 'some-pound' ? null : word.kind);

/** A number with its unit: `14.83 lb`, `2 Pfund`. */
export function measured(numeral: Numeral, unit: UnitWord, mark: DecimalMark): readonly Meaning[] {
  return numbers(numeral, unitOf(unit), mark).flatMap((number) =>
    unit.meanings.map((meaning, index) =>
      weightOf(times(number.value, meaning.times), meaning.unit, mark, {
        ...markOf(number),
        ...(unit.meanings.length > 1 && { pound: String(index) }),
      }),
    ),
  );
}

/** A bare number in pounds: `14.83`, and `14.8`, which may be 14 lb 8 oz. */
function bareInPounds(
  numeral: Numeral,
  decimals: Setting['decimals'],
  mark: DecimalMark,
): readonly Meaning[] {
  return numbers(numeral, null, mark).flatMap((number) => {
    const settled = markOf(number);
    if (!MAYBE_OUNCES.test(number.decimals)) return [weightOf(number.value, 'lb', mark, settled)];
    const pounds = number.value.n / number.value.d;
    const both = {
      decimal: weightOf(number.value, 'lb', mark, { ...settled, decimals: 'decimal' }),
      ounces: poundsAndOunces(pounds, ratio(BigInt(number.decimals)), mark, {
        ...settled,
        decimals: 'ounces',
      }),
    };
    return decimals === null ? [both.decimal, both.ounces] : [both[decimals]];
  });
}

/** A bare number in kilos; from 100 up it may be grams. */
export function bareInKilos(numeral: Numeral, mark: DecimalMark): readonly Meaning[] {
  return numbers(numeral, null, mark).flatMap((number) => {
    const settled = markOf(number);
    if (below(number.value, 100n)) return [weightOf(number.value, 'kg', mark, settled)];
    return (['g', 'kg'] as const).map((size) => weightOf(number.value, size, mark, { ...settled, size }));
  });
}

/** `meanings`, with more doubts settled. */
export const settling = (meanings: readonly Meaning[], more: Settled): readonly Meaning[] =>
  meanings.map((meaning) => ({ ...meaning, settled: { ...meaning.settled, ...more } }));

/**
 * Pounds for who thinks in pounds, kilos for who thinks in kilos, both for who never said.
 * @example inOwnUnits({ ...setting, units: 'kg' }, pounds, kilos) // what `kilos` gives
 */
export function inOwnUnits(
  { units, decimalMark }: Setting,
  pounds: () => readonly Meaning[],
  kilos: () => readonly Meaning[],
): readonly Meaning[] {
  if (units !== null) return units === 'lb' ? pounds() : kilos();
  const both = [settling(pounds(), { units: 'lb' }), settling(kilos(), { units: 'kg' })];
  return (decimalMark === ',' ? both.reverse() : both).flat();
}

/**
 * A number without a unit: what it means depends on what is written beside it, and on who wrote it.
 * @example bareNumber(of `14.8`, { ...setting, units: 'lb', decimals: null }) // 14.8 lb, 14 lb 8 oz
 */
export function bareNumber(numeral: Numeral, setting: Setting): readonly Meaning[] {
  const { before, after, decimals, decimalMark: mark } = setting;
  const beside = (kind: UnitWord['kind']) => before.has(kind) || after.has(kind);
  const taken = (unit: WeightUnit) =>
    settling(measured(numeral, { kind: unit, meanings: [{ times: 1n, unit }] }, mark), { join: unit });
  const kilos = () => bareInKilos(numeral, mark);
  if (before.size + after.size === 0)
    return inOwnUnits(setting, () => bareInPounds(numeral, decimals, mark), kilos);
  if (beside('some-pound')) return [];
  if (beside('oz')) return [...taken('oz'), ...taken('lb')];
  if (beside('g')) return [...taken('g'), ...taken('kg')];
  if (beside('kg')) return kilos();
  if (after.has('lb')) return taken('lb');
  const small = numeral.fraction === null && /^(?:\d|1[0-5])$/.test(numeral.digits);
  return small ? [...taken('lb'), ...taken('oz')] : bareInPounds(numeral, decimals, mark);
}
