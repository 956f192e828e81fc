/** Which cuts are offered while somebody types. */
import { CUTS, type Cut } from './cuts.ts';
import { foldName, nameWords } from './fold-name.ts';
import { SHARED_NAMES } from './shared-names.ts';

interface FoldedName {
  whole: string;
  /** From each later word on to the end. */
  fromWords: readonly string[];
}

const folded = (name: string): FoldedName => {
  const words = nameWords(name);
  return { whole: words.join(''), fromWords: words.map((_, at) => words.slice(at).join('')) };
};

const sharedNamesOf = ({ key }: Cut): readonly string[] =>
  Object.entries(SHARED_NAMES).flatMap(([name, keys]) => (keys.includes(key) ? [name] : []));

const FOLDED: readonly { cut: Cut; names: readonly FoldedName[] }[] = CUTS.map((cut) => ({
  cut,
  names: [cut.name, ...cut.names, ...sharedNamesOf(cut)].map(folded),
}));

const NO_MATCH = 3;

/** 0 for a name that starts so, 1 for one with a word that does, 2 for one in which it stands. */
function rank({ whole, fromWords }: FoldedName, text: string): number {
  if (whole.startsWith(text)) return 0;
  if (fromWords.some((rest) => rest.startsWith(text))) return 1;
  return whole.includes(text) ? 2 : NO_MATCH;
}

/**
 * The cuts with a name that `typed` stands in, those starting with it first, then those with a word that does, the
 * most usual first: for completion. Nothing typed is every cut.
 *
 * @example matchingCuts('packe')[0]?.key // 'beef/brisket-whole'
 */
export function matchingCuts(typed: string): readonly Cut[] {
  const text = foldName(typed);
  return FOLDED.map(({ cut, names }) => ({ cut, rank: Math.min(...names.map((name) => rank(name, text))) }))
    .filter((one) => one.rank < NO_MATCH)
    .toSorted((one, other) => one.rank - other.rank)
    .map(({ cut }) => cut);
}
