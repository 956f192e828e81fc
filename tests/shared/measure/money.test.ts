import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Ask, MemberError } from '../../../shared/errors.ts';
import { currencyDigits, isCurrency } from '../../../shared/measure/currency.ts';
import {
  addMoney,
  type Currency,
  forWeight,
  inProportion,
  type Money,
  moneyNumber,
  moneyRatio,
  type PriceBasis,
  paid,
  perWeight,
  readPrice,
  roundHalfUp,
  subtractMoney,
} from '../../../shared/measure/money.ts';
import { NANOGRAMS, type Nanograms } from '../../../shared/measure/units.ts';
import { outcome, waysOf } from './reading.ts';

const currency = (code: string): Currency => {
  if (!isCurrency(code)) throw new Error(`${code} is no currency`);
  return code;
};
const reader = (units: 'lb' | 'kg', code: string) => ({ option: 'price', units, currency: currency(code) });

const READERS = {
  us: reader('lb', 'USD'),
  ca: reader('kg', 'CAD'),
  eu: reader('kg', 'EUR'),
  uk: reader('lb', 'GBP'),
  jp: reader('kg', 'JPY'),
  se: reader('kg', 'SEK'),
  pl: reader('kg', 'PLN'),
  al: reader('kg', 'ALL'),
} as const;

type Club = keyof typeof READERS;
const priced = (text: string, club: Club) => outcome(() => readPrice(text, READERS[club]));

