import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SEASONS, seasonBefore, seasonOf, spanOf, yearTo } from '../../../shared/club/season.ts';
import { addDays, type CalendarDay, dayNumber } from '../../../shared/measure/day.ts';

const day = (text: string) => text as CalendarDay;

describe('a season', () => {
  test.each([
    ['2026-07-04', 1, '2026-01-01', '2026-12-31'],
    ['2026-01-01', 1, '2026-01-01', '2026-12-31'],
    ['2026-12-31', 1, '2026-01-01', '2026-12-31'],
    ['2026-02-10', 4, '2025-04-01', '2026-03-31'],
    ['2026-03-31', 4, '2025-04-01', '2026-03-31'],
    ['2026-04-01', 4, '2026-04-01', '2027-03-31'],
    ['2026-11-30', 12, '2025-12-01', '2026-11-30'],
    ['2028-02-29', 3, '2027-03-01', '2028-02-29'],
  ])('%s, where it starts in month %i: from %s to %s', (today, start, from, to) => {
    expect(seasonOf(day(today), start)).toEqual({ from, to });
  });

  test('follows the one before without a gap, and holds its day', () => {
    const days = fc.integer({ min: 0, max: 40_000 }).map((count) => addDays(day('1970-01-01'), count));
    fc.assert(
      fc.property(days, fc.integer({ min: 1, max: 12 }), (today, start) => {
        const { from, to } = seasonOf(today, start);
        expect(from <= today && today <= to).toBe(true);
        expect(Number(from.slice(5, 7))).toBe(start);
        expect([364, 365]).toContain(dayNumber(to) - dayNumber(from));
        expect(addDays(seasonBefore(today, start).to, 1)).toBe(from);
        expect(seasonBefore(today, start)).toEqual(seasonOf(addDays(from, -1), start));
      }),
    );
  });
});

test.each([
  ['2026-07-04', '2025-07-05'],
  ['2026-01-01', '2025-01-02'],
  ['2028-02-29', '2027-03-01'],
  ['2027-02-28', '2026-03-01'],
])('the twelve months up to %s are from %s', (today, from) => {
  expect(yearTo(day(today))).toEqual({ from, to: today });
});

test('each choice has its span', () => {
  const today = day('2026-07-04');
  expect(SEASONS.map((season) => spanOf(season, today, 4))).toEqual([
    { from: '2026-04-01', to: '2027-03-31' },
    { from: '2025-04-01', to: '2026-03-31' },
    { from: '2025-07-05', to: '2026-07-04' },
    { from: null, to: null },
  ]);
});
