/** What should not matter in a name that somebody types. */

const MARKS = /\p{Mark}/gu;
const APOSTROPHES = /['’ʼ`´]/g;
const BETWEEN_WORDS = /[^\p{Letter}\p{Number}]+/u;

const spelledWords = (text: string): readonly string[] =>
  text
    .normalize('NFKD')
    .replace(MARKS, '')
    .replace(APOSTROPHES, '')
    .toLowerCase()
    .split(BETWEEN_WORDS)
    .filter((word) => word !== '');

const singular = (word: string): string =>
  word.length > 2 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;

/**
 * The words of a name without what should not matter: case, accents, apostrophes, the plural.
 *
 * @example nameWords("Lamb's  Shoulders") // ['lamb', 'shoulder']
 */
export const nameWords = (text: string): readonly string[] => spelledWords(text).map(singular);

/**
 * Folds what should not matter: `Boston  Butts` and `boston-butt` are one.
 *
 * @example foldName('St. Louis Ribs') // 'stlouirib'
 */
export const foldName = (text: string): string => nameWords(text).join('');

/**
 * A name as it was spelled, plurals too, in one word: a slip can make or hide a plural.
 *
 * @example spelled('St. Louis Ribs') // 'stlouisribs'
 */
export const spelled = (text: string): string => spelledWords(text).join('');

/**
 * Whether one letter added, left out, changed, or two neighbours swapped turns `one` into `other`.
 *
 * @example isOneSlip('briskte', 'brisket') // true
 */
export function isOneSlip(one: string, other: string): boolean {
  if (one === other || Math.abs(one.length - other.length) > 1) return false;
  let start = 0;
  while (start < one.length && one[start] === other[start]) start++;
  const rest = (text: string, skip: number) => text.slice(start + skip);
  return (
    rest(one, 1) === rest(other, 1) ||
    rest(one, 1) === rest(other, 0) ||
    rest(one, 0) === rest(other, 1) ||
    (one[start] === other[start + 1] && one[start + 1] === other[start] && rest(one, 2) === rest(other, 2))
  );
}

/**
 * The one key that a text names, whole or by its last part; else the only one that is one slip away.
 *
 * @example likeliest('Quater', ['brisket/thick', 'brisket/quarter']) // 'brisket/quarter'
 */
export function likeliest<Key extends string>(text: string, keys: readonly Key[]): Key | null {
  const typed = foldName(text);
  const names = (key: Key) => [foldName(key), foldName(key.slice(key.indexOf('/') + 1))];
  const exact = keys.find((key) => names(key).includes(typed));
  if (exact !== undefined) return exact;
  const near = keys.filter((key) => names(key).some((name) => name.length > 3 && isOneSlip(typed, name)));
  return near.length === 1 ? (near[0] ?? null) : null;
}
