/** Labels as people type them in front of the cold case. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Ask, MemberError } from '../../../shared/errors.ts';
import type { Currency } from '../../../shared/measure/money.ts';
import type { Units } from '../../../shared/measure/units.ts';
import { readLabel } from '../../../shared/trade/label.ts';

const reading = (text: string, units: Units | null = 'lb') =>
  readLabel(text, {
    weights: { option: 'one', units, decimals: 'decimal', decimalMark: '.', pans: new Map() },
    prices: { option: 'one', units: units ?? 'lb', currency: 'USD' as Currency },
    country: 'US',
  });

function problemOf(text: string, units: Units | null = 'lb'): Ask | MemberError {
  try {
    reading(text, units);
  } catch (problem) {
    if (problem instanceof Ask || problem instanceof MemberError) return problem;
    throw problem;
  }
  throw new Error(`${text} was read`);
}

const POUND = 453_592_370_000;

describe('is read', () => {
  test.each([
    ['14.2 lb @ 5.49 choice', 14.2, 5.49, 'lb', 'usda/choice', null, null],
    ['14.2 lb for 77.96', 14.2, 77.96, 'all', null, null, null],
    ['8 lb @ 3.99 flat prime', 8, 3.99, 'lb', 'usda/prime', 'beef/brisket-flat', null],
    ['choice 14.2 lb $5.49/lb', 14.2, 5.49, 'lb', 'usda/choice', null, null],
    ['5.49/lb 14.2 lb choice', 14.2, 5.49, 'lb', 'usda/choice', null, null],
    ['15.3lb 4.29 per lb Choice packer', 15.3, 4.29, 'lb', 'usda/choice', 'beef/brisket-whole', null],
    ['14 lb @ 5.49 a pound choice', 14, 5.49, 'lb', 'usda/choice', null, null],
    ['14 3/4 lb @5 prime', 14.75, 5, 'lb', 'usda/prime', null, null],
    ['2 lb 9.4 oz @ 5.49', 2.5875, 5.49, 'lb', null, null, null],
    ['14.2 @ 5.49', 14.2, 5.49, 'lb', null, null, null],
    ['14lb@5.49', 14, 5.49, 'lb', null, null, null],
    ['9 lb 2.49/lb bone-in butt', 9, 2.49, 'lb', null, 'pork/butt', 'in'],
    ['14.2 lb choice @ 5.49 boneless beef', 14.2, 5.49, 'lb', 'usda/choice', null, 'out'],
    // A cut that has a grade in its name.
    ['prime rib 12 lb @ 9.99', 12, 9.99, 'lb', null, 'beef/rib-roast', null],
    ['12 lb @ 9.99 prime prime rib', 12, 9.99, 'lb', 'usda/prime', 'beef/rib-roast', null],
    ['14.2 lb @ 5.49 usda prime flat', 14.2, 5.49, 'lb', 'usda/prime', 'beef/brisket-flat', null],
    ['14.2 lb @ 5.49 AAA', 14.2, 5.49, 'lb', 'canada/aaa', null, null],
    ['13 lb @5.49 MB 4+', 13, 5.49, 'lb', 'ausmeat/4', null, null],
    ['8.41 lb + 7.96 lb @ 3', 16.37, 3, 'lb', null, null, null],
  ])('%s', (text, pounds, amount, basis, grade, cut, bone) => {
    const label = reading(text);
    expect(label.weight / POUND).toBeCloseTo(pounds, 9);
    expect(label.price).toMatchObject({ amount: Math.round(amount * 10_000), basis, currency: 'USD' });
    expect(label).toMatchObject({ grade, cut, bone });
  });

  test('in kilos, with a decimal comma and another currency', () => {
    const { weight, price } = reading('6,4 kg 12,10 €/kg', 'kg');
    expect(weight).toBe(6_400_000_000_000);
    expect(price).toMatchObject({ amount: 121_000, basis: 'kg', currency: 'EUR' });
    expect(reading('14.2 lb CAD 5.49/lb').price.currency).toBe('CAD');
  });
});

describe('is asked, and each reading stands in the label', () => {
  test.each([
    ['14.2 lb 5.49 choice', 'per-weight-or-in-all', ['14.2 lb 5.49/lb choice', '14.2 lb 5.49 in all choice']],
    ['14.2 lb $77.96', 'per-weight-or-in-all', ['14.2 lb USD 77.96/lb', '14.2 lb USD 77.96 in all']],
    ['14-9 @ 5', 'which-weight', ['14 lb 9 oz @ 5', '14.9 lb @ 5', '14 lb - 9 lb @ 5']],
    [
      '8 lb @ 3.99 brisket prime',
      'which-cut',
      [
        '8 lb @ 3.99 Whole packer brisket prime',
        '8 lb @ 3.99 Brisket flat prime',
        '8 lb @ 3.99 Brisket point prime',
      ],
    ],
  ])('%s', (text, code, texts) => {
    const problem = problemOf(text);
    expect(problem.code).toBe(code);
    const readings = problem instanceof Ask ? problem.readings : [];
    expect(readings.map(({ set }) => set.one)).toEqual(texts);
    for (const one of texts) expect(() => reading(one)).not.toThrow();
  });

  test('pounds or kilos, of somebody who never said', () => {
    const problem = problemOf('14.2 @ 5', null);
    expect(problem.code).toBe('pounds-or-kilos');
  });
});

describe('is refused', () => {
  test.each([
    ['', 'label-weight'],
    ['cheap meat', 'label-weight'],
    ['@ 5.49', 'label-weight'],
    ['0 lb @ 5', 'label-weight'],
    ['14 lb', 'label-price'],
    ['14 lb @ 0', 'label-price'],
    ['14 lb @ -4', 'price-negative'],
    ['14 lb @ 4 per stone', 'price-basis'],
    ['14 lb @ £4', 'price-sign'],
    ['14 lb @ 5.49 dragon', 'label-words'],
    ['14 lb @ 5, 13 lb @ 6, 12 lb @ 7, 11 lb @ 4, 10 lb @ 3, 9 lb @ 2', 'label-several'],
    ['14 lb @ 5.49 dry-aged rib', 'dry-aged'],
  ])('%s', (text, code) => {
    expect(problemOf(text)).toBeInstanceOf(MemberError);
    expect(problemOf(text).code).toBe(code);
  });
});

test('nothing is thrown but what a member can be told', () => {
  const parts = fc.constantFrom(
    ...[
      '14.2',
      'lb',
      '@',
      '5.49',
      'for',
      'choice',
      'flat',
      '$',
      '/',
      'kg',
      ',',
      '-',
      'bone',
      'in',
      '½',
      'all',
      '…',
    ],
  );
  fc.assert(
    fc.property(fc.array(parts, { maxLength: 9 }), fc.string(), (words, rest) => {
      for (const text of [words.join(' '), `${words.join('')}${rest}`]) {
        try {
          reading(text);
        } catch (problem) {
          expect(problem instanceof Ask || problem instanceof MemberError).toBe(true);
        }
      }
    }),
  );
});
