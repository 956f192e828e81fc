/** What the tests of reading share: readers, and what became of a text. */
import { Ask, MemberError } from '../../../shared/errors.ts';
import { NANOGRAMS, type Nanograms } from '../../../shared/measure/units.ts';
import { readWeight, type Weight, type WeightReader } from '../../../shared/measure/weight.ts';

const PANS: ReadonlyMap<string, Nanograms> = new Map([
  ['blue pan', (300 * NANOGRAMS.g) as Nanograms],
  ['tray 2', (2 * NANOGRAMS.lb) as Nanograms],
  ['9x13 pan', (700 * NANOGRAMS.g) as Nanograms],
]);

const base: WeightReader = { option: 'trim', units: 'lb', decimals: null, decimalMark: '.', pans: PANS };

/** Members of several habits, by a short name. */
export const READERS = {
  lb: base,
  decimal: { ...base, decimals: 'decimal' },
  ounces: { ...base, decimals: 'ounces' },
  bought: { ...base, option: 'bought' },
  kg: { ...base, units: 'kg' },
  new: { ...base, units: null },
  'lb,': { ...base, decimalMark: ',' },
  'kg,': { ...base, units: 'kg', decimalMark: ',' },
  'new,': { ...base, units: null, decimalMark: ',' },
} as const satisfies Record<string, WeightReader>;

export type ReaderName = keyof typeof READERS;

/** What came of reading: a result, or the question or the refusal that it ended with. Anything else is thrown on. */
export function outcome<Result>(read: () => Result): Result | Ask | MemberError {
  try {
    return read();
  } catch (error) {
    if (error instanceof Ask || error instanceof MemberError) return error;
    throw error;
  }
}

export const weighed = (text: string, reader: WeightReader): Weight | Ask | MemberError =>
  outcome(() => readWeight(text, reader));

/** The readings that are ways to understand the text, without the ones that say so for good. */
export const waysOf = (ask: Ask, option: string): readonly string[] =>
  ask.readings.flatMap(({ label, set }) => {
    const text = set[option];
    return label.code.startsWith('always') || typeof text !== 'string' ? [] : [text];
  });
