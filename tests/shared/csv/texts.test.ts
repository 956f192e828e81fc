import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { defuse, takeBack } from '../../../shared/csv/defuse.ts';
import { priceText, weightText } from '../../../shared/csv/neutral.ts';
import { readStatus, statusText } from '../../../shared/csv/status.ts';
import type { Currency } from '../../../shared/measure/money.ts';
import type { Nanograms } from '../../../shared/measure/units.ts';
import { readWeight } from '../../../shared/measure/weight.ts';
import { g, lb } from '../yield/samples.ts';

describe('texts that a spreadsheet would run', () => {
  test.each([
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-lean', "'-lean"],
    ['@home', "'@home"],
    ['\tx', "'\tx"],
    ['\rx', "'\rx"],
    ['＝1', "'＝1"],
    ["'=1", "''=1"],
    ['100000000000000042', "'100000000000000042"],
    ["it's", "it's"],
    ["'quoted'", "'quoted'"],
    ['1=1', '1=1'],
    ['42', '42'],
    ['', ''],
  ])('%j is written %j', (text, written) => {
    expect(defuse(text)).toBe(written);
    expect(takeBack(written)).toBe(text);
  });

  it('any text comes back', () => {
    const texts = fc.oneof(
      fc.string(),
      fc.stringMatching(/^'*[=+@-].*$/),
      fc.stringMatching(/^'*\d{14,20}$/),
    );
    fc.assert(fc.property(texts, (text) => takeBack(defuse(text)) === text));
  });
});

describe('weights', () => {
  test.each([
    ['2 lb 9.4 oz', lb(2.5875), false, '2 lb 9.4 oz'],
    ['2:9.4', lb(2.5875), false, '2:9.4'],
    ['14,8 kg', g(14_800), false, '14,8 kg'],
    ['about 14.5 lb', lb(14.5), true, 'about 14.5 lb'],
    ['8.41 lb + 7.96 lb', lb(16.37), false, '8.41 lb + 7.96 lb'],
    // What only its own member's habits, units, pans or mark make clear is written anew.
    ['14.8', lb(14.8), false, '14.80 lb'],
    ['14.8', lb(14.5), false, '14.50 lb'],
    ['1,234 g', g(1234), false, '1234 g'],
    ['1,234 kg', g(1234), false, '1234 g'],
    ['3 lb 2 oz - blue pan', lb(2), false, '2.00 lb'],
    ['6.72', g(6720), false, '6.72 kg'],
    ['+3 lb', lb(3), false, '3.00 lb'],
    [undefined, lb(14.5), true, 'about 14.50 lb'],
    [undefined, 1_234_567_890_123 as Nanograms, false, '1234.567890123 g'],
    [undefined, 1_234_500_000_000 as Nanograms, false, '1234.5 g'],
    [undefined, 1_234_567_000_000 as Nanograms, false, '1234.5670 g'],
  ])('%j is written %#', (typed, weight, approximate, text) => {
    expect(weightText(typed, weight, approximate)).toBe(text);
  });

  it('any is read as it was, by whoever reads it', () => {
    const readers = fc.record({
      option: fc.constant('trim'),
      units: fc.constantFrom('lb' as const, 'kg' as const, null),
      decimals: fc.constantFrom('decimal' as const, 'ounces' as const, null),
      decimalMark: fc.constantFrom('.' as const, ',' as const),
      pans: fc.constant(new Map<string, Nanograms>()),
    });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e14 }), fc.boolean(), readers, (ng, approximate, reader) => {
        const text = weightText(undefined, ng as Nanograms, approximate);
        expect(readWeight(text, reader)).toMatchObject({ weight: ng, approximate });
      }),
    );
  });
});

describe('prices', () => {
  const price = (amount: number, text: string) => ({
    amount,
    basis: 'lb' as const,
    currency: 'USD' as Currency,
    text,
  });
  test.each([
    ['$4.99/lb', 49_900, '$4.99/lb'],
    ['4,99/lb', 49_900, '4,99/lb'],
    ['@ 4.99', 49_900, '4.99/lb'],
    ['@ 4.9/lb', 49_000, '4.90/lb'],
    ['1.599/lb', 15_990, '1.5990/lb'],
    ['x', 50_000, '5/lb'],
  ])('%s is written %#', (typed, amount, text) => {
    expect(priceText(price(amount, typed))).toBe(text);
  });
});

describe('a status', () => {
  const none = { confirmed: false, meant: false, aside: false, why: null };
  test.each([
    ['', none],
    ['confirmed', { ...none, confirmed: true }],
    ['as typed', { ...none, meant: true }],
    ['set aside', { ...none, aside: true }],
    ['set aside: Tare; left in: 2 lb', { ...none, aside: true, why: 'Tare; left in: 2 lb' }],
    ['confirmed; set aside: why', { ...none, confirmed: true, aside: true, why: 'why' }],
  ])('%j reads and is written so', (text, status) => {
    expect(readStatus(text)).toEqual(status);
    expect(statusText(status)).toBe(text);
  });

  test.each([
    ['Confirmed', 'confirmed'],
    ['Bestätigt', 'confirmed'],
    ['tal cual', 'as typed'],
    ['BEISEITEGELEGT: Äpfel ﬁx', 'set aside: Äpfel ﬁx'],
    ['confirmed, set aside', 'confirmed; set aside'],
  ])('%j is %j', (text, same) => {
    expect(statusText(readStatus(text))).toBe(same);
  });

  test.each(['waiting', 'confirmedly', 'set asides', 'confirmed confirmed'])('%j is none', (text) => {
    expect(() => readStatus(text)).toThrow(expect.objectContaining({ code: 'csv-status-unknown' }));
  });
});
