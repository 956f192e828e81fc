import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { scatterOf } from '../../../shared/findings/scatter.ts';
import { type Bigger, type BiggerFinding, biggerOf } from '../../../shared/pictures/bigger.ts';
import type { Picture } from '../../../shared/pictures/picture.ts';
import { pictures } from '../../../shared/words/en/pictures.ts';
import { forQuickChart } from '../../../src/pictures/for-quickchart.ts';
import { bracketed, KILOS, POUNDS, spread, textsOf, WORDS } from './clubs.ts';

const POUND = 453.59237;
const FINDING: BiggerFinding = {
  smallGrams: 10.7 * POUND,
  bigGrams: 19.7 * POUND,
  difference: -0.022,
  low: -0.036,
  high: -0.008,
};

/** A spread of weights around 15 lb and of shares around 18 %, of so many members. */
const clubOf = (count: number, members = 4, weights = spread(count, 15, 10)) =>
  scatterOf({
    count,
    base: weights.map((weight) => weight * POUND),
    loss: weights.map((weight, row) => weight * POUND * (spread(count)[(row * 7) % count] ?? 0)),
    member: weights.map((_weight, row) => row % members),
  });

const of = (some: Partial<Bigger> = {}): Bigger => ({
  ...clubOf(150, 25),
  measure: 'trim',
  about: 'Whole packer brisket',
  finding: FINDING,
  settled: false,
  ...some,
});
const picture = (some: Partial<Bigger> = {}) => biggerOf(of(some), WORDS.bigger, POUNDS);

interface Data {
  label: string;
  data: { x: number; y: number | null }[];
  fill?: string;
}
const seriesOf = ({ config }: Picture) => (config as unknown as { data: { datasets: Data[] } }).data.datasets;
const labelled = (drawn: Picture, label: string) => seriesOf(drawn).find((one) => one.label === label)?.data;
const scalesOf = ({ config }: Picture) =>
  (config as unknown as { options: { scales: Record<'x' | 'y', { min: number; max: number }> } }).options
    .scales;

const ODD: Record<string, Partial<Bigger>> = {
  'one piece': { ...clubOf(1), finding: null },
  'two pieces of one weight': { ...clubOf(2, 1, [12, 12]), finding: null },
  'equal weights and a finding without a width': {
    ...clubOf(40, 4, Array(40).fill(12)),
    finding: { ...FINDING, smallGrams: 12 * POUND, bigGrams: 12 * POUND },
  },
  '5,000 pieces': clubOf(5000, 60),
  '250 people of two pieces each': clubOf(500, 250),
  'a huge interval': { finding: { ...FINDING, low: -3, high: 4 } },
  'a difference beyond everything': { finding: { ...FINDING, difference: 1.5, low: -9, high: 12 } },
  'all of it lost': {
    ...scatterOf({ count: 3, base: [1, 2, 3], loss: [1, 2, 3], member: [0, 0, 1] }),
    finding: null,
  },
  'nothing lost, of crumbs': {
    ...scatterOf({ count: 2, base: [1e-3, 2e-3], loss: [0, 0], member: [0, 0] }),
    finding: null,
  },
  'a long name of everything': { about: 'W'.repeat(2000) },
};

