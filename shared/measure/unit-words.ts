/** The words that stand for units of weight, in the languages members type. */
import { NANOGRAMS, type WeightUnit } from './units.ts';

/** What one unit is: so many of a unit we write. A metric pound is 500 g. */
export interface UnitMeaning {
  readonly times: bigint;
  readonly unit: WeightUnit;
}

/** A unit word: one of ours, or a pound that means different weights in different places. */
export interface UnitWord {
  readonly kind: WeightUnit | 'some-pound';
  /** What it can mean, the likeliest first; more than one is asked. */
  readonly meanings: readonly UnitMeaning[];
}

/** {@link NANOGRAMS} for exact arithmetic. */
export const WHOLE_NANOGRAMS: Readonly<Record<WeightUnit, bigint>> = {
  g: BigInt(NANOGRAMS.g),
  kg: BigInt(NANOGRAMS.kg),
  oz: BigInt(NANOGRAMS.oz),
  lb: BigInt(NANOGRAMS.lb),
};

/** Which system a unit belongs to: one weight is never written in both. */
export const SYSTEM: Readonly<Record<WeightUnit, 'metric' | 'pounds'>> = {
  g: 'metric',
  kg: 'metric',
  oz: 'pounds',
  lb: 'pounds',
};

const own = (unit: WeightUnit): UnitWord => ({ kind: unit, meanings: [{ times: 1n, unit }] });
const POUND: UnitMeaning = { times: 1n, unit: 'lb' };
const METRIC_POUND: UnitMeaning = { times: 500n, unit: 'g' };
const CASTILIAN_POUND: UnitMeaning = { times: 460n, unit: 'g' };
const somePound = (...meanings: readonly UnitMeaning[]): UnitWord => ({ kind: 'some-pound', meanings });

const SPELLINGS: readonly (readonly [UnitWord, string])[] = [
  [own('lb'), '# ℔ lb lbs pound pounds'],
  [own('oz'), 'oz ozs ounce ounces unze unzen onza onzas once onces'],
  [own('kg'), 'kg kgs kilo kilos kilogram kilograms kilogramm kilogramo kilogramos kilogramme kilogrammes'],
  [own('g'), 'g gs gr grs gm gms gram grams gramm gramo gramos gramme grammes'],
  [somePound(METRIC_POUND, POUND), 'pf pfd pfund livre livres'],
  [somePound(POUND, METRIC_POUND, CASTILIAN_POUND), 'libra libras'],
];

/** Unit words, lower case, without a full stop. */
export const UNIT_WORDS: ReadonlyMap<string, UnitWord> = new Map(
  SPELLINGS.flatMap(([unit, words]) => words.split(' ').map((word) => [word, unit] as const)),
);

/** Units that people do write, and that no weight is taken in here: the refusal names them. */
export const OTHER_UNITS: ReadonlySet<string> = new Set(
  (
    'st stone stones t ton tons tonne tonnes tonnen tonelada toneladas mg milligram milligrams mcg µg ug dg dag ' +
    'dkg deka decagram hg cwt hundredweight quintal zentner ct carat grain grains dram drams l ltr liter liters ' +
    'litre litres litro litros ml cl dl cc fl floz cup cups tasse tassen taza tazas pint pints pt quart quarts ' +
    'qt gal gallon gallons tbsp tsp tablespoon teaspoon in inch inches cm mm ft m catty jin kin'
  ).split(' '),
);