const READ: readonly (readonly [string, Club, number, PriceBasis, string])[] = [
  ['4.99/lb', 'us', 49_900, 'lb', 'USD'],
  ['4.99 /lb', 'us', 49_900, 'lb', 'USD'],
  ['4.99 / lb.', 'us', 49_900, 'lb', 'USD'],
  ['4.99 a pound', 'us', 49_900, 'lb', 'USD'],
  ['4.99 per lb', 'us', 49_900, 'lb', 'USD'],
  ['4.99 PER POUND', 'us', 49_900, 'lb', 'USD'],
  ['4.99/#', 'us', 49_900, 'lb', 'USD'],
  ['$4.99/lb', 'us', 49_900, 'lb', 'USD'],
  ['$ 4.99/lb', 'us', 49_900, 'lb', 'USD'],
  ['＄4.99/lb', 'us', 49_900, 'lb', 'USD'],
  ['$4.99 lb', 'us', 49_900, 'lb', 'USD'],
  ['4.99$/lb', 'us', 49_900, 'lb', 'USD'],
  ['$4.99/lb', 'ca', 49_900, 'lb', 'CAD'],
  ['US$4.99/lb', 'ca', 49_900, 'lb', 'USD'],
  ['CA$4.99/lb', 'us', 49_900, 'lb', 'CAD'],
  ['5/lb', 'us', 50_000, 'lb', 'USD'],
  ['.45/oz', 'us', 4_500, 'oz', 'USD'],
  ['.45 an ounce', 'us', 4_500, 'oz', 'USD'],
  ['0.499/oz', 'us', 4_990, 'oz', 'USD'],
  ['4.9950/lb', 'us', 49_950, 'lb', 'USD'],
  ['4,99 €/kg', 'eu', 49_900, 'kg', 'EUR'],
  ['4,99 €/kg', 'us', 49_900, 'kg', 'EUR'],
  ['€4,99/kg', 'eu', 49_900, 'kg', 'EUR'],
  ['4,99 Euro pro kg', 'eu', 49_900, 'kg', 'EUR'],
  ['4,99 das Kilo', 'eu', 49_900, 'kg', 'EUR'],
  ['4,99 el kilo', 'eu', 49_900, 'kg', 'EUR'],
  ['4,99 por kilo', 'eu', 49_900, 'kg', 'EUR'],
  ['4,99 le kilo', 'eu', 49_900, 'kg', 'EUR'],
  ['EUR 12.50/kg', 'us', 125_000, 'kg', 'EUR'],
  ['12.50 eur/kg', 'us', 125_000, 'kg', 'EUR'],
  ['12.50eur/kg', 'us', 125_000, 'kg', 'EUR'],
  ['$4.99 USD/lb', 'us', 49_900, 'lb', 'USD'],
  ['1.29/100g', 'us', 12_900, '100g', 'USD'],
  ['1.29 / 100 g', 'us', 12_900, '100g', 'USD'],
  ['1,29 je 100 g', 'eu', 12_900, '100g', 'EUR'],
  ['4.99/1 kg', 'eu', 49_900, 'kg', 'EUR'],
  ['@ 4.99', 'us', 49_900, 'lb', 'USD'],
  ['@4.99', 'eu', 49_900, 'kg', 'EUR'],
  ['@ $4.99', 'us', 49_900, 'lb', 'USD'],
  ['at 4.99', 'us', 49_900, 'lb', 'USD'],
  ['@4.99/kg', 'us', 49_900, 'kg', 'USD'],
  ['for 4.99/lb', 'us', 49_900, 'lb', 'USD'],
  ['for 77.96', 'us', 779_600, 'all', 'USD'],
  ['for $77.96', 'us', 779_600, 'all', 'USD'],
  ['77.96 for all', 'us', 779_600, 'all', 'USD'],
  ['for all 77.96', 'us', 779_600, 'all', 'USD'],
  ['77.96 in all', 'us', 779_600, 'all', 'USD'],
  ['77.96 total', 'us', 779_600, 'all', 'USD'],
  ['77.96 all', 'us', 779_600, 'all', 'USD'],
  ['total $77.96', 'us', 779_600, 'all', 'USD'],
  ['77,96 € insgesamt', 'eu', 779_600, 'all', 'EUR'],
  ['für 77,96', 'eu', 779_600, 'all', 'EUR'],
  ['77,96 en total', 'eu', 779_600, 'all', 'EUR'],
  ['1,234.50 in all', 'us', 12_345_000, 'all', 'USD'],
  ['1.234,50 in all', 'eu', 12_345_000, 'all', 'EUR'],
  ['1000000 in all', 'us', 10_000_000_000, 'all', 'USD'],
  ['£4.99/lb', 'uk', 49_900, 'lb', 'GBP'],
  ['¥450/kg', 'jp', 4_500_000, 'kg', 'JPY'],
  ['￥450/kg', 'jp', 4_500_000, 'kg', 'JPY'],
  ['45 kr/kg', 'se', 450_000, 'kg', 'SEK'],
  ['kr 45/kg', 'se', 450_000, 'kg', 'SEK'],
  ['12,50 zł/kg', 'pl', 125_000, 'kg', 'PLN'],
  ['450 ALL/kg', 'us', 4_500_000, 'kg', 'ALL'],
  ['ALL 450/kg', 'al', 4_500_000, 'kg', 'ALL'],
  ['450 ALL in all', 'al', 4_500_000, 'all', 'ALL'],
  ['0', 'us', 0, 'all', 'USD'],
  ['0/lb', 'us', 0, 'lb', 'USD'],
];

describe('a price that reads one way only', () => {
  test.each(READ)('%j in club %s', (text, club, amount, basis, code) => {
    expect(readPrice(text, READERS[club])).toEqual({ amount, basis, currency: code, text });
  });
});

const ASKED: readonly (readonly [string, Club, string, readonly string[]])[] = [
  ['4.99', 'us', 'per-weight-or-in-all', ['4.99/lb', '4.99 in all']],
  ['4,99', 'eu', 'per-weight-or-in-all', ['4.99/kg', '4.99 in all']],
  ['$4.99', 'us', 'per-weight-or-in-all', ['USD 4.99/lb', 'USD 4.99 in all']],
  ['4,99 €', 'us', 'per-weight-or-in-all', ['EUR 4.99/lb', 'EUR 4.99 in all']],
  ['450 ALL', 'al', 'per-weight-or-in-all', ['ALL 450/kg', 'ALL 450 in all']],
  ['4.999/lb', 'us', 'which-price', ['4999/lb', '4.9990/lb']],
  ['4,999/kg', 'eu', 'which-price', ['4999/kg', '4.9990/kg']],
  ['1,234 in all', 'us', 'which-price', ['1234 in all', '1.2340 in all']],
  ["1'234 in all", 'us', 'which-price', ['1234 in all', '1.2340 in all']],
  ['1,234', 'us', 'which-price', ['1234/lb', '1234 in all', '1.2340/lb', '1.2340 in all']],
  ['4.99/Pfund', 'eu', 'which-price', ['9.98/kg', '4.99/lb']],
  ['4,99 das Pfund', 'eu', 'which-price', ['9.98/kg', '4.99/lb']],
  ['4.99 la libra', 'eu', 'which-price', ['9.98/kg', '4.99/lb']],
];

