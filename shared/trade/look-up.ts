/** Reading a cut as people type it: case, spacing, hyphens, plurals, accents and one slip of the finger are forgiven. */
import { Ask, MemberError } from '../errors.ts';
import { CUTS, type Cut, cutOf } from './cuts.ts';
import { foldName, isOneSlip, nameWords, spelled } from './fold-name.ts';
import type { CutKey } from './keys.ts';
import { isOwnCut, ownCutNamed, ownCutNear } from './own-cuts.ts';
import { SHARED_NAMES } from './shared-names.ts';

/** An Ask has at most so many readings. */
const MOST_READINGS = 5;
/** Names shorter than this forgive no slip, since too many words are near them. */
const SHORTEST_WITH_SLIP = 5;
const MOST_NEAR = 4;

const namesOf = (cut: Cut): readonly string[] => [cut.key, cut.name, ...cut.names];
const numbersOf = ({ imps }: Cut): readonly string[] =>
  imps === null ? [] : [imps, `imps ${imps}`, `namp ${imps}`];

/** Name -> the cuts that answer to it, the likeliest first; the first name of a spelling holds. */
const NAMES: readonly (readonly [name: string, cuts: readonly Cut[]])[] = [
  ...Object.entries(SHARED_NAMES).map(
    ([name, keys]) => [name, keys.map((key) => cutOf(key as CutKey))] as const,
  ),
  ...CUTS.flatMap((cut) => [...namesOf(cut), ...numbersOf(cut)].map((name) => [name, [cut]] as const)),
  // With the animal said as well, unless that is a name of its own: `pork butt`, `beef packer`.
  ...CUTS.flatMap((cut) =>
    cut.animal.flatMap((animal) => cut.names.map((name) => [`${animal} ${name}`, [cut]] as const)),
  ),
];

const BY_NAME = firstOf(NAMES.map(([name, cuts]) => [foldName(name), cuts]));

function firstOf(
  entries: readonly (readonly [string, readonly Cut[]])[],
): ReadonlyMap<string, readonly Cut[]> {
  const index = new Map<string, readonly Cut[]>();
  for (const [name, cuts] of entries) if (!index.has(name)) index.set(name, cuts);
  return index;
}

/** Names in which a slip is forgiven: long enough, and no numbers, since those are all near each other. */
const FORGIVING = firstOf(
  NAMES.filter(([name, cuts]) => BY_NAME.get(foldName(name)) === cuts)
    .flatMap(([name, cuts]) => [foldName(name), spelled(name)].map((one) => [one, cuts] as const))
    .filter(([name]) => name.length >= SHORTEST_WITH_SLIP && !/\d/.test(name)),
);

/**
 * The cut that a member names.
 *
 * @param own the club's own cuts, which go first
 * @throws Ask where several answer to the name, MemberError where none does.
 * @example readCut('Boston butts', 'cut') // 'pork/butt'
 */
export function readCut(text: string, option: string, own: readonly CutKey[] = []): CutKey {
  refuseDryAged(text);
  const named = ownCutNamed(text, own);
  if (named !== null) return named;
  if (isOwnCut(text.trim())) throw new MemberError('own-cut-unknown', { read: text });
  const [only, ...others] = cutsNamed(text);
  const near = only === undefined ? ownCutNear(text, own) : null;
  if (near !== null) return near;
  if (only === undefined) throw new MemberError('cut-unknown', { read: text, near: cutsNear(text) });
  if (others.length === 0) return only.key;
  throw new Ask(
    'which-cut',
    { read: text },
    [only, ...others].map(({ key, name }) => ({
      label: { code: 'cut', values: { cut: key } },
      set: { [option]: name },
    })),
  );
}

/**
 * The cut that a text names, if only one answers to it; null otherwise. Throws nothing.
 *
 * @param own the club's own cuts, which go first
 * @example cutNamed('ribs') // null
 */
export function cutNamed(text: string, own: readonly CutKey[] = []): Cut | null {
  const named = ownCutNamed(text, own);
  if (named !== null) return cutOf(named);
  const [only, ...others] = cutsNamed(text);
  return only !== undefined && others.length === 0 ? only : null;
}

