import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Ask, MemberError } from '../../../shared/errors.ts';
import {
  addDays,
  type CalendarDay,
  calendarDay,
  dayAt,
  dayNumber,
  isZone,
  timeAt,
} from '../../../shared/measure/day.ts';
import { readDay } from '../../../shared/measure/read-day.ts';
import { outcome, waysOf } from './reading.ts';

/** A Tuesday. */
const TODAY = '2026-07-07' as CalendarDay;
const reader = (decimalMark: '.' | ',', today = TODAY) => ({ option: 'date', today, decimalMark });
const dated = (text: string, mark: '.' | ',') => outcome(() => readDay(text, reader(mark)));

describe('a day that reads one way only', () => {
  test.each([
    ['2026-07-04', '.', '2026-07-04'],
    ['2026-7-4', '.', '2026-07-04'],
    ['2026/07/04', ',', '2026-07-04'],
    ['1970-01-01', '.', '1970-01-01'],
    ['today', '.', '2026-07-07'],
    ['Heute', ',', '2026-07-07'],
    ['hoy', ',', '2026-07-07'],
    ['yesterday', '.', '2026-07-06'],
    ['gestern', ',', '2026-07-06'],
    ['ayer', ',', '2026-07-06'],
    ['vorgestern', ',', '2026-07-05'],
    ['4 July', '.', '2026-07-04'],
    ['July 4', '.', '2026-07-04'],
    ['JULY 4th', '.', '2026-07-04'],
    ['the 4th of July', '.', '2026-07-04'],
    ['Jul 4 2026', '.', '2026-07-04'],
    ['July 4, 2026', '.', '2026-07-04'],
    ['2026 July 4', '.', '2026-07-04'],
    ['4. Juli 2026', ',', '2026-07-04'],
    ['4. März', ',', '2026-03-04'],
    ['4. Jän. 2026', ',', '2026-01-04'],
    ['4 de julio de 2026', ',', '2026-07-04'],
    ['4 ene', ',', '2026-01-04'],
    ['4 mar', ',', '2026-03-04'],
    ['8 July', '.', '2025-07-08'],
    ['7 July', '.', '2026-07-07'],
    ['31 December', '.', '2025-12-31'],
    ['29 Feb', '.', '2024-02-29'],
    ['4.7.2026', ',', '2026-07-04'],
    ['4. 7. 2026', ',', '2026-07-04'],
    ['4.7.26', ',', '2026-07-04'],
    ['4.7.', ',', '2026-07-04'],
    ['4.7.', '.', '2026-07-04'],
    ['4.7', ',', '2026-07-04'],
    ['13/4', '.', '2026-04-13'],
    ['4/13', '.', '2026-04-13'],
    ['4/13/2026', ',', '2026-04-13'],
    ['7/7', '.', '2026-07-07'],
    // 6 August is still to come, so 8 June is all it can be.
    ['6/8/2026', ',', '2026-06-08'],
    ['Tuesday', '.', '2026-07-07'],
    ['Sat', '.', '2026-07-04'],
    ['Samstag', ',', '2026-07-04'],
    ['sábado', ',', '2026-07-04'],
    ['Mo', ',', '2026-07-06'],
    ['miércoles', ',', '2026-07-01'],
    ['２０２６-07-04', '.', '2026-07-04'],
  ] as const)('%j (%s) is %s', (text, mark, day) => {
    expect(dated(text, mark)).toBe(day);
  });
});

describe('a day that two careful people could read differently', () => {
  test.each([
    ['7/4', '.', ['2026-07-04', '2026-04-07']],
    ['7/4', ',', ['2026-04-07', '2026-07-04']],
    ['7/4/2026', '.', ['2026-07-04', '2026-04-07']],
    ['4.7.2026', '.', ['2026-04-07', '2026-07-04']],
    ['7-4', '.', ['2026-07-04', '2026-04-07']],
    ['12/1', '.', ['2025-12-01', '2026-01-12']],
    ['04-07-26', '.', ['2026-04-07', '2026-07-04', '2004-07-26']],
  ] as const)('%j (%s) asks', (text, mark, days) => {
    const ask = dated(text, mark);
    expect(ask).toBeInstanceOf(Ask);
    if (!(ask instanceof Ask)) return;
    expect(ask.code).toBe('which-day');
    expect(waysOf(ask, 'date')).toEqual(days);
  });
});

