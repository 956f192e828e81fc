/** Names of pans: short, plain, and never to be taken for a weight. */
import { MemberError } from '../errors.ts';
import { fold } from './fold.ts';
import { panKey, sumsOf } from './sum.ts';
import { OTHER_UNITS, UNIT_WORDS } from './unit-words.ts';
import { NANOGRAMS, type Nanograms } from './units.ts';

/** The longest name of a pan, in characters. */
export const LONGEST_PAN_NAME = 30;

const PLAIN_NAME = /^[\p{L}\p{M}\p{Nd} '.]+$/u;
const TRIAL: Nanograms = NANOGRAMS.g;

/** Whether `name` would read as a weight, a unit or a word of a sum, where a pan's name is looked for. */
function readsAsWeight(name: string): boolean {
  const word = panKey(name).replace(/\.$/, '');
  if (UNIT_WORDS.has(word) || OTHER_UNITS.has(word)) return true;
  const reader = {
    option: '',
    units: null,
    decimals: null,
    decimalMark: '.',
    pans: new Map([[name, TRIAL]]),
  } as const;
  const found = sumsOf(`1 kg - ${fold(name)}`, reader, { option: '', read: name });
  const expected = BigInt(NANOGRAMS.kg) - BigInt(TRIAL);
  return found instanceof MemberError || found.sums.some(({ nanograms: { n, d } }) => n !== expected * d);
}

/**
 * Reads a name for a pan: trimmed, spaces folded, case kept. At least one letter, at most 30 characters;
 * letters, digits, spaces, `.` and `'` only; nothing that reads as a weight. Throws a MemberError.
 *
 * @example readPanName('  Blue   pan ', 'name') // 'Blue pan'
 */
export function readPanName(text: string, option: string): string {
  const read = text.trim();
  const name = read
    .normalize('NFC')
    .replace(/[\u2018\u2019]/g, "'")
    .replace(/\s+/g, ' ');
  const typed = { option, read };
  if (!/\p{L}/u.test(name)) throw new MemberError('pan-no-letter', typed);
  if (name.length > LONGEST_PAN_NAME)
    throw new MemberError('pan-too-long', { ...typed, most: LONGEST_PAN_NAME });
  if (!PLAIN_NAME.test(name) || /[\r\n]/.test(read)) throw new MemberError('pan-signs', typed);
  if (readsAsWeight(name)) throw new MemberError('pan-reads-as-weight', typed);
  return name;
}