/**
 * The cuts of the catalogue that answer to a name as it is, slips apart; none where it is free.
 *
 * @example cutsAnswering('Boston butts').map(({ key }) => key) // ['pork/butt']
 */
export function cutsAnswering(text: string): readonly Cut[] {
  const words = nameWords(text);
  return (
    BY_NAME.get(words.join('')) ??
    BY_NAME.get(words.filter((word) => !ARTICLES.has(word)).join('')) ??
    BY_NAME.get(plainly(words))?.filter(soldAs(words)) ??
    []
  );
}

const plainly = (words: readonly string[]): string =>
  withoutBone(words)
    .filter((word) => !BESIDE.has(word))
    .join('');

/** At most five, the likeliest first: by the whole text, then without what is said beside the name, then with a slip. */
function cutsNamed(text: string): readonly Cut[] {
  const named = cutsAnswering(text);
  if (named.length > 0) return named;
  const words = nameWords(text);
  const fits = soldAs(words);
  const [whole, plain] = [words.join(''), plainly(words)];
  const near = slipped([whole, spelled(text)]);
  return (near.length > 0 ? near : slipped([plain]).filter(fits)).slice(0, MOST_READINGS);
}

/** The cuts with a name that is one slip from one of these, the most usual first. */
function slipped(typed: readonly string[]): readonly Cut[] {
  const long = typed.filter((one) => one.length >= SHORTEST_WITH_SLIP - 1);
  const near = new Set(
    [...FORGIVING].flatMap(([name, cuts]) => (long.some((one) => isOneSlip(one, name)) ? cuts : [])),
  );
  return CUTS.filter((cut) => near.has(cut));
}

const ARTICLES = new Set(['a', 'an', 'the', 'one', 'item', 'no']);
/** Words beside a name that do not change which cut it is. */
const BESIDE = new Set([
  ...ARTICLES,
  ...'of piece cut joint roast slab rack fresh frozen raw whole usda imps namp boneless'.split(' '),
]);

const isBoneIn = (words: readonly string[], at: number): boolean =>
  words[at] === 'bone' && words[at + 1] === 'in';

const withoutBone = (words: readonly string[]): readonly string[] =>
  words.filter((_, at) => !isBoneIn(words, at) && !isBoneIn(words, at - 1));

/** The cuts that are sold as the words say, with or without bone. */
function soldAs(words: readonly string[]): (cut: Cut) => boolean {
  const boneIn = words.some((_, at) => isBoneIn(words, at));
  const boneless = words.includes('boneless');
  return ({ bone }) => !(boneIn && bone === 'out') && !(boneless && bone === 'in');
}

/** What dried for weeks before it was bought has lost its water already: no figure of fresh meat fits it. */
const DRY_AGED = /\bdry[\s-]*aged?\b/i;

/**
 * @throws MemberError where a name is one of dry-aged meat.
 * @example refuseDryAged('dry-aged ribeye') // throws 'dry-aged'
 */
export function refuseDryAged(text: string): void {
  if (DRY_AGED.test(text)) throw new MemberError('dry-aged', { read: text });
}

/** What is compared with a text that names no cut, folded once. */
const NEARNESS = CUTS.map((cut) => ({
  key: cut.key,
  words: nameWords(cut.name).filter((word) => word.length > 3),
  names: namesOf(cut).map(foldName),
}));

/** Cuts to name when none was found: those whose names have most of its words, then those that start alike. */
function cutsNear(text: string): readonly CutKey[] {
  const words = nameWords(text);
  const start = words.join('').slice(0, 3);
  if (start.length < 2) return [];
  return NEARNESS.map(({ key, words: own, names }) => ({
    key,
    inCommon: own.filter((word) => words.includes(word)).length,
    alike: names.some((name) => name.startsWith(start)),
  }))
    .filter((cut) => cut.inCommon > 0 || cut.alike)
    .toSorted((one, other) => other.inCommon - one.inCommon)
    .slice(0, MOST_NEAR)
    .map(({ key }) => key);
}
