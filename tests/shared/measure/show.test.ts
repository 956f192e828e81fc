import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isCurrency } from '../../../shared/measure/currency.ts';
import { addDays, type CalendarDay } from '../../../shared/measure/day.ts';
import { type Currency, type PriceBasis, readPrice } from '../../../shared/measure/money.ts';
import { readDay } from '../../../shared/measure/read-day.ts';
import { decimalMark, type Form, shows } from '../../../shared/measure/show.ts';
import { NANOGRAMS, type Nanograms } from '../../../shared/measure/units.ts';
import { readWeight, type WeightReader } from '../../../shared/measure/weight.ts';
import { READERS } from './reading.ts';

const us = shows({ locale: 'en-US', units: 'lb' });
const de = shows({ locale: 'de', units: 'kg' });
const USD = 'USD' as Currency;
const EUR = 'EUR' as Currency;
const ng = (value: number): Nanograms => value as Nanograms;
const oz = (value: number): Nanograms => ng(Math.round(value * NANOGRAMS.oz));
const g = (value: number): Nanograms => ng(Math.round(value * NANOGRAMS.g));

/** Discord's languages, and locales with digits, marks and calendars of their own; some that are none. */
const LOCALES = (
  'en-US en-GB en-CA en-ZA en-AU en-IN de de-AT de-CH es es-ES es-419 es-MX es-AR fr fr-CH pt-BR it nl pl ru uk tr sv-SE ' +
  'no da fi cs hu el hi th ja ko zh-CN zh-TW vi ro bg hr lt id ar ar-EG fa he bn mr th-TH-u-ca-buddhist de-DE-1996 ' +
  'xx en_US not-a-locale-at-all !!'
).split(' ');
const UNITS = ['lb', 'kg'] as const;
const WEIGHT_FORMS = ['lb', 'lb-oz', 'kg', 'g', 'oz'] as const;

describe('weights', () => {
  test.each([
    [0, '0 oz', '0 g'],
    [oz(0.04), '0 oz', '1 g'],
    [oz(9.4), '9.4 oz', '266 g'],
    [oz(15.94), '15.9 oz', '452 g'],
    [oz(15.96), '1 lb', '452 g'],
    [oz(16), '1 lb', '454 g'],
    [oz(31.97), '2 lb', '906 g'],
    [oz(41), '2 lb 9 oz', '1.16 kg'],
    [oz(41.4), '2 lb 9.4 oz', '1.17 kg'],
    [oz(48), '3 lb', '1.36 kg'],
    [g(999.4), '2 lb 3.3 oz', '999 g'],
    [g(999.6), '2 lb 3.3 oz', '1.00 kg'],
    [g(1234), '2 lb 11.5 oz', '1.23 kg'],
    [g(1_000_000), '2204 lb 10 oz', '1000.00 kg'],
  ])('%i ng is %s to who thinks in pounds, %s to who thinks in kilos', (weight, pounds, kilos) => {
    expect(us.weight(ng(weight))).toBe(pounds);
    expect(shows({ locale: 'en-GB', units: 'kg' }).weight(ng(weight))).toBe(kilos);
  });

  test.each([
    ['lb', '14.83 lb', '0.00 lb'],
    ['lb-oz', '14 lb 13.3 oz', '0 oz'],
    ['kg', '6.73 kg', '0.00 kg'],
    ['g', '6727 g', '0 g'],
    ['oz', '237.3 oz', '0.0 oz'],
  ] as const)('in the form %s', (form, some, none) => {
    expect(us.weightIn(ng(6_726_774_847_100), form)).toBe(some);
    expect(us.weightIn(ng(0), form)).toBe(none);
  });

  test('the mark is the locale’s, and nothing is grouped', () => {
    expect(de.weightIn(ng(6_726_774_847_100), 'lb')).toBe('14,83 lb');
    expect(de.weight(g(1170))).toBe('1,17 kg');
    expect(de.weightIn(g(1_234_567), 'g')).toBe('1234567 g');
  });

  test('an echo has both systems', () => {
    expect(us.echo(oz(41.4))).toBe('2 lb 9.4 oz (2.59 lb, 1.17 kg)');
    expect(us.echo(oz(9.4))).toBe('9.4 oz (0.59 lb, 266 g)');
    expect(de.echo(g(1170))).toBe('1,17 kg (2 lb 9,3 oz)');
  });

  test('what is missing is printed below zero', () => {
    expect(us.weight(oz(-17.5) as Nanograms)).toBe('-1 lb 1.5 oz');
    expect(de.weight(g(-300))).toBe('-300 g');
  });
});

