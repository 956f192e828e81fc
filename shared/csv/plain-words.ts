/** Words of a column's name or of a value without what should not matter in them. */

const MARKS = /\p{Mark}/gu;
const UMLAUTS: Readonly<Record<string, string>> = { ä: 'ae', ö: 'oe', ü: 'ue' };

/**
 * Lower case, without accents, one spelling for what looks alike.
 * @example foldLetters('Größe') // 'grosse'
 */
export const foldLetters = (text: string): string =>
  text.normalize('NFKD').replace(MARKS, '').replaceAll('ß', 'ss').toLowerCase();

/**
 * The words of a text, parted by single spaces.
 * @example plainWords('Güte-Klasse (neu)') // 'gute klasse neu'
 */
export const plainWords = (text: string): string =>
  foldLetters(text)
    .replace(/[^\p{Letter}\p{Number}]+/gu, ' ')
    .trim();

/**
 * Each name as it may be typed: `Stück` also as `Stueck`.
 * @example spellings('Stück, Anzahl') // ['stuck', 'stueck', 'anzahl']
 */
export function spellings(names: string): readonly string[] {
  const typed = names.split(', ').flatMap((name) => {
    const lower = name.toLowerCase().normalize('NFC');
    return [lower, lower.replace(/[äöü]/g, (letter) => UMLAUTS[letter] ?? letter)];
  });
  return [...new Set(typed.map(plainWords))];
}

/** Finds the value that a text names; null where it names none. */
export type ValueFinder<Value extends string> = (text: string) => Value | null;

/**
 * A finder for values with the names that each has, parted by `, `.
 * @example valueFinder(BONES)('Bone-in') // 'in'
 */
export function valueFinder<Value extends string>(
  names: Readonly<Record<Value, string>>,
): ValueFinder<Value> {
  const values = Object.keys(names) as Value[];
  const index = new Map(values.flatMap((value) => spellings(names[value]).map((name) => [name, value])));
  return (text) => index.get(plainWords(text)) ?? null;
}