describe('big against small', () => {
  test.each(Object.entries(ODD))('of %s: at most 400 marks, finite axes, plain JSON', (_name, some) => {
    const drawn = picture(some);
    const marks = seriesOf(drawn).flatMap(({ data }) => data);
    expect(marks.length).toBeLessThanOrEqual(400);
    for (const { x, y } of marks)
      expect([Number.isFinite(x), y === null || Number.isFinite(y)]).toEqual([true, true]);
    for (const { min, max } of Object.values(scalesOf(drawn))) expect(max - min).toBeGreaterThan(0.04);
    expect(JSON.parse(JSON.stringify(drawn))).toStrictEqual(drawn);
    expect(JSON.stringify(drawn)).not.toMatch(/NaN|Infinity|undefined/);
    expect(drawn.alt.length).toBeLessThanOrEqual(1024);
    expect(drawn.height).toBeLessThan(900);
  });

  test.each(Object.entries(ODD))('of %s: every piece is on the axes', (_name, some) => {
    const drawn = picture(some);
    const { x, y } = scalesOf(drawn);
    for (const at of labelled(drawn, 'pieces') ?? []) {
      expect(at.x).toBeGreaterThanOrEqual(x.min - 1e-3);
      expect(at.x).toBeLessThanOrEqual(x.max + 1e-3);
      expect(at.y).toBeGreaterThanOrEqual(y.min - 1e-5);
      expect(at.y).toBeLessThanOrEqual(y.max + 1e-5);
    }
  });

  test('the bold line turns around the middle, and its band with it', () => {
    const middle = { grams: 15.2 * POUND, share: 0.18 };
    const drawn = picture({ middle });
    expect(labelled(drawn, 'everyone against themself')).toEqual([
      { x: 10.7, y: 0.191 },
      { x: 19.7, y: 0.169 },
    ]);
    expect(labelled(drawn, 'likely band')).toEqual([
      { x: 10.7, y: 0.198 },
      { x: 19.7, y: 0.162 },
      { x: 19.7, y: 0.176 },
      { x: 10.7, y: 0.184 },
    ]);
    expect(seriesOf(drawn).find(({ label }) => label === 'likely band')?.fill).toBe('shape');
  });

  test('says the difference in points, the ends of the range, and whether it is settled', () => {
    const texts = textsOf(picture());
    expect(texts).toEqual(
      expect.arrayContaining(['-2.2', 'points', 'big against small', 'small 10.7 lb', 'big 19.7 lb']),
    );
    expect(texts.join()).toContain('so far');
    expect(textsOf(picture({ settled: true })).join()).toContain('settled');
    expect(textsOf(picture({ finding: { ...FINDING, difference: 0.007 } }))).toContain('+0.7');
    expect(textsOf(picture({ finding: { ...FINDING, difference: -0.0002 } }))).toContain('0.0');
  });

  test('too early: neither a line nor a band, and no figure of it', () => {
    const drawn = picture({ finding: null });
    expect(seriesOf(drawn).map(({ label }) => label)).toEqual(['pieces', 'one person’s own']);
    expect(textsOf(drawn).join()).toContain('Too early');
    expect(textsOf(drawn)).not.toContain('points');
  });

  test('one thin line a member, each apart from the next', () => {
    const { lines } = clubOf(12, 3);
    const data = labelled(picture(clubOf(12, 3)), 'one person’s own') ?? [];
    expect(data.filter(({ y }) => y === null)).toHaveLength(lines.length - 1);
    expect(data).toHaveLength(3 * lines.length - 1);
  });

  test('of many pieces an even choice, which says so', () => {
    const drawn = picture(clubOf(5000, 60));
    const shown = labelled(drawn, 'pieces')?.length ?? 0;
    expect(shown).toBeGreaterThan(250);
    expect(textsOf(drawn)).toContain(`${shown} of 5000 pieces shown, 60 people`);
  });

  test('in the reader’s unit', () => {
    const drawn = biggerOf(of(), pictures(KILOS).bigger, KILOS);
    expect(textsOf(drawn)).toEqual(expect.arrayContaining(['small 4,9 kg', 'big 8,9 kg', '-2,2']));
    expect(scalesOf(drawn).x.max).toBeLessThan(13);
  });

  test('the alt text has the same figures', () => {
    expect(picture({ settled: true }).alt).toBe(
      'Do big ones lose less? Whole packer brisket: came off, of the weight bought. ' +
        'One of 19.7 lb against one of 10.7 lb: -2.2 points, likely -3.6 to -0.8; settled. ' +
        'Those shown lie from 6.0 % to 27.7 %. 150 pieces, 25 people.',
    );
  });

  test('where no notes are drawn it says its figures and axes by itself, without what it is about', () => {
    const sent = JSON.stringify(forQuickChart(picture({ about: 'Aunt Ida’s' })));
    for (const text of [
      '-2.2 points, big against small',
      'usual range: 10.7 lb to 19.7 lb',
      'weight bought, in pounds',
    ])
      expect(sent).toContain(text);
    expect(sent).not.toContain('Ida');
  });

  test('every text but what it is about is the language’s', () => {
    const drawn = biggerOf(of({ about: '‹about›' }), bracketed(WORDS.bigger), POUNDS);
    const said = [...textsOf(drawn), ...seriesOf(drawn).map(({ label }) => label)];
    expect(said.filter((text) => !/^‹.*›$/.test(text))).toEqual([]);
  });

  test('without a piece there is none', () => {
    expect(() => picture(scatterOf({ count: 0, base: [], loss: [], member: [] }))).toThrow(RangeError);
  });

  test('of any pieces: finite, few enough, an alt text that the platform takes', () => {
    const piece = fc.record({
      grams: fc.double({ min: 1, max: 1e6, noNaN: true }),
      share: fc.double({ min: -0.2, max: 1, noNaN: true }),
      member: fc.nat(40),
    });
    const end = fc.double({ min: -2, max: 2, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 450 }),
        fc.option(fc.tuple(end, end, end), { nil: null }),
        (pieces, ends) => {
          const weights = pieces.map(({ grams }) => grams);
          const [low = 0, difference = 0, high = 0] = ends?.toSorted((a, b) => a - b) ?? [];
          const drawn = picture({
            ...scatterOf({
              count: pieces.length,
              base: weights,
              loss: pieces.map(({ grams, share }) => grams * share),
              member: pieces.map(({ member }) => member),
            }),
            finding:
              ends === null
                ? null
                : {
                    smallGrams: Math.min(...weights),
                    bigGrams: Math.max(...weights),
                    ...{ low, difference, high },
                  },
          });
          expect(JSON.parse(JSON.stringify(drawn))).toStrictEqual(drawn);
          expect(seriesOf(drawn).flatMap(({ data }) => data).length).toBeLessThanOrEqual(400);
          expect(drawn.alt.length).toBeLessThanOrEqual(1024);
        },
      ),
    );
  });
});
