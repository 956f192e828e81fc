import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Pair, type Pairs, pairsOf } from '../../../shared/pictures/pairs.ts';
import type { Picture } from '../../../shared/pictures/picture.ts';
import { forQuickChart } from '../../../src/pictures/for-quickchart.ts';
import { bracketed, scalesOf, seriesOf, textsOf, WORDS } from './clubs.ts';

const pair = (name: string, told: readonly [number, number, number] | null, own = false): Pair => ({
  name,
  own,
  difference: told?.[1] ?? null,
  low: told?.[0] ?? null,
  high: told?.[2] ?? null,
});
const GRADES = [
  pair('Prime against Choice', [0.011, 0.0239, 0.0369]),
  pair('Prime against Select', [-0.011, 0.0119, 0.0349]),
  pair('Choice against Select', [-0.006, 0.0011, 0.007]),
  pair('Wagyu against Select', null),
];
const of = (pairs: readonly Pair[], some: Partial<Pairs> = {}): Pairs => ({
  measure: 'trim',
  about: 'Whole packer brisket, by grade',
  margin: 0.01,
  count: 150,
  members: 25,
  pairs,
  ...some,
});
const picture = (pairs: readonly Pair[], some: Partial<Pairs> = {}) => pairsOf(of(pairs, some), WORDS.pairs);
const named = (drawn: Picture, label: string) => seriesOf(drawn).find((one) => one.label === label);

describe('kinds against each other', () => {
  test('a row has its name, its difference and its ends; one without ends says that it is early', () => {
    const drawn = picture(GRADES);
    expect(textsOf(drawn)).toEqual(
      expect.arrayContaining([
        'Prime against Choice',
        '+2.4',
        '+1.1 to +3.7',
        'Wagyu against Select',
        'too early',
      ]),
    );
    expect(named(drawn, 'difference')?.data.map(({ x }) => x)).toEqual([2.39, 1.19, 0.11]);
    expect(named(drawn, 'likely range')?.data.map(({ x }) => x)).toEqual([
      [1.1, 3.69],
      [-1.1, 3.49],
      [-0.6, 0.7],
    ]);
  });

  test('a ring is open, a dot an answer, by the same verdict as the words', () => {
    expect(named(picture(GRADES), 'difference')).toMatchObject({
      backgroundColor: ['#0072B2', '#FFFFFF', '#0072B2'],
      borderWidth: [0, 5, 0],
    });
  });

  test('every row has its zero and the zone that is too small to argue about', () => {
    const drawn = picture(GRADES, { margin: 0.015 });
    expect(named(drawn, 'no difference')?.data.map(({ x }) => x)).toEqual([0, 0, 0, 0]);
    expect(named(drawn, 'too small to argue about')?.data[0]?.x).toEqual([-1.5, 1.5]);
    expect(textsOf(drawn).join()).toContain('under 1.5 points either way');
    expect(textsOf(picture(GRADES)).join()).toContain('under 1 point either way');
  });

  test('the sides say what a difference means, the other way round at the plate', () => {
    expect(textsOf(picture(GRADES))).toEqual(expect.arrayContaining(['less comes off', 'more comes off']));
    const plate = textsOf(picture(GRADES, { measure: 'plate' }));
    expect(plate.indexOf('more gets to the plate')).toBeLessThan(plate.indexOf('less gets to the plate'));
  });

  test('a range that is far too wide ends at the edge, which says so', () => {
    const drawn = picture([...GRADES, pair('Wagyu against Prime', [-0.9, 0.02, 0.94])]);
    const { min, max } = scalesOf(drawn).x;
    expect(max).toBeLessThan(15);
    expect(named(drawn, 'likely range')?.data[3]?.x).toEqual([
      expect.closeTo(min, 2),
      expect.closeTo(max, 2),
    ]);
    expect(textsOf(drawn)).toContain('A bar that ends at the edge goes on beyond it');
    expect(textsOf(picture(GRADES))).not.toContain('A bar that ends at the edge goes on beyond it');
    expect(drawn.alt).toContain('likely -90.0 to +94.0');
  });

  test('nothing but early rows', () => {
    const drawn = picture([pair('Prime against Choice', null)]);
    expect(seriesOf(drawn).map(({ label }) => label)).toEqual(['no difference', 'too small to argue about']);
    expect(textsOf(drawn).join()).not.toContain('Ring');
  });

  test('of fifteen the first ten, which says so', () => {
    const many = Array.from({ length: 15 }, (_none, index) => pair(`Pair ${index + 1}`, [-0.02, 0, 0.02]));
    const texts = textsOf(picture(many));
    expect(texts).toContain('Pair 10');
    expect(texts).not.toContain('Pair 11');
    expect(texts).toContain('The first 10 of 15 pairs');
  });

  test('where no notes are drawn, its rows are named beside an axis, but not in the words of a club', () => {
    const drawn = picture(
      [pair('Corner store against market', [0, 0.02, 0.04], true), pair('Bone in against boneless', null)],
      { about: 'Aunt Ida’s' },
    );
    const sent = forQuickChart(drawn) as unknown as {
      options: { scales: { names: { labels: string[][] } } };
    };
    expect(sent.options.scales.names.labels).toEqual([
      ['pair 1', '+2.0'],
      ['Bone in against boneless', 'too early'],
    ]);
    expect(JSON.stringify(sent)).not.toMatch(/Corner|market|Ida/);
  });

  test('the alt text has the same figures', () => {
    expect(picture(GRADES.slice(1)).alt).toBe(
      'Which loses more? Whole packer brisket, by grade: came off, in points of the weight bought. ' +
        'Everyone against themself: 150 pieces, 25 people. ' +
        'Prime against Select: +1.2, likely -1.1 to +3.5. Choice against Select: +0.1, likely -0.6 to +0.7. ' +
        'Wagyu against Select: too early. Under 1 point is too small to argue about.',
    );
  });

  test('every text but names is the language’s', () => {
    const pairs = GRADES.map((one) => ({ ...one, name: `‹${one.name}›` }));
    const drawn = pairsOf(of(pairs, { about: '‹about›' }), bracketed(WORDS.pairs));
    const said = [...textsOf(drawn), ...seriesOf(drawn).map(({ label }) => label)];
    expect(said.filter((text) => !/^‹.*›$/.test(text))).toEqual([]);
  });

  test('without a pair there is none', () => {
    expect(() => picture([])).toThrow(RangeError);
  });

  test('of any pairs: plain JSON, finite axes, an alt text that the platform takes', () => {
    const share = fc.double({ min: -1, max: 1, noNaN: true });
    const any = fc.record({
      name: fc.string({ maxLength: 200, unit: 'grapheme' }),
      told: fc.option(fc.tuple(share, share, share), { nil: null }),
      own: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.array(any, { minLength: 1, maxLength: 14 }),
        fc.double({ min: 0.001, max: 0.2, noNaN: true }),
        (some, margin) => {
          const drawn = picture(
            some.map(({ name, told, own }) => {
              const [low = 0, difference = 0, high = 0] = told?.toSorted((a, b) => a - b) ?? [];
              return pair(name, told === null ? null : [low, difference, high], own);
            }),
            { margin },
          );
          expect(JSON.parse(JSON.stringify(drawn))).toStrictEqual(drawn);
          expect(drawn.alt.length).toBeLessThanOrEqual(1024);
          const { min, max } = scalesOf(drawn).x;
          expect(min).toBeLessThan(0);
          expect(max).toBeGreaterThan(0);
        },
      ),
    );
  });
});