describe('a price that two careful people could read differently', () => {
  test.each(ASKED)('%j in club %s asks %s', (text, club, code, ways) => {
    const ask = priced(text, club);
    expect(ask).toBeInstanceOf(Ask);
    if (!(ask instanceof Ask)) return;
    expect(ask.code).toBe(code);
    expect(waysOf(ask, 'price')).toEqual(ways);
  });
});

const REFUSED: readonly (readonly [string, Club, string])[] = [
  ['', 'us', 'price-unreadable'],
  ['cheap', 'us', 'price-unreadable'],
  ['$', 'us', 'price-unreadable'],
  ['1e3', 'us', 'price-unreadable'],
  ['1.2.3/lb', 'us', 'price-unreadable'],
  ['4.99 lb', 'us', 'price-unreadable'],
  ['@ 77.96 in all', 'us', 'price-unreadable'],
  ['4.99 bucks/lb', 'us', 'price-unreadable'],
  ['XQX 4.99/lb', 'us', 'price-unreadable'],
  ['4.99/lb 3', 'us', 'price-unreadable'],
  [`${'9'.repeat(61)}`, 'us', 'price-unreadable'],
  ['-4.99/lb', 'us', 'price-negative'],
  ['−4.99/lb', 'us', 'price-negative'],
  ['$-4.99/lb', 'us', 'price-negative'],
  ['for -3', 'us', 'price-negative'],
  ['4.99999/lb', 'us', 'price-decimals'],
  ['1000000.01 in all', 'us', 'price-too-high'],
  ['$4.99/lb', 'uk', 'price-sign'],
  ['$4.99/kg', 'eu', 'price-sign'],
  ['£4.99/lb', 'us', 'price-sign'],
  ['¥4.99/lb', 'us', 'price-sign'],
  ['45 kr/kg', 'us', 'price-sign'],
  ['$4.99 EUR/lb', 'us', 'price-two-currencies'],
  ['EUR 4.99 USD/lb', 'us', 'price-two-currencies'],
  ['4.99/stone', 'us', 'price-basis'],
  ['4.99 a piece', 'us', 'price-basis'],
  ['4.99/g', 'us', 'price-basis'],
  ['4.99/500 g', 'eu', 'price-basis'],
  ['4.99/100 kg', 'eu', 'price-basis'],
];

describe('a text that is no price', () => {
  test.each(REFUSED)('%j in club %s is refused: %s', (text, club, code) => {
    const refusal = priced(text, club);
    expect(refusal).toBeInstanceOf(MemberError);
    expect(refusal).toMatchObject({ code });
  });
});

const pieces = fc.constantFrom(
  ...'4.99 5 1,234 .45 , . $ € £ kr USD eur all in total for at @ / lb kg oz 100 g a per pro das el Pfund - e'.split(
    ' ',
  ),
  ' ',
  ' ',
);
const anyPrice = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 70 }),
  fc.array(pieces, { maxLength: 8 }).map((all) => all.join('')),
);
const anyClub = fc.constantFrom(...(Object.keys(READERS) as Club[]));

