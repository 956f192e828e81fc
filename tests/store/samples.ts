/** Clubs and pieces for the store's tests. */
import fc from 'fast-check';
import type { Club } from '../../shared/club/club.ts';
import type { ImportedPiece, NewPiece } from '../../shared/club/piece.ts';
import type { CalendarDay } from '../../shared/measure/day.ts';
import type { Currency } from '../../shared/measure/money.ts';
import { NANOGRAMS, type Nanograms } from '../../shared/measure/units.ts';
import type { CutKey, GradeKey, StyleKey } from '../../shared/trade/keys.ts';

export const BRISKET = 'beef/brisket-whole' as CutKey;
export const BUTT = 'pork/butt' as CutKey;
export const NOON = Date.UTC(2026, 6, 4, 12);

export const lb = (pounds: number) => Math.round(pounds * NANOGRAMS.lb) as Nanograms;

export const sampleClub = (id: string, settings: Partial<Club> = {}): Club => ({
  id,
  zone: 'America/Chicago',
  currency: 'USD' as Currency,
  locale: 'en-US',
  units: 'lb',
  gradeCountry: 'US',
  margin: 0.02,
  scaleError: 0.02,
  seasonStart: 1,
  welcomedAt: null,
  ...settings,
});

export const samplePiece = (id: string, told: Partial<NewPiece> = {}): NewPiece => ({
  id,
  member: 'ines',
  postedAt: NOON,
  day: '2026-07-04' as CalendarDay,
  cut: BRISKET,
  grade: null,
  style: null,
  bone: null,
  wrap: null,
  shop: null,
  note: null,
  pieces: 1,
  bought: lb(14.8),
  bagged: null,
  trim: null,
  left: null,
  added: null,
  cooked: null,
  scraps: null,
  served: null,
  saved: [],
  price: null,
  pumped: false,
  approximate: false,
  typed: { bought: '14.8 lb' },
  ...told,
});

/** The same as it comes in a table: with what was settled about it. */
export const importedPiece = (id: string, told: Partial<ImportedPiece> = {}): ImportedPiece => ({
  ...samplePiece(id),
  confirmedAt: null,
  setAsideAt: null,
  setAsideWhy: null,
  ...told,
});

const weight = (least: number, most: number): fc.Arbitrary<Nanograms> =>
  fc.integer({ min: least, max: most }).map((ng) => ng as Nanograms);
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const text = fc.string({ unit: 'grapheme', maxLength: 20 });
const MOST = 9_000_000 * NANOGRAMS.g;

const price = fc.record({
  amount: fc.nat(),
  basis: fc.constantFrom('lb' as const, 'oz' as const, 'kg' as const, '100g' as const, 'all' as const),
  currency: fc.constantFrom('USD' as Currency, 'EUR' as Currency),
  text,
});

/** All that a member can tell, in any combination. */
export const toldArbitrary: fc.Arbitrary<Partial<NewPiece>> = fc.record({
  member: fc.constantFrom('ines', 'juri', 'oona'),
  postedAt: fc.integer({ min: 0, max: 4e12 }),
  day: fc.constantFrom('2026-06-30' as CalendarDay, '2026-07-01' as CalendarDay, '2027-01-02' as CalendarDay),
  cut: fc.constantFrom(BRISKET, BUTT),
  grade: maybe(fc.constantFrom('usda/choice' as GradeKey, 'usda/prime' as GradeKey)),
  style: maybe(fc.constant('brisket/thick' as StyleKey)),
  bone: maybe(fc.constantFrom('in' as const, 'out' as const)),
  wrap: maybe(fc.constantFrom('none' as const, 'paper' as const)),
  shop: maybe(fc.constantFrom('north', 'south', 'Ost', 'west')),
  note: maybe(text),
  pumped: fc.boolean(),
  pieces: fc.integer({ min: 1, max: 12 }),
  bought: weight(1, MOST),
  bagged: maybe(weight(0, MOST)),
  trim: maybe(weight(0, MOST)),
  left: maybe(weight(0, MOST)),
  added: maybe(weight(0, MOST)),
  cooked: maybe(weight(0, MOST)),
  scraps: maybe(weight(0, MOST)),
  served: maybe(weight(0, MOST)),
  saved: fc.array(fc.record({ name: text, weight: weight(0, MOST), price: maybe(price) }), { maxLength: 2 }),
  price: maybe(price),
  approximate: fc.boolean(),
  typed: fc.dictionary(fc.constantFrom('bought', 'trim', 'left'), text),
});