describe('a text that is no day', () => {
  test.each([
    ['', 'day-unreadable'],
    ['soon', 'day-unreadable'],
    ['4', 'day-unreadable'],
    ['July', 'day-unreadable'],
    ['son', 'day-unreadable'],
    ['4 July July', 'day-unreadable'],
    ['1/2/3', 'day-unreadable'],
    ['x'.repeat(61), 'day-unreadable'],
    ['30 February', 'day-not-there'],
    ['2026-02-29', 'day-not-there'],
    ['13/13', 'day-not-there'],
    ['0/0', 'day-not-there'],
    ['2026-07-08', 'day-ahead'],
    ['4 Sept 2026', 'day-ahead'],
    ['7/9/2026', 'day-ahead'],
    ['1969-12-31', 'day-too-old'],
  ])('%j is refused: %s', (text, code) => {
    expect(dated(text, '.')).toBeInstanceOf(MemberError);
    expect(dated(text, '.')).toMatchObject({ code });
  });

  const pieces = fc.constantFrom(
    ...'4 7 13 31 26 2026 1969 0 / . - , jul marz of de th sat heute'.split(' '),
    ' ',
  );
  const anyText = fc.oneof(
    fc.string({ unit: 'grapheme', maxLength: 70 }),
    fc.array(pieces, { maxLength: 7 }).map((all) => all.join('')),
  );
  test('every text ends with a day up to today, a question whose readings read, or a refusal', () => {
    fc.assert(
      fc.property(anyText, fc.constantFrom('.', ','), (text, mark) => {
        const result = dated(text, mark);
        if (result instanceof MemberError) return;
        const days = result instanceof Ask ? waysOf(result, 'date') : [result];
        expect(new Set(days).size).toBe(days.length);
        for (const day of days) {
          expect(day >= '1970-01-01' && day <= TODAY).toBe(true);
          expect(readDay(day, reader(mark))).toBe(day);
        }
      }),
      { numRuns: 3000 },
    );
  });
});

describe('calendar arithmetic', () => {
  test('counts days over leap days and ends of years', () => {
    expect(addDays('2024-03-01' as CalendarDay, -1)).toBe('2024-02-29');
    expect(addDays('2025-12-31' as CalendarDay, 1)).toBe('2026-01-01');
    expect(dayNumber('2024-03-01' as CalendarDay) - dayNumber('2024-02-28' as CalendarDay)).toBe(2);
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 20_000 }), (count) => {
        expect(dayNumber(addDays(TODAY, count)) - dayNumber(TODAY)).toBe(count);
      }),
    );
  });

  test('knows which days there are', () => {
    expect(calendarDay(2026, 7, 4)).toBe('2026-07-04');
    expect([calendarDay(2026, 2, 30), calendarDay(2026, 13, 1), calendarDay(2026, 0, 1)]).toEqual([
      null,
      null,
      null,
    ]);
    expect([calendarDay(26, 7, 4), calendarDay(10_000, 1, 1), calendarDay(Number.NaN, 1, 1)]).toEqual([
      null,
      null,
      null,
    ]);
  });

  test.each([
    ['2026-07-04T23:30:00Z', 'UTC', '2026-07-04'],
    ['2026-07-04T23:30:00Z', 'Europe/Berlin', '2026-07-05'],
    ['2026-07-04T03:30:00Z', 'America/Chicago', '2026-07-03'],
    ['2026-07-04T20:00:00Z', 'Asia/Kolkata', '2026-07-05'],
    ['2026-07-04T23:30:00Z', 'Mars/North', '2026-07-04'],
    ['2026-07-04T23:30:00Z', '', '2026-07-04'],
    ['1999-12-31T23:59:59Z', 'UTC', '1999-12-31'],
  ])('at %s it is, in %j, %s', (time, zone, day) => {
    expect(dayAt(Date.parse(time), zone)).toBe(day);
  });

  test('tells zones from other texts', () => {
    expect([isZone('Europe/Kyiv'), isZone('UTC'), isZone('Mars/North'), isZone('')]).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });
});

describe('an hour of a day in a zone', () => {
  // The offsets are those of the IANA time zone database.
  test.each([
    ['2026-07-05', 9, 'America/Chicago', '2026-07-05T14:00:00Z'],
    ['2026-01-05', 9, 'America/Chicago', '2026-01-05T15:00:00Z'],
    ['2026-07-05', 9, 'Europe/Berlin', '2026-07-05T07:00:00Z'],
    ['2026-03-29', 9, 'Europe/Berlin', '2026-03-29T07:00:00Z'],
    ['2026-10-25', 9, 'Europe/Berlin', '2026-10-25T08:00:00Z'],
    ['2026-07-05', 9, 'Asia/Kolkata', '2026-07-05T03:30:00Z'],
    ['2026-07-05', 9, 'Mars/North', '2026-07-05T09:00:00Z'],
  ])('%s %d:00 in %s', (day, hour, zone, expected) => {
    expect(timeAt(day as CalendarDay, hour, zone)).toBe(Date.parse(expected));
  });

  test('is on that day in that zone', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 20_000 }),
        fc.integer({ min: 4, max: 22 }),
        fc.constantFrom('America/Chicago', 'Europe/Berlin', 'Asia/Kolkata', 'Pacific/Auckland'),
        (days, hour, zone) => {
          const day = addDays('1980-01-01' as CalendarDay, days);
          expect(dayAt(timeAt(day, hour, zone), zone)).toBe(day);
        },
      ),
    );
  });
});
