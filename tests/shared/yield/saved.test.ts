/** Reading what was saved of the trimmings. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Ask, MemberError } from '../../../shared/errors.ts';
import type { Currency } from '../../../shared/measure/money.ts';
import type { WeightReader } from '../../../shared/measure/weight.ts';
import { readSaved } from '../../../shared/yield/saved.ts';
import { anyText } from '../../any-text.ts';
import { outcome, READERS } from '../measure/reading.ts';
import { g, lb } from './samples.ts';

const prices = { option: 'saved', units: 'lb', currency: 'USD' as Currency } as const;
const weights: WeightReader = { ...READERS.lb, option: 'saved' };
const read = (text: string, reader = weights) => outcome(() => readSaved(text, reader, prices));

describe('parts', () => {
  test.each([
    ['tallow 1 lb 2 oz @3', [['tallow', lb(1.125), 30_000]]],
    [
      'tallow 1 lb 2 oz @3, grind 12 oz',
      [
        ['tallow', lb(1.125), 30_000],
        ['grind', lb(0.75), null],
      ],
    ],
    [
      'tallow 500 g; stock bones 1.2 kg @ 2.50/kg',
      [
        ['tallow', g(500), null],
        ['stock bones', g(1200), 25_000],
      ],
    ],
    [
      'tallow 500 g\ngrind 1 lb',
      [
        ['tallow', g(500), null],
        ['grind', lb(1), null],
      ],
    ],
    ['frozen point 2 lb 8 oz', [['frozen point', lb(2.5), null]]],
    ['tidbits 0 lb 12 oz @2.49', [['tidbits', lb(0.75), 24_900]]],
    ['tallow ½ lb', [['tallow', lb(0.5), null]]],
    ['tallow about 1 lb', [['tallow', lb(1), null]]],
  ])('%j', (text, parts) => {
    const found = read(text);
    if (found instanceof Error) throw found;
    expect(found.map(({ name, weight, price }) => [name, weight, price?.amount ?? null])).toEqual(parts);
  });

  test('a comma between digits is a decimal mark', () => {
    const found = read('Talg 0,5 kg, Hack 1,25 kg', { ...READERS['kg,'], option: 'saved' });
    if (found instanceof Error) throw found;
    expect(found.map(({ weight }) => weight)).toEqual([g(500), g(1250)]);
  });

  test.each([
    ['', 'saved-unreadable'],
    ['tallow', 'saved-unreadable'],
    ['1 lb', 'saved-unreadable'],
    ['tallow 1 lb,', 'saved-unreadable'],
    ['tallow 1 stone', 'weight-other-unit'],
    ['tallow 1 lb @3/stone', 'price-basis'],
    ['tallow 1 lb @cheap', 'price-unreadable'],
    [Array.from({ length: 9 }, () => 'tallow 1 oz').join(', '), 'saved-unreadable'],
    ['`@everyone` 1 lb', 'saved-unreadable'],
  ])('%j is refused: %s', (text, code) => {
    const found = read(text);
    expect(found instanceof MemberError && found.code).toBe(code);
  });
});

describe('a part that can be read in two ways', () => {
  test.each([
    ['tallow 1.8', ['tallow 1.8 lb', 'tallow 1 lb 8 oz']],
    ['grind 12 oz, tallow 1.8 @3', ['grind 12 oz, tallow 1.8 lb @3', 'grind 12 oz, tallow 1 lb 8 oz @3']],
    ['tallow 1.8, grind 12 oz', ['tallow 1.8 lb, grind 12 oz', 'tallow 1 lb 8 oz, grind 12 oz']],
    ['tallow 1 lb, suet 1.8', ['tallow 1 lb, suet 1.8 lb', 'tallow 1 lb, suet 1 lb 8 oz']],
  ])('%j is asked, and each answer is the whole text again', (text, whole) => {
    const found = read(text);
    if (!(found instanceof Ask)) throw new Error('not asked');
    expect([...new Set(found.readings.map(({ set }) => set.saved))]).toEqual(whole);
    for (const taken of whole) expect(read(taken)).not.toBeInstanceOf(Error);
  });
});

test('any text is parts, a refusal or a question', () => {
  fc.assert(
    fc.property(fc.oneof(anyText(), fc.stringMatching(/^[a-z ,;@.\d]{0,40}$/)), (text) => {
      read(text);
    }),
  );
});
