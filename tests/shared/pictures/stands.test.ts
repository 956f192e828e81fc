import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { whereItStands } from '../../../shared/pictures/stands.ts';
import type { Measure } from '../../../shared/yield/measure.ts';
import { apart, bracketed, CLUBS, POUNDS, scalesOf, seriesOf, standingOf, textsOf, WORDS } from './clubs.ts';

const ABOUT = 'Whole packer brisket, piece 1';
const picture = (losses: readonly number[], seq = 1, measure: Measure = 'trim', about = ABOUT) =>
  whereItStands(standingOf(losses, seq, measure), about, WORDS.stands, POUNDS);
const cases = Object.entries(CLUBS);
const named = (losses: readonly number[], label: RegExp, seq = 1) =>
  seriesOf(picture(losses, seq)).find((series) => label.test(series.label));

describe('one piece among others', () => {
  test.each(cases)('of %s: at most 400 marks, dots apart, all inside', (_name, losses) => {
    const drawn = picture(losses);
    const { x, y } = scalesOf(drawn);
    const marks = seriesOf(drawn).filter(({ label, type }) => type !== 'bar' && !label.startsWith('average'));
    const dots = marks.flatMap(({ data }) => data);
    expect(dots.length).toBe(Math.min(400, losses.filter((loss) => loss >= 0).length));
    for (const dot of dots) {
      expect(dot.y).toBeGreaterThan(0);
      expect(dot.y).toBeLessThan(y.max);
    }
    for (const series of marks) expect(apart(drawn, series)).toBe(true);
    expect(x.max - x.min).toBeGreaterThanOrEqual(0.1 - 1e-9);
    expect(JSON.stringify(drawn)).not.toMatch(/null|NaN|Infinity/);
  });

  test('is marked at its own share by another shape, size and colour, with its figure', () => {
    const own = named(CLUBS.eight, /this piece/);
    const others = named(CLUBS.eight, /a piece each/);
    expect(own).toMatchObject({ label: 'this piece 17.4 %', data: [{ x: 0.174 }], pointStyle: 'rectRot' });
    expect(own?.radius).toBeGreaterThan(others?.radius ?? 100);
    expect(own?.backgroundColor).not.toBe(others?.backgroundColor);
    expect(textsOf(picture(CLUBS.eight))).toContain('this piece 17.4 %');
  });

  test('is among those drawn of 5000, at the same places each time', () => {
    const drawn = picture(CLUBS[5000], 4321);
    expect(seriesOf(drawn)[0]).toMatchObject({ data: [{ x: CLUBS[5000][4320] }] });
    expect(textsOf(drawn)).toContain('Each dot is a piece: 400 of 5000 shown, 4 people');
    expect(picture(CLUBS[5000], 4321)).toStrictEqual(drawn);
  });

  test('the least and the greatest are among those drawn', () => {
    const losses = [...CLUBS[5000], 0.02, 0.61];
    expect(picture(losses).alt).toContain('All lie from 2.0 % to 61.0 %.');
    expect(scalesOf(picture(losses)).x).toMatchObject({ min: 0, max: 0.7 });
  });

  test('the average and the middle half, each with its figures', () => {
    expect(named(CLUBS.eight, /average 19.2 %/)?.data.map(({ x }) => x)).toEqual([
      expect.closeTo(0.19175, 9),
      expect.closeTo(0.19175, 9),
    ]);
    expect(named(CLUBS.eight, /half of the pieces: 16.9 % to 21.6 %/)?.data[0]?.x).toEqual([
      expect.closeTo(0.16925, 9),
      expect.closeTo(0.2155, 9),
    ]);
  });

  test('no middle half of fewer than four, no average of one', () => {
    expect(seriesOf(picture([0.1, 0.2, 0.3])).map(({ label }) => label)).toEqual([
      'this piece 10.0 %',
      'average 20.0 %',
      'a piece each',
    ]);
    expect(seriesOf(picture([0.1])).map(({ label }) => label)).toEqual(['this piece 10.0 %']);
  });

  test.each([
    ['gained', 3],
    ['is not there', 99],
  ])('one that %s is not marked', (_what, seq) => {
    const drawn = picture(CLUBS['gains left out'], seq);
    expect(textsOf(drawn).join()).not.toContain('this piece');
    expect(drawn.alt).not.toContain('This piece');
    expect(seriesOf(drawn)[1]?.data.length).toBe(3);
  });

  test('yields are what was kept', () => {
    expect(textsOf(picture(CLUBS.eight, 1, 'plate'))).toEqual(
      expect.arrayContaining(['82.6 %', 'on the plate', 'this piece 82.6 %', 'average 80.8 %']),
    );
  });

  test('no piece at all is an error', () => {
    expect(() => picture([-0.1])).toThrow(RangeError);
  });

  test('every text but the figure to look at first is the language’s', () => {
    const drawn = whereItStands(standingOf(CLUBS[5000]), '‹about›', bracketed(WORDS.stands), POUNDS);
    const said = [...textsOf(drawn), ...seriesOf(drawn).map(({ label }) => label)];
    expect(said.filter((text) => !/^‹.*›$/.test(text))).toEqual(['6.0 %']);
    expect(drawn.alt.replace(/‹[^›]*‹[^›]*›[^›]*›|‹[^›]*›/g, '')).toMatch(/^[. ]*$/);
  });

  test('the alt text has the same figures', () => {
    expect(picture(CLUBS.eight).alt).toBe(
      'Where it stands. Whole packer brisket, piece 1. Shares of the weight bought. This piece: 17.4 % came off. ' +
        'The average piece: 19.2 %. Half of the pieces lie from 16.9 % to 21.6 %. All lie from 14.2 % to 25.0 %. ' +
        'Each mark is a piece: 8 pieces, 4 people.',
    );
  });

  test('of any club: plain JSON, dots apart, an alt text that the platform takes', () => {
    const losses = fc.array(fc.double({ min: 0, max: 0.9, noNaN: true }), { minLength: 1, maxLength: 120 });
    const about = fc.string({ maxLength: 400, unit: 'grapheme' });
    fc.assert(
      fc.property(losses, about, (some, line) => {
        const drawn = picture(some, 1, 'trim', line);
        expect(JSON.parse(JSON.stringify(drawn))).toStrictEqual(drawn);
        expect(drawn.alt.length).toBeLessThanOrEqual(1024);
        const dots = seriesOf(drawn).find(({ label }) => label === 'a piece each');
        expect(dots === undefined || apart(drawn, dots)).toBe(true);
      }),
    );
  });
});
