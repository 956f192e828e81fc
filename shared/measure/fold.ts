/** One spelling for the many ways in which keyboards, phones and copied text write the same characters. */

/** The longest text that is read as a weight, a price or a day, in characters. */
export const LONGEST_TEXT = 60;

const PLAIN = /^[ -~]*$/;
const SPACES = /\s+/g;
/** Marks that nobody sees: soft hyphen, zero-width, direction and variation marks. */
const UNSEEN = /[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufeff]|\ufe0e|\ufe0f/g;
const VULGAR = /[¼½¾⅐-⅞↉]/g;
/** Superscripts, circled numbers and the like: NFKC would make `10³` a plain 103. */
const OTHER_NUMBERS = /(?![¼½¾⅐-⅞↉])\p{No}/gu;
const DASHES = /[\u2010-\u2015\u2212]/g;
const PRIMES = /[\u2018\u2019\u02bc\u2032]/g;

/**
 * Lower case, NFKC, single plain spaces, `-` for every dash, `'` for primes and curly apostrophes, `3/4` set
 * apart for a vulgar fraction. Letters keep their accents. Throws nothing.
 *
 * @example fold('14¾ LB') // '14 3/4 lb'
 */
export function fold(text: string): string {
  if (PLAIN.test(text)) return text.trim().toLowerCase().replace(SPACES, ' ');
  return text
    .replace(UNSEEN, '')
    .replace(OTHER_NUMBERS, '\ufffd')
    .replace(VULGAR, ' $&')
    .normalize('NFKC')
    .replaceAll('\u2044', '/')
    .replace(DASHES, '-')
    .replace(PRIMES, "'")
    .toLowerCase()
    .replace(SPACES, ' ')
    .trim();
}

/** A folded text without accents, for names of days and months: `märz` is `marz`. */
export const plainLetters = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '');
