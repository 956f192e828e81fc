import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { totalsOf } from '../../../shared/club/totals.ts';
import { addDays, type CalendarDay, dayNumber } from '../../../shared/measure/day.ts';
import type { Currency } from '../../../shared/measure/money.ts';
import type { Nanograms } from '../../../shared/measure/units.ts';
import { type SeasonCard, seasonCardOf } from '../../../shared/pictures/season.ts';
import type { Dot } from '../../../shared/pictures/season-strip.ts';
import { lb } from '../../store/samples.ts';
import { bracketed, POUNDS, seriesOf, textsOf, WORDS } from './clubs.ts';

const day = (text: string) => text as CalendarDay;
const NOTHING = totalsOf([], 'USD' as Currency);
const dollars = (amount: number) => ({
  numerator: BigInt(amount),
  denominator: 1n,
  currency: 'USD' as Currency,
});
const DOTS: readonly Dot[] = [
  { day: day('2026-01-10'), share: 0.45, best: false },
  { day: day('2026-05-23'), share: 0.52, best: true },
  { day: day('2026-06-20'), share: 0.48, best: false },
];
const YEAR = { from: day('2026-01-01'), to: day('2026-12-31') };
const CARD: SeasonCard = {
  season: 'season',
  span: YEAR,
  time: YEAR,
  measure: 'plate',
  dots: DOTS,
  totals: {
    ...NOTHING,
    pieces: 4,
    bought: lb(50),
    trim: { weight: lb(8), of: lb(50), pieces: 4 },
    plate: { weight: lb(18), of: lb(40), pieces: 3 },
    saved: { weight: lb(2), worth: dollars(6) },
    paid: dollars(200),
    plateCost: { cost: dollars(180), weight: lb(18) },
  },
};
const picture = (more: Partial<SeasonCard> = {}) => seasonCardOf({ ...CARD, ...more }, WORDS.season, POUNDS);

describe('a season on a card', () => {
  test('has large figures, the rest in lines, and the pieces by month', () => {
    expect(textsOf(picture())).toEqual([
      'This season',
      'Jan 1, 2026 to Dec 31, 2026',
      '45.0 %',
      'on the plate',
      '4',
      'pieces',
      '$200.00',
      'paid',
      '50 lb',
      'bought',
      '18 lb',
      'on the plate, of 3 pieces',
      '8 lb came off raw, 16.0 %',
      '2 lb of it saved, worth $6.00',
      '$10.00 a pound on the plate',
      'Each dot is a piece: on the plate',
      'best 52.0 %',
      ...['42 %', '44 %', '46 %', '48 %', '50 %', '52 %', '54 %'],
      ...['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
    ]);
  });

  test('marks the best one by shape, size and a word', () => {
    expect(seriesOf(picture())).toMatchObject([
      { label: 'best 52.0 %', pointStyle: 'rectRot', data: [{ x: dayNumber(day('2026-05-23')), y: 0.52 }] },
      { label: 'pieces', data: [{ y: 0.45 }, { y: 0.48 }] },
    ]);
  });

  test.each([
    ['fourteen months', '2025-05-20', '2026-06-10', ['Jun', 'Jul', 'May']],
    ['some years', '2022-03-01', '2026-06-10', ['2023', '2026']],
    ['many years', '1996-03-01', '2026-06-10', ['1998', '2025']],
  ])('%s are told by month or by year', (_name, from, to, some) => {
    const texts = textsOf(picture({ time: { from: day(from), to: day(to) } }));
    for (const text of some.slice(0, -1)) expect(texts).toContain(text);
    expect(texts.filter((text) => /^(\d{4}|[A-Z][a-z]{2})$/.test(text)).length).toBeLessThanOrEqual(14);
  });

  test('tells what there is, and no more', () => {
    const bare = picture({ totals: { ...NOTHING, pieces: 1, bought: lb(12) }, dots: [] });
    expect(textsOf(bare)).toEqual([
      'This season',
      'Jan 1, 2026 to Dec 31, 2026',
      '1',
      'piece',
      '12 lb',
      'bought',
    ]);
    expect(seriesOf(bare)).toEqual([]);
    expect(bare.alt).toBe('This season, Jan 1, 2026 to Dec 31, 2026. 1 piece, 12 lb bought.');
  });

  test('the alt text has the same figures', () => {
    expect(picture().alt).toBe(
      'This season, Jan 1, 2026 to Dec 31, 2026. 4 pieces, 50 lb bought. 18 lb on the plate, 45.0 %. ' +
        '8 lb came off raw, 16.0 %. 2 lb of it saved, worth $6.00. $10.00 a pound on the plate. $200.00 paid. ' +
        '3 pieces from 45.0 % to 52.0 %. Each dot is a piece: on the plate, best 52.0 %.',
    );
  });

  test('every text but the large figures is the language’s', () => {
    const drawn = seasonCardOf(CARD, bracketed(WORDS.season), POUNDS);
    const said = [...textsOf(drawn), ...seriesOf(drawn).map(({ label }) => label)];
    expect(said.filter((text) => !/^‹.*›$/.test(text))).toEqual(['45.0 %', '4', '$200.00', '50 lb', '18 lb']);
  });

  test('of any pieces: plain JSON, at most 400 marks, an alt text that the platform takes', () => {
    const dots = fc.array(
      fc.record({
        day: fc.nat({ max: 364 }).map((count) => addDays(YEAR.from, count)),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      { maxLength: 900, size: 'max' },
    );
    fc.assert(
      fc.property(dots, fc.nat({ max: 9e15 }), fc.constantFrom('plate', 'trim'), (some, bought, measure) => {
        const drawn = picture({
          measure,
          dots: some.map((dot, at) => ({ ...dot, best: at === 0 })),
          totals: { ...CARD.totals, bought: bought as Nanograms },
        });
        expect(JSON.parse(JSON.stringify(drawn))).toStrictEqual(drawn);
        expect(drawn.alt.length).toBeLessThanOrEqual(1024);
        expect(seriesOf(drawn).flatMap(({ data }) => data).length).toBe(Math.min(400, some.length));
      }),
      { numRuns: 30 },
    );
  });
});
