import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rankCountsOf } from '../../../shared/pictures/rank-counts.ts';
import { ranksOf } from '../../../shared/pictures/ranks.ts';
import type { Rank } from '../../../shared/pictures/ranks-rows.ts';
import { bracketed, notesOf, POUNDS, scalesOf, seriesOf, textsOf, WORDS } from './clubs.ts';

const rank = (place: number, share: number, more: Partial<Rank> = {}): Rank => ({
  place,
  share,
  low: share - 0.02,
  high: share + 0.02,
  pieces: 12,
  separable: false,
  provisional: false,
  ...more,
});

/** A leader, one too close to call, one clearly behind, one with too few pieces. */
const FOUR = [
  rank(1, 0.48, { pieces: 14 }),
  rank(2, 0.47),
  rank(3, 0.43, { separable: true }),
  rank(4, 0.46, { pieces: 1, provisional: true, low: 0.4, high: 0.52 }),
];
const ABOUT = 'Whole packer brisket, this season';
const picture = (rows: readonly Rank[], all = rows.length) =>
  ranksOf({ measure: 'plate', about: ABOUT, rows, all }, WORDS.ranks);
const many = (count: number) =>
  Array.from({ length: count }, (_none, index) => rank(index + 1, 0.48 - index / 100));
const series = (rows: readonly Rank[], label: string) =>
  seriesOf(picture(rows)).find((one) => one.label === label);

describe('people by rank', () => {
  test('each row has its place, its pieces and its share', () => {
    expect(textsOf(picture(FOUR))).toEqual(
      expect.arrayContaining(['1', '14', '48.0 %', '2', '12', '47.0 %', '4', '1', '46.0 %']),
    );
  });

  test('the leader’s share is the figure to look at first', () => {
    expect(textsOf(picture(FOUR)).slice(2, 4)).toEqual(['48.0 %', 'in the lead']);
  });

  test('shape and edge tell who leads, who is too close to call, who is behind, who is new', () => {
    const { data, pointStyle } = series(FOUR, 'too close to call') ?? {};
    expect(data?.map(({ x }) => x)).toEqual([0.48, 0.47]);
    expect(pointStyle).toEqual(['rectRot', 'circle']);
    expect(series(FOUR, 'clearly behind')).toMatchObject({ pointStyle: 'rect', data: [{ x: 0.43 }] });
    expect(series(FOUR, 'new here')).toMatchObject({ pointStyle: 'circle', data: [{ x: 0.46 }] });
    expect(series(FOUR, 'likely range')?.data.map(({ x }) => x)).toEqual(
      FOUR.map(({ low, high }) => [low, high]),
    );
  });

  test('those with too few pieces stand below a divider, and none of them leads', () => {
    const { scales } = picture(FOUR).config.options as unknown as {
      scales: { divider?: { min: number; max: number } };
    };
    const divider = -(scales.divider?.min ?? 0);
    const [ring] = series(FOUR, 'new here')?.data ?? [];
    const [square] = series(FOUR, 'clearly behind')?.data ?? [];
    expect(square?.y).toBeLessThan(divider);
    expect(ring?.y).toBeGreaterThan(divider);
    const alone = picture([rank(1, 0.44, { provisional: true })]);
    expect(textsOf(alone)).not.toContain('in the lead');
    expect(textsOf(alone)).toContain('new here: too few pieces for a place');
    expect(JSON.stringify(alone.config)).not.toContain('divider');
  });

  test('the small print tells only the shapes that are drawn', () => {
    expect(textsOf(picture([rank(1, 0.4)])).at(-1)).toBe('Diamond: leads, bar: likely range');
    expect(textsOf(picture(FOUR)).slice(-2)).toEqual([
      'Diamond: leads, dot: too close to call',
      'Square: clearly behind, ring: new here, bar: likely range',
    ]);
  });

  test('of forty the first twelve, which says so', () => {
    const texts = textsOf(picture(many(15), 40));
    expect(texts).toContain('12');
    expect(texts).not.toContain('13');
    expect(texts.at(-1)).toBe('The first 12 of 40');
  });

  test.each([
    ['plate', 'on the plate, of the weight bought: more is better'],
    ['trim', 'came off, of the weight bought: less is better'],
  ] as const)('%s says which side is the better one', (measure, caption) => {
    const drawn = ranksOf({ measure, about: ABOUT, rows: FOUR, all: 4 }, WORDS.ranks);
    expect(textsOf(drawn)).toContain(caption);
  });

  test('ranges stay between nothing and all', () => {
    const drawn = picture([rank(1, 0.99, { low: 0.9, high: 1.02 }), rank(2, 0.01, { low: -0.1, high: 0.2 })]);
    expect(scalesOf(drawn).x).toMatchObject({ min: 0, max: 1 });
  });

  test('the alt text has every row’s figures', () => {
    expect(picture(FOUR).alt).toBe(
      'What gets to the plate, of the weight bought, by place: more is better. Whole packer brisket, this season. ' +
        '1: 48.0 %, likely 46.0 % to 50.0 %, 14 pieces, leads. ' +
        '2: 47.0 %, likely 45.0 % to 49.0 %, 12 pieces, too close to call. ' +
        '3: 43.0 %, likely 41.0 % to 45.0 %, 12 pieces, clearly behind. ' +
        '4: 46.0 %, likely 40.0 % to 52.0 %, 1 piece, new here.',
    );
    expect(picture(many(12), 40).alt).toMatch(/ 12: 37\.0 %.*The first 12 of 40\.$/);
  });

  test('every text but what it is about is the language’s', () => {
    const drawn = ranksOf(
      { measure: 'plate', about: '‹about›', rows: FOUR, all: 40 },
      { ...bracketed(WORDS.ranks), reading: () => ['‹reading›'] },
    );
    const said = [...textsOf(drawn), ...seriesOf(drawn).map(({ label }) => label)];
    expect(said.filter((text) => !/^‹.*›$/.test(text))).toEqual([]);
  });

  test('there must be somebody', () => expect(() => picture([])).toThrow(RangeError));

  test('of anybody: plain JSON, marks in their rows, an alt text that the platform takes', () => {
    const fraction = fc.double({ min: 0, max: 1, noNaN: true });
    const anybody = fc.record({
      place: fc.integer({ min: 1, max: 999 }),
      share: fraction,
      low: fraction,
      high: fraction,
      pieces: fc.integer({ min: 1, max: 9999 }),
      separable: fc.boolean(),
    });
    const rows = fc
      .tuple(fc.array(anybody, { minLength: 1, maxLength: 14 }), fc.nat({ max: 14 }))
      .map(([some, placed]) => some.map((one, index) => ({ ...one, provisional: index >= placed })));
    fc.assert(
      fc.property(rows, fc.string({ maxLength: 200, unit: 'grapheme' }), (some, about) => {
        const drawn = ranksOf({ measure: 'trim', about, rows: some, all: 20 }, WORDS.ranks);
        expect(JSON.parse(JSON.stringify(drawn))).toStrictEqual(drawn);
        expect(drawn.alt.length).toBeLessThanOrEqual(1024);
        for (const { data } of seriesOf(drawn))
          for (const { y } of data) expect(y).toBeLessThan(scalesOf(drawn).y.max);
      }),
    );
  });
});

