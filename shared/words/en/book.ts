/** Published figures beside a club's own. */
import type { Show } from '../../measure/show.ts';
import type { Unlike } from '../../trade/beside-book.ts';
import { BOOK_SOURCES, type BookMeasure, type BookSource, type HowCooked } from '../../trade/book.ts';
import type { Bone } from '../../trade/keys.ts';
import { OF_PIECE } from './measures.ts';
import { BONES } from './trade.ts';

/** As they are cited; in full in METHODS.md and under `/help topic:figures`. */
const SHORT: Record<BookSource, string> = {
  'cooking-yields': 'USDA Cooking Yields',
  'standard-reference': 'USDA SR28',
  'buying-guide': 'USDA Food Buying Guide',
};

/** Of a raw piece: what its share is. */
const OFF_RAW: Partial<Record<Unlike, string>> = {
  'to-lean': 'off, down to the lean meat',
  'bone-after': 'off as bone, skin or fat',
};

const UNLIKE: Partial<Record<Unlike, string>> = {
  portions: 'cut in steaks or chops',
  part: 'a part of this cut',
  'several-cuts': 'several cuts together',
};

/** Table figures are in inches: 0 or 1/8. */
const fatLeft = (show: Show, inches: number): string =>
  inches === 0
    ? 'no outer fat left on'
    : show.form.units === 'lb'
      ? `1/${show.count(1 / inches)} in of fat left on`
      : `${show.count(inches * 25.4)} mm of fat left on`;

interface BookWords {
  measure: BookMeasure;
  share: number;
  cooked: HowCooked;
  fatInches: number | null;
  bone: Bone | null;
  source: BookSource;
}

const how = (show: Show, { cooked, fatInches, bone }: BookWords): string[] => [
  ...(cooked === 'raw' ? [] : [cooked]),
  ...(bone === null ? [] : [BONES[bone]]),
  ...(fatInches === null ? [] : [fatLeft(show, fatInches)]),
];

export const book = (show: Show) => ({
  comparable: (of: BookWords) =>
    `The book: ${[`${show.share(of.share)} ${OF_PIECE[of.measure]}`, ...how(show, of)].join(', ')} (${SHORT[of.source]}).`,
  notComparable: ({ unlike, ...of }: BookWords & { unlike: Unlike }) => {
    const off = OFF_RAW[unlike];
    const why = UNLIKE[unlike];
    const what =
      off === undefined
        ? [`${show.share(of.share)} ${OF_PIECE[of.measure]}`, ...how(show, of), ...(why ? [why] : [])].join(
            ', ',
          )
        : `${show.share(of.share)} of the raw piece ${off}`;
    return `The book has ${what} (${SHORT[of.source]}): not comparable.`;
  },
  /** The tables in full, one a source. */
  sources: (): readonly string[] =>
    Object.entries(BOOK_SOURCES).map(
      ([source, { title, publisher, year }]) =>
        `${SHORT[source as BookSource]}: ${publisher}, ${title}, ${String(year)}.`,
    ),
});