describe('other figures', () => {
  test.each([
    [0.1742, '17.4 %', '17,4 %'],
    [0, '0.0 %', '0,0 %'],
    [-0.0001, '0.0 %', '0,0 %'],
    [1, '100.0 %', '100,0 %'],
    [-0.025, '-2.5 %', '-2,5 %'],
    [12.3456, '1234.6 %', '1234,6 %'],
  ])('the share %d', (fraction, english, german) => {
    expect(us.share(fraction)).toBe(english);
    expect(de.share(fraction)).toBe(german);
  });

  test('factors and counts', () => {
    expect([us.oneDecimal(2.14), de.oneDecimal(2.05), us.oneDecimal(-0.04)]).toEqual(['2.1', '2,1', '0.0']);
    expect([us.count(12), us.count(1234567), de.count(1234)]).toEqual(['12', '1234567', '1234']);
  });

  test('money is rounded half up to the digits of its currency', () => {
    const money = { numerator: 35_615n, denominator: 1000n };
    expect(us.money({ ...money, currency: USD })).toBe('$35.62');
    expect(de.money({ ...money, currency: EUR })).toBe('35,62 €');
    expect(us.money({ ...money, currency: 'JPY' as Currency })).toBe('¥36');
    expect(us.money({ ...money, currency: 'KWD' as Currency })).toBe('KWD 35.615');
    expect(us.money({ ...money, numerator: -3205n, currency: USD })).toBe('-$3.21');
    expect(us.money({ numerator: 1_234_567n, denominator: 1n, currency: USD })).toBe('$1234567.00');
  });

  test('a sign is printed only where it means one currency', () => {
    const canadian = shows({ locale: 'en-CA', units: 'kg', currency: 'CAD' as Currency });
    const one = { numerator: 5n, denominator: 1n };
    expect(canadian.money({ ...one, currency: 'CAD' as Currency })).toBe('$5.00');
    expect(canadian.money({ ...one, currency: USD })).toBe('USD 5.00');
    expect(canadian.money({ ...one, currency: EUR })).toBe('€5.00');
  });

  test.each([
    ['$4.99/lb', '$4.99/lb', '4,99 $/lb'],
    ['4,99 €/kg', '€4.99/kg', '4,99 €/kg'],
    ['77.96 in all', '$77.96 in all', '77,96 $ insgesamt'],
    ['.5/oz', '$0.50/oz', '0,50 $/oz'],
    ['4.9950/lb', '$4.9950/lb', '4,9950 $/lb'],
    ['1.29/100g', '$1.29/100 g', '1,29 $/100 g'],
    ['JPY 450/kg', '¥450/kg', '450 ¥/kg'],
  ])('the price %s', (text, english, german) => {
    const price = readPrice(text, { option: 'price', units: 'lb', currency: USD });
    expect(us.price(price)).toBe(english);
    expect(de.price(price)).toBe(german);
  });

  test.each([
    ['en-US', 'Jul 4, 2026'],
    ['en-GB', '4 Jul 2026'],
    ['de', '4. Juli 2026'],
    ['es', '4 jul 2026'],
    ['ja', '2026-07-04'],
    ['nonsense!', 'Jul 4, 2026'],
  ])('a day in %s is %s', (locale, text) => {
    expect(shows({ locale, units: 'lb' }).day('2026-07-04' as CalendarDay)).toBe(text);
  });

  test('a locale that is none is en-US', () => {
    for (const locale of ['xx', '!!', '', 'en_US']) expect(decimalMark(locale)).toBe('.');
    expect([decimalMark('de'), decimalMark('pt-BR'), decimalMark('es-MX'), decimalMark('de-CH')]).toEqual([
      ',',
      ',',
      '.',
      '.',
    ]);
  });
});

