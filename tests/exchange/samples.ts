/** Tables and pieces for the tests of import and export. */
import fc from 'fast-check';
import type { Club } from '../../shared/club/club.ts';
import type { ImportedPiece } from '../../shared/club/piece.ts';
import type { ClubStore } from '../../shared/club/store.ts';
import { addDays, type CalendarDay } from '../../shared/measure/day.ts';
import type { Currency, Price } from '../../shared/measure/money.ts';
import { shows } from '../../shared/measure/show.ts';
import type { Nanograms } from '../../shared/measure/units.ts';
import { CUTS } from '../../shared/trade/cuts.ts';
import { ALL_GRADES } from '../../shared/trade/grades.ts';
import type { CutKey, StyleKey } from '../../shared/trade/keys.ts';
import { oneLine } from '../../shared/words/quote.ts';
import { WEIGHT_NAMES } from '../../shared/yield/piece.ts';
import { exportCsv } from '../../src/exchange/export.ts';
import { CHAT_LIMITS } from '../../src/exchange/limits.ts';
import { readTable, type Table, type TableSettings } from '../../src/exchange/read-table.ts';
import { possiblePieces } from '../shared/yield/samples.ts';
import { NOON, sampleClub } from '../store/samples.ts';

export const settings = (club: Partial<Club> = {}, told: Partial<TableSettings> = {}): TableSettings => ({
  club: sampleClub('a', club),
  now: NOON,
  member: 'ines',
  limits: CHAT_LIMITS,
  ...told,
});

export const bytes = (text: string): Uint8Array[] => [Buffer.from(text)];

export const read = (
  text: string,
  club: Partial<Club> = {},
  told: Partial<TableSettings> = {},
): Promise<Table> => readTable(bytes(text), settings(club, told));

export async function exported(store: ClubStore): Promise<string> {
  let text = '';
  for await (const part of exportCsv(store)) text += part;
  return text;
}

/** As it is kept: on one line, something to see, and no dash, which takes a text back. */
const keptText = (most: number) =>
  fc
    .oneof(
      fc.string({ unit: 'grapheme', maxLength: 20 }),
      fc
        .tuple(
          fc.constantFrom('', "'", "''"),
          fc.constantFrom('=', '+', '-', '@', '＝', '"', ',', ';', '1e5', '20000000000000000001', 'Ñu'),
          fc.string({ maxLength: 12 }),
        )
        .map((parts) => parts.join('')),
    )
    .map((text) => oneLine(text).slice(0, most))
    .map(oneLine)
    .filter((text) => text !== '' && text !== '-');

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });

const price: fc.Arbitrary<Price> = fc.record({
  amount: fc.integer({ min: 0, max: 10_000_000 }),
  basis: fc.constantFrom('lb' as const, 'oz' as const, 'kg' as const, '100g' as const, 'all' as const),
  currency: fc.constantFrom('USD', 'EUR', 'JPY', 'GBP').map((code) => code as Currency),
  text: fc.constantFrom('4.99/lb', '@ 4.99', '4,99 €/kg', '77.96 in all', '$1,234', 'x', ''),
});

const saved = fc.record({
  name: fc.constantFrom('tallow', 'grind', "cook's treat", 'suelo de cocción'),
  weight: fc.integer({ min: 0, max: 1_000_000 }).map((weight) => weight as Nanograms),
  price: maybe(price.map((one) => (one.basis === 'all' ? { ...one, basis: 'kg' as const } : one))),
});

/** What a member may have typed for a weight: it need not be what it was read as, pans and habits being theirs. */
const typedWeight = (weight: Nanograms | null): fc.Arbitrary<string | undefined> => {
  const forms = (['lb', 'lb-oz', 'kg', 'g', 'oz'] as const).flatMap((form) =>
    ['en-US', 'de'].map((locale) =>
      shows({ locale, units: 'lb' }).weightIn(weight ?? (0 as Nanograms), form),
    ),
  );
  const grams = (weight ?? 0) / 1e9;
  return fc.constantFrom(
    undefined,
    ...forms,
    ...forms.map((text) => `about ${text}`),
    `${grams} g`,
    `+${grams} g`,
    `  ${grams} g `,
    '14.8',
    '2:9.4',
    '3 lb 2 oz - blue pan',
    `${grams / 1000} kg`,
    '1,234 kg',
    '8 lb + 7 lb',
  );
};

/** Cuts of a club's own, which one that takes its table must have too. */
export const OWN_CUTS = ['own/pork/schäufele', "own/beef/butcher's-plate"].map((key) => key as CutKey);

/** Whatever a club can have. */
export const keptPieces: fc.Arbitrary<ImportedPiece[]> = fc
  .array(
    possiblePieces.chain((weighed) =>
      fc.record({
        weighed: fc.constant(weighed),
        typed: fc.record(Object.fromEntries(WEIGHT_NAMES.map((name) => [name, typedWeight(weighed[name])]))),
        rest: fc.record({
          member: fc.constantFrom('ines', 'juri', '100000000000000042'),
          day: fc.nat({ max: 900 }).map((back) => addDays('2026-07-04' as CalendarDay, -back)),
          cut: fc.constantFrom(...CUTS.map(({ key }) => key), ...OWN_CUTS),
          grade: maybe(fc.constantFrom(...ALL_GRADES)),
          style: maybe(fc.constantFrom('brisket/thick' as StyleKey, 'ribs/squared' as StyleKey)),
          bone: maybe(fc.constantFrom('in' as const, 'out' as const)),
          wrap: maybe(fc.constantFrom('none' as const, 'paper' as const, 'foil' as const, 'boat' as const)),
          shop: maybe(keptText(60)),
          note: maybe(keptText(300)),
          pumped: fc.boolean(),
          approximate: fc.boolean(),
          saved: fc.array(saved, { maxLength: 2 }),
          price: maybe(price),
          confirmedAt: maybe(fc.constant(NOON)),
          aside: fc.boolean(),
          setAsideWhy: maybe(keptText(60)),
        }),
      }),
    ),
    { maxLength: 12 },
  )
  .map((all) =>
    all.map(({ weighed, typed, rest: { aside, setAsideWhy, ...rest } }, at) => {
      const texts = Object.entries(typed).flatMap(([name, text]) =>
        text === undefined ? [] : [[name, text]],
      );
      const parts = weighed.trim === null && weighed.left === null ? rest.saved : [];
      return {
        ...weighed,
        ...rest,
        saved: parts,
        id: at % 2 === 0 ? `10000000000000${at + 1000}` : `r${at}-_x`,
        postedAt: NOON,
        typed: { ...Object.fromEntries(texts), saved: 'tallow 1 lb' },
        setAsideAt: aside ? NOON : null,
        setAsideWhy: aside ? setAsideWhy : null,
      };
    }),
  );
