/** Questions about a part of a text, asked about the whole text. */
import { Ask, type Reading } from '../errors.ts';

/**
 * The same question, whose readings write the whole text with what was taken for the part in its place.
 * @param place from what a reading takes the part for to the whole text
 * @example placedIn(ask, (taken) => `tallow ${taken} @3`) // a reading of `2-9` writes `tallow 2 lb 9 oz @3`
 */
export const placedIn = ({ code, values, readings }: Ask, place: (taken: string) => string): Ask =>
  new Ask(
    code,
    values,
    readings.map((reading): Reading => {
      const set = Object.entries(reading.set).map(([option, taken]) => [
        option,
        typeof taken === 'string' ? place(taken) : taken,
      ]);
      return { ...reading, set: Object.fromEntries(set) };
    }),
  );
