/** Cuts of a club's own: the key itself says what they are, so that nobody has to ask the club. */
import { MemberError } from '../errors.ts';
import { NANOGRAMS, type Nanograms } from '../measure/units.ts';
import { type Cut, SPECIES, type Species } from './cut.ts';
import { foldName, isOneSlip, spelled } from './fold-name.ts';
import type { CutKey } from './keys.ts';

/** As long as a name of the catalogue gets: it stands in tables, in pictures and in the ids of buttons. */
export const LONGEST_OWN_CUT = 24;
/** The most that one club has. */
export const MOST_OWN_CUTS = 50;

const FIRST = 'own/';
const WORD = String.raw`[\p{L}\p{N}][\p{L}\p{M}\p{N}']*`;
const KEY = new RegExp(`^own/(${SPECIES.join('|')})/(${WORD}(?:-${WORD})*)$`, 'u');
const NAME = new RegExp(`^${WORD}(?:-${WORD})*$`, 'u');
/** Sounds and vowels of several alphabets stand on their letters; a heap of them is a prank. */
const HEAP = /\p{M}{4}/u;
/** Names shorter than this forgive no slip. */
const SHORTEST_WITH_SLIP = 5;

/**
 * Whether a key is one of a club's own cuts, which is then the club's own word.
 *
 * @example isOwnCut('own/pork/schäufele') // true
 */
export const isOwnCut = (key: string): boolean => key.startsWith(FIRST);

/**
 * The key of a name that `readOwnCutName` took.
 *
 * @example ownCutKey('beef', 'Smoked short plate') // 'own/beef/smoked-short-plate'
 */
export const ownCutKey = (species: Species, name: string): CutKey =>
  `${FIRST}${species}/${slug(name)}` as CutKey;

const slug = (name: string): string => name.toLowerCase().normalize('NFC').replace(/[ -]+/g, '-');

/** Nobody knows how heavy one usually is, so the range holds what a club may cook; no size of it is doubted. */
const USUAL = { low: NANOGRAMS.lb, high: (20 * NANOGRAMS.lb) as Nanograms };

/**
 * The cut that the key of a club's own tells of: no styles, nothing that usually comes off, with its bone or without.
 * Null for a key that is none.
 *
 * @example ownCut('own/beef/smoked-short-plate')?.name // 'Smoked short plate'
 */
export function ownCut(key: string): Cut | null {
  const [, species, dashed] = KEY.exec(key) ?? [];
  if (species === undefined || dashed === undefined) return null;
  return {
    key: key as CutKey,
    species: species as Species,
    name: capital(dashed.replaceAll('-', ' ')),
    proper: false,
    names: [],
    animal: [],
    imps: null,
    impsSource: null,
    bone: 'both',
    styles: null,
    raw: [],
    usual: USUAL,
    packedWet: false,
  };
}

/** The first letter large, unless that is two letters, as of `ß`. */
function capital(name: string): string {
  const [first = '', ...rest] = name;
  const large = first.toUpperCase();
  return `${[...large].length === 1 ? large : first}${rest.join('')}`;
}

/**
 * Reads a name for a cut of the club's own: letters of any language, digits, apostrophes, single spaces or dashes; at
 * least one letter, at most 24 characters. Throws a MemberError.
 *
 * @example readOwnCutName(' Smoked  short-plate ', 'add') // 'smoked short plate'
 */
export function readOwnCutName(text: string, option: string): string {
  const read = text.trim();
  const name = slug(read.normalize('NFC').replace(/[\u2018\u2019]/g, "'")).replace(/^-|-$/g, '');
  const typed = { option, read };
  if (name.length > LONGEST_OWN_CUT)
    throw new MemberError('own-cut-too-long', { ...typed, most: LONGEST_OWN_CUT });
  if (name !== '' && (!NAME.test(name) || HEAP.test(name))) throw new MemberError('own-cut-signs', typed);
  if (!/\p{L}/u.test(name)) throw new MemberError('own-cut-no-letter', typed);
  return name.replaceAll('-', ' ');
}

const nameOf = (key: CutKey): string => ownCut(key)?.name ?? '';

/**
 * The own cut that a text names, by its key or its name; null where none of these answers to it.
 *
 * @example ownCutNamed('Schaufele', ['own/pork/schäufele']) // 'own/pork/schäufele'
 */
export function ownCutNamed(text: string, own: readonly CutKey[]): CutKey | null {
  const [key, typed] = [text.trim(), foldName(text)];
  return own.find((one) => one === key) ?? own.find((one) => foldName(nameOf(one)) === typed) ?? null;
}

/**
 * The only one whose name is a slip of the finger from the text; null for none, or several.
 *
 * @example ownCutNear('shäufele', ['own/pork/schäufele']) // 'own/pork/schäufele'
 */
export function ownCutNear(text: string, own: readonly CutKey[]): CutKey | null {
  const typed = spelled(text);
  const near = own.filter((key) => {
    const name = spelled(nameOf(key));
    return name.length >= SHORTEST_WITH_SLIP && isOneSlip(typed, name);
  });
  return near.length === 1 ? (near[0] ?? null) : null;
}

/**
 * The own cuts with a name that `typed` stands in, for completion; all of them where nothing is typed.
 *
 * @example ownCutsLike('schäu', ['own/pork/schäufele']) // ['own/pork/schäufele']
 */
export const ownCutsLike = (typed: string, own: readonly CutKey[]): readonly CutKey[] =>
  own.filter((key) => foldName(nameOf(key)).includes(foldName(typed)));
