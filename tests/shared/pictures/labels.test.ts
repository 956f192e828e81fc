/** The pictures of /shop: labels as dots with their ranges, and the card to keep. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Currency } from '../../../shared/measure/money.ts';
import { NANOGRAMS, type Nanograms } from '../../../shared/measure/units.ts';
import { type DrawnLabel, labelsPicture } from '../../../shared/pictures/labels.ts';
import { moneyAxis, roundStep } from '../../../shared/pictures/money-axis.ts';
import { shopCardPicture } from '../../../shared/pictures/shop-card.ts';
import type { CutKey, GradeKey } from '../../../shared/trade/keys.ts';
import { bracketed, scalesOf, seriesOf, textsOf, WORDS } from './clubs.ts';

const USD = 'USD' as Currency;
const label = (place: number, cost: number, best: boolean, cut: CutKey | null = null): DrawnLabel => ({
  words: {
    place,
    weight: (14 * NANOGRAMS.lb) as Nanograms,
    price: { amount: 54_900, basis: 'lb', currency: USD, text: '' },
    grade: 'usda/choice' as GradeKey,
    cut,
  },
  cost,
  low: 0.9 * cost,
  high: 1.2 * cost,
  currency: USD,
  best,
});
const TWO = [label(1, 11, false), label(2, 10, true)];
const picture = (labels: readonly DrawnLabel[], close = false) =>
  labelsPicture({ about: 'Whole packer brisket', labels, close }, WORDS.labels);

describe('labels', () => {
  test('each row has its label and what it comes to; the best says so', () => {
    expect(textsOf(picture(TWO))).toEqual(
      expect.arrayContaining(['1  14.00 lb at $5.49/lb, choice', '$11.00', 'best buy  $10.00']),
    );
  });

  test('the best has a shape and a colour of its own, over the ranges of all', () => {
    const [best, others, ranges] = seriesOf(picture(TWO));
    expect(best).toMatchObject({ label: 'best buy', pointStyle: 'rectRot', data: [{ x: 10 }] });
    expect(others).toMatchObject({ pointStyle: 'circle', data: [{ x: 11 }] });
    expect(ranges?.data.map(({ x }) => x)).toEqual(TWO.map(({ low, high }) => [low, high]));
  });

  test('too close to call: no best, and it is said', () => {
    const close = picture([label(1, 11, false), label(2, 10.9, false)], true);
    expect(textsOf(close).join(' ')).toContain('too close to call');
    expect(seriesOf(close).map(({ label: name }) => name)).not.toContain('best buy');
  });

  test('of unlike cuts each says first what it is', () => {
    const flat = label(1, 14, false, 'beef/brisket-flat' as CutKey);
    expect(textsOf(picture([flat, label(2, 10, true, 'beef/brisket-whole' as CutKey)]))).toContain(
      '1  brisket flat, $5.49/lb, choice',
    );
  });

  test('all that is drawn lies on the axis, and the alt text has every amount', () => {
    const cost = fc.double({ min: 0.5, max: 900, noNaN: true });
    fc.assert(
      fc.property(fc.array(cost, { minLength: 2, maxLength: 5 }), (costs) => {
        const drawn = picture(costs.map((one, index) => label(index + 1, one, index === 0)));
        const { min, max } = scalesOf(drawn).x;
        for (const one of costs) {
          expect(0.9 * one).toBeGreaterThanOrEqual(min - 1e-9);
          expect(1.2 * one).toBeLessThanOrEqual(max + 1e-9);
        }
        expect(drawn.alt.length).toBeLessThanOrEqual(1024);
        for (let place = 1; place <= costs.length; place++) expect(drawn.alt).toContain(`Label ${place},`);
      }),
    );
  });

  test('nothing is hard-wired', () => {
    const drawn = labelsPicture({ about: null, labels: TWO, close: true }, bracketed(WORDS.labels));
    for (const text of textsOf(drawn)) expect(text.replace(/‹[^›]*›/g, '')).not.toMatch(/\p{Letter}/u);
  });
});

describe('an axis of money', () => {
  test.each([
    [3.1, 6, 1],
    [0.85, 10, 0.1],
    [4.3, 10, 0.5],
    [1200, 5, 500],
  ])('%d in %d parts: %d each', (span, parts, step) => {
    expect(roundStep(span, parts)).toBeCloseTo(step, 12);
  });

  test('has two to seven lines, the ends outside of all amounts', () => {
    const amount = fc.double({ min: 0.01, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(fc.array(amount, { minLength: 1, maxLength: 9 }), (amounts) => {
        const { min, max, ticks } = moneyAxis(amounts);
        expect(min).toBeLessThanOrEqual(Math.min(...amounts) * (1 + 1e-6) + 1e-6);
        expect(max).toBeGreaterThanOrEqual(Math.max(...amounts) * (1 - 1e-6) - 1e-6);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(7);
      }),
    );
  });
});

describe('the card', () => {
  const rows = [4, 5, 6].map((shelf) => ({ shelf, plate: shelf * 2, trimmed: shelf * 1.25 }));

  test('is a table of amounts', () => {
    const drawn = shopCardPicture('Whole packer brisket', rows, USD, WORDS.shopCard);
    expect(textsOf(drawn)).toEqual(
      expect.arrayContaining([
        'shelf, a pound',
        'on the plate',
        'trimmed, at most',
        '$4.00',
        '$8.00',
        '$5.00',
      ]),
    );
    expect(drawn.alt).toContain('$6.00: $12.00, $7.50.');
  });

  test('without a last column, where nobody trims it', () => {
    const plain = rows.map((row) => ({ ...row, trimmed: null }));
    const drawn = shopCardPicture('Pork butt', plain, USD, WORDS.shopCard);
    expect(textsOf(drawn)).not.toContain('trimmed, at most');
    expect(drawn.alt).toContain('$6.00: $12.00.');
  });
});