describe('what is printed reads back to the same print', () => {
  const anyForm: fc.Arbitrary<Form> = fc.record({
    locale: fc.constantFrom(...LOCALES),
    units: fc.constantFrom(...UNITS),
  });
  /** Up to 999 kg, so that rounding up does not leave what can be read; small ones as often as large ones. */
  const anyWeight = fc.oneof(
    fc.integer({ min: 0, max: 999 * NANOGRAMS.kg }),
    fc.integer({ min: 0, max: 2 * NANOGRAMS.kg }),
    fc.integer({ min: 0, max: 20_000 }).map((tenths) => Math.round((tenths * NANOGRAMS.oz) / 10)),
    fc.constantFrom(g(1234), g(999.6), g(1000), g(100), oz(15.96), Math.round(14.1 * NANOGRAMS.lb), oz(226)),
  );
  const anyReader = fc.constantFrom(...Object.values(READERS));
  const reading = (reader: WeightReader, locale: string): WeightReader => ({
    ...reader,
    decimalMark: decimalMark(locale),
  });

  test('weights: in every form, every locale, for every member', () => {
    fc.assert(
      fc.property(anyForm, anyWeight, anyReader, (form, weight, reader) => {
        const show = shows(form);
        const back = (text: string) => readWeight(text, reading(reader, form.locale)).weight;
        for (const as of WEIGHT_FORMS) {
          const text = show.weightIn(ng(weight), as);
          expect(show.weightIn(back(text), as)).toBe(text);
        }
        const text = show.weight(ng(weight));
        expect(show.weight(back(text))).toBe(text);
        expect(show.weight(back(show.echo(ng(weight))))).toBe(text);
      }),
      { numRuns: 3000 },
    );
  });

  const currencies = Intl.supportedValuesOf('currency').filter(isCurrency);
  const anyBasis = fc.constantFrom<PriceBasis>('lb', 'oz', 'kg', '100g', 'all');
  const anyAmount = fc.oneof(
    fc.integer({ min: 0, max: 1_000_000 * 10_000 }),
    fc.integer({ min: 0, max: 100_000 }).map((cents) => cents * 100),
    fc.integer({ min: 0, max: 2000 }).map((whole) => whole * 10_000),
  );

  test('prices: in every locale, in every currency, in any club', () => {
    const anyCurrency = fc.constantFrom(...currencies);
    fc.assert(
      fc.property(
        anyForm,
        anyAmount,
        anyBasis,
        anyCurrency,
        anyCurrency,
        fc.boolean(),
        (form, amount, basis, own, other, home) => {
          const show = shows({ ...form, currency: own });
          const text = show.price({ amount, basis, currency: home ? own : other, text: '' });
          const back = readPrice(text, { option: 'price', units: form.units, currency: own });
          expect(back).toMatchObject({ amount, basis, currency: home ? own : other });
          expect(show.price(back)).toBe(text);
        },
      ),
      { numRuns: 3000 },
    );
  });

  test('prices: in every currency, printed with its own sign', () => {
    for (const currency of currencies) {
      for (const locale of ['en-US', 'de', 'es', 'ja', 'fr']) {
        const text = shows({ locale, units: 'kg' }).price({
          amount: 49_900,
          basis: 'kg',
          currency,
          text: '',
        });
        expect(readPrice(text, { option: 'price', units: 'kg', currency })).toMatchObject({
          amount: 49_900,
          currency,
        });
      }
    }
  });

  test('days: in every locale', () => {
    const today = '2026-12-31' as CalendarDay;
    fc.assert(
      fc.property(anyForm, fc.integer({ min: 0, max: 20_000 }), (form, back) => {
        const day = addDays(today, -back);
        const text = shows(form).day(day);
        expect(readDay(text, { option: 'date', today, decimalMark: decimalMark(form.locale) })).toBe(day);
      }),
      { numRuns: 2000 },
    );
  });
});

test('two decimals, halves away from zero', () => {
  const { twoDecimals } = shows({ locale: 'de', units: 'kg' });
  expect([1.6742, 0.5232, 2, -0.125].map(twoDecimals)).toEqual(['1,67', '0,52', '2,00', '-0,13']);
});