describe('for every text', () => {
  test('reading ends with a price, a question whose readings read, or a refusal', () => {
    fc.assert(
      fc.property(anyPrice, anyClub, (text, club) => {
        const result = priced(text, club);
        if (result instanceof MemberError) return;
        if (result instanceof Ask) {
          const labelled = result.readings.flatMap(({ label }) =>
            label.code === 'price' ? label.values.price : [],
          );
          expect(waysOf(result, 'price').map((way) => readPrice(way, READERS[club]))).toEqual(labelled);
          return;
        }
        expect(Number.isSafeInteger(result.amount)).toBe(true);
        expect(result.amount).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 5000 },
    );
  });
});

describe('money', () => {
  const USD = currency('USD');
  const money = (numerator: bigint, denominator = 1n): Money => ({ numerator, denominator, currency: USD });
  const anyMoney = fc
    .tuple(fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }), fc.bigInt({ min: 1n, max: 10n ** 9n }))
    .map(([numerator, denominator]) => addMoney(money(numerator, denominator), money(0n)));
  const anyWeight = fc.integer({ min: 1, max: 1e15 }).map((value) => value as Nanograms);

  test('adding and taking away again is exact, and in lowest terms', () => {
    fc.assert(
      fc.property(anyMoney, anyMoney, (a, b) => {
        expect(subtractMoney(addMoney(a, b), b)).toEqual(a);
        expect(addMoney(a, b)).toEqual(addMoney(b, a));
      }),
    );
  });

  test('a price per weight, times the weight, is the money again', () => {
    fc.assert(
      fc.property(anyMoney, anyWeight, fc.constantFrom('lb', 'oz', 'kg', 'g'), (all, weight, unit) => {
        const each = perWeight(all, weight, unit);
        expect(each && forWeight(each, weight, unit)).toEqual(all);
      }),
    );
  });

  test('nothing weighs nothing: there is no price per weight, and no share of no money', () => {
    expect(perWeight(money(5n), 0 as Nanograms, 'lb')).toBeNull();
    expect(moneyRatio(money(5n), money(0n))).toBeNull();
  });

  test.each([
    [1n, 200n, 1n],
    [-1n, 200n, -1n],
    [1n, 201n, 0n],
    [35_615n, 1000n, 3562n],
    [1595n, 1000n, 160n],
    [0n, 1n, 0n],
  ])('%s/%s rounds to %s cents', (numerator, denominator, cents) => {
    expect(roundHalfUp(money(numerator, denominator))).toBe(cents);
  });

  test('rounds to the digits of the currency', () => {
    expect(currencyDigits(currency('JPY'))).toBe(0);
    expect(currencyDigits(currency('KWD'))).toBe(3);
    expect(roundHalfUp({ numerator: 3n, denominator: 2n, currency: currency('JPY') })).toBe(2n);
    expect(roundHalfUp({ numerator: 1n, denominator: 2000n, currency: currency('KWD') })).toBe(1n);
  });

  test('two currencies never add up', () => {
    const euros = { ...money(1n), currency: currency('EUR') };
    expect(() => addMoney(money(1n), euros)).toThrow(RangeError);
    expect(() => subtractMoney(money(1n), euros)).toThrow(RangeError);
    expect(() => moneyRatio(money(1n), euros)).toThrow(RangeError);
    expect(() => inProportion(money(1n), money(1n), euros)).toThrow(RangeError);
  });

  test('in proportion it is exact: 20 at 6 is 70/3 at 7; nothing is no price to start from', () => {
    expect(inProportion(money(20n), money(6n), money(7n))).toEqual(money(70n, 3n));
    expect(inProportion(money(20n), money(0n), money(7n))).toBeNull();
  });

  test('as a plain number it is within one part in 10 ** 15', () => {
    expect(moneyNumber(money(35_615n, 1000n))).toBe(35.615);
    expect(moneyNumber(money(-1n, 3n))).toBeCloseTo(-1 / 3, 15);
  });

  test('what is paid in all does not depend on the weight', () => {
    const price = readPrice('77.96 in all', READERS.us);
    expect(paid(price, NANOGRAMS.lb)).toEqual(paid(price, 0 as Nanograms));
    expect(moneyNumber(paid(price, NANOGRAMS.lb))).toBe(77.96);
  });
});