describe('people by how many pieces', () => {
  const counts = (count: number, all = count) =>
    rankCountsOf(
      {
        about: 'Every cut, this season',
        rows: many(count).map(({ place }) => ({ place, pieces: 31 - place })),
        all,
      },
      WORDS.rankCounts,
      POUNDS,
    );

  test('a bar each, with its place and its count', () => {
    expect(seriesOf(counts(3))).toMatchObject([{ label: 'pieces', data: [30, 29, 28] }]);
    expect(textsOf(counts(3)).slice(2)).toEqual([
      '30',
      'in the lead',
      'place',
      'pieces',
      '1',
      '30',
      '2',
      '29',
      '3',
      '28',
    ]);
    expect(
      notesOf(counts(3))
        .filter(({ bold, size }) => bold && size === 24)
        .map(({ text }) => text),
    ).toEqual(['in the lead', '1', '30']);
  });

  test('of forty the first twelve, which says so', () => {
    expect(textsOf(counts(15, 40)).at(-1)).toBe('The first 12 of 40');
    expect(counts(15, 40).alt).toMatch(
      /^Most pieces, by place\. Every cut, this season\. 1: 30 pieces\. .*40\.$/,
    );
    expect(counts(2).alt).toBe('Most pieces, by place. Every cut, this season. 1: 30 pieces. 2: 29 pieces.');
  });

  test('is plain JSON, of somebody', () => {
    expect(JSON.parse(JSON.stringify(counts(12)))).toStrictEqual(counts(12));
    expect(() => counts(0)).toThrow(RangeError);
  });
});
