import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { averagesOf } from '../../../shared/pictures/averages.ts';
import type { Group } from '../../../shared/pictures/averages-rows.ts';
import { apart, bracketed, CLUBS, groupOf, scalesOf, seriesOf, spread, textsOf, WORDS } from './clubs.ts';

const picture = (groups: readonly Group[], about = 'By cut', mean: number | null = null) =>
  averagesOf({ measure: 'trim', about, mean, groups }, WORDS.averages);
const series = (groups: readonly Group[], label: string) =>
  seriesOf(picture(groups)).find((one) => one.label === label);

const many = (count: number, pieces: number) =>
  Array.from({ length: count }, (_none, index) =>
    groupOf(`Cut ${index + 1}`, spread(pieces, 0.15 + index / 100)),
  );

describe('averages of groups', () => {
  test.each(Object.entries(CLUBS))('of %s: at most 400 marks, dots apart, in its row', (_name, losses) => {
    const drawn = picture([groupOf('Choice', losses), groupOf('Prime', [0.2, 0.3])]);
    const marks = seriesOf(drawn).filter(({ type }) => type !== 'bar');
    expect(marks.flatMap(({ data }) => data).length).toBeLessThanOrEqual(400);
    for (const one of marks.filter(({ label }) => label === 'pieces')) expect(apart(drawn, one)).toBe(true);
    for (const { y } of marks.flatMap(({ data }) => data)) expect(y).toBeLessThan(scalesOf(drawn).y.max);
    expect(JSON.stringify(drawn)).not.toMatch(/null|NaN|Infinity/);
  });

  test('each row has its name, its counts and its mean', () => {
    const texts = textsOf(picture([groupOf('Choice', CLUBS.eight), groupOf('Prime', [0.2, 0.3])]));
    expect(texts).toEqual(
      expect.arrayContaining(['Choice', '8 by 4', '19.2 %', 'Prime', '2 by 2', '25.0 %']),
    );
    expect(texts).toContain('8 by 4: 8 pieces of 4 people');
  });

  test('one piece is its own mean, fewer than four have no middle half', () => {
    const groups = [
      groupOf('Choice', [0.1, 0.2, 0.3, 0.4]),
      groupOf('Prime', [0.2, 0.3]),
      groupOf('Select', [0.2]),
    ];
    expect(series(groups, 'average')?.data.map(({ x }) => x)).toEqual([0.25, 0.25]);
    expect(series(groups, 'middle half')?.data.map(({ x }) => x)).toEqual([[0.17500000000000002, 0.325]]);
    expect(series(groups, 'pieces')?.data.length).toBe(7);
  });

  test('a likely range is drawn where both ends are told', () => {
    const groups = [
      groupOf('Choice', [0.1, 0.2], { low: 0.05, high: 0.4 }),
      groupOf('Prime', [0.2], { low: 0.1 }),
    ];
    expect(series(groups, 'likely range')?.data.map(({ x }) => x)).toEqual([[0.05, 0.4]]);
    expect(scalesOf(picture(groups)).x.min).toBeLessThanOrEqual(0.05);
    expect(picture(groups).alt).toContain('Likely from 5.0 % to 40.0 %.');
    expect(textsOf(picture(groups)).join()).toContain('bar: likely range');
  });

  test('of fifteen the twelve with the most pieces, which says so', () => {
    const texts = textsOf(picture(many(15, 5)));
    expect(texts).toContain('Cut 12');
    expect(texts).not.toContain('Cut 13');
    expect(texts).toContain('The 12 with the most pieces, of 15');
  });

  test('of many an even choice, which says so, one at least of each', () => {
    const groups = [groupOf('Choice', spread(5000)), groupOf('Prime', [0.01]), groupOf('Select', [])];
    const dots = series(groups, 'pieces')?.data.map(({ x }) => x) ?? [];
    expect(dots.length).toBeLessThan(400);
    expect(dots).toContain(0.01);
    expect(textsOf(picture(groups)).join()).toMatch(/\d+ of 5001 pieces shown/);
  });

  test('a group without a piece has no row', () => {
    expect(textsOf(picture([groupOf('Choice', [0.1]), groupOf('Select', [-0.1])]))).not.toContain('Select');
    expect(() => picture([groupOf('Select', [])])).toThrow(RangeError);
  });

  test('the mean of all is the figure to look at first, where there is one', () => {
    expect(textsOf(picture([groupOf('Choice', [0.1])], 'By grade', 0.182)).slice(2, 4)).toEqual([
      '18.2 %',
      'on average',
    ]);
  });

  test('where no notes are drawn, its rows are named beside an axis, but not in the words of a club', () => {
    const drawn = picture([groupOf('Boston butt', [0.1, 0.2]), groupOf('Aunt Ida', [0.2], { own: true })]);
    const { options } = drawn.config as unknown as { options: { scales: { names: { labels: string[][] } } } };
    expect(options.scales.names.labels).toEqual([
      ['Boston butt', '15.0 %'],
      ['row 2', '20.0 %'],
    ]);
  });

  test('every text but names is the language’s', () => {
    const groups = many(15, 50).map((group) => ({ ...group, name: `‹${group.name}›`, low: 0.1, high: 0.2 }));
    const grouped = { measure: 'trim', about: '‹about›', mean: 0.2, groups } as const;
    const drawn = averagesOf(grouped, bracketed(WORDS.averages));
    const said = [...textsOf(drawn), ...seriesOf(drawn).map(({ label }) => label)];
    expect(said.filter((text) => !/^‹.*›$/.test(text))).toEqual([]);
  });

  test('the alt text has the same figures', () => {
    expect(
      picture(
        [groupOf('Choice', CLUBS.eight), groupOf('Prime', [0.2, 0.3])],
        'Whole packer brisket, by grade',
      ).alt,
    ).toBe(
      'What comes off raw, of the weight bought: the average piece. Whole packer brisket, by grade. ' +
        'Choice: 19.2 % (8 by 4). Half lie from 16.9 % to 21.6 %. Prime: 25.0 % (2 by 2). ' +
        '8 by 4: 8 pieces of 4 people.',
    );
  });

  test('of any groups: plain JSON and an alt text that the platform takes', () => {
    const losses = fc.array(fc.double({ min: 0, max: 0.9, noNaN: true }), { minLength: 1, maxLength: 60 });
    const name = fc.string({ maxLength: 200, unit: 'grapheme' });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(name, losses), { minLength: 1, maxLength: 14 }),
        name,
        (groups, about) => {
          const drawn = picture(
            groups.map(([one, some]) => groupOf(one, some, { low: 0.1, high: 0.2 })),
            about,
          );
          expect(JSON.parse(JSON.stringify(drawn))).toStrictEqual(drawn);
          expect(drawn.alt.length).toBeLessThanOrEqual(1024);
        },
      ),
    );
  });
});
