/** What published tables say of a cut: what it keeps in the heat, what is trimmed or refused, what is served. */
import { type BookRow, FROM_TABLES } from './book-rows.ts';
import type { Cut } from './cut.ts';
import type { CutKey } from './keys.ts';

/** The measures of a piece that a table can speak of: what came off raw, and three yields. */
export type BookMeasure = 'trim' | 'cooking' | 'carving' | 'plate';

/** The tables that are cited. */
export type BookSource = 'cooking-yields' | 'standard-reference' | 'buying-guide';

/** Title, publisher and year of each table. All three are works of the US government, in the public domain. */
export const BOOK_SOURCES: Readonly<Record<BookSource, { title: string; publisher: string; year: number }>> =
  {
    'cooking-yields': {
      title: 'Table of Cooking Yields for Meat and Poultry, Release 2',
      publisher: 'USDA Agricultural Research Service',
      year: 2014,
    },
    'standard-reference': {
      title: 'National Nutrient Database for Standard Reference, Release 28',
      publisher: 'USDA Agricultural Research Service',
      year: 2015,
    },
    'buying-guide': {
      title: 'Food Buying Guide for Child Nutrition Programs',
      publisher: 'USDA Food and Nutrition Service',
      year: 2001,
    },
  };

/** How the meat of a table was cooked; `raw` where its figure is of raw meat. */
export type HowCooked = 'raw' | 'braised' | 'roasted' | 'grilled' | 'broiled';

/**
 * Why a figure can't stand beside a club's own:
 * - `to-lean`: all separable fat is off, more than any cook trims;
 * - `bone-after`: bone, skin or fat that a club takes off after the fire, if at all, counted in the raw piece;
 * - `portions`: cut in steaks or chops before it was cooked;
 * - `part`: only a part of this cut;
 * - `several-cuts`: one figure for several cuts together.
 */
export type NotComparable = 'to-lean' | 'bone-after' | 'portions' | 'part' | 'several-cuts';

/** One published figure. */
export interface BookFigure {
  cut: CutKey;
  measure: BookMeasure;
  /**
   * `kept`: what is left, of what there was. `lost`: what came off or was refused. Of the raw weight, but for
   * `carving`, which is of the cooked weight.
   */
  tells: 'kept' | 'lost';
  /** As printed, 0 to 100. */
  percent: number;
  /** Pieces behind the figure; null where the table does not say. */
  pieces: number | null;
  /** Standard deviation in points; null where the table has none. */
  deviation: number | null;
  /** Smallest and largest percent; null where the table has none. */
  range: readonly [low: number, high: number] | null;
  cooked: HowCooked;
  /** Fat left on the raw piece, in inches; null where the table does not say. */
  fatInches: number | null;
  bone: 'in' | 'out' | null;
  source: BookSource;
  /** The table's row, as five digits (`ndb number`); null where it has none or it was not at hand. */
  row: string | null;
  /** When it was measured or last published there; null where the table does not say. */
  year: number | null;
  /** Why it can't stand beside a club's own figures; null where it can, told with how it was cooked. */
  notComparable: NotComparable | null;
}

const figure = ({ cut, measure, percent, row, source, ...rest }: BookRow): BookFigure => ({
  cut: cut as CutKey,
  measure,
  percent,
  row,
  source,
  tells: rest.tells ?? 'kept',
  pieces: rest.pieces ?? null,
  deviation: rest.deviation ?? null,
  range: rest.range ?? null,
  cooked: rest.cooked ?? 'raw',
  fatInches: rest.fatInches ?? null,
  bone: rest.bone ?? null,
  year: rest.year ?? null,
  notComparable: rest.notComparable ?? null,
});

/** Every figure, by cut. */
export const BOOK: readonly BookFigure[] = FROM_TABLES.map(figure);

/**
 * What published tables say of a cut in one measure: those that can stand beside a club's own first, and among them
 * those of most pieces. Empty where no table has it.
 *
 * @example bookFor(cutOf('beef/tri-tip' as CutKey), 'cooking')[0]?.percent // 84
 */
export const bookFor = ({ key }: Pick<Cut, 'key'>, measure: BookMeasure): readonly BookFigure[] =>
  BOOK.filter((one) => one.cut === key && one.measure === measure).toSorted(
    (one, other) =>
      Number(one.notComparable !== null) - Number(other.notComparable !== null) ||
      (other.pieces ?? 0) - (one.pieces ?? 0),
  );
