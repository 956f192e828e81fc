/** Finding a name as people type it: case, spacing, plurals and one slip of the finger are forgiven. */
import { Ask, MemberError } from '../errors.ts';
import { CUTS, type Cut } from './cuts.ts';
import { foldName, isOneSlip } from './fold-name.ts';
import type { CutKey } from './keys.ts';

/** Folded name -> the cuts that answer to it. */
const BY_NAME: ReadonlyMap<string, readonly Cut[]> = CUTS.reduce((names, cut) => {
  for (const name of new Set(
    [cut.key, cut.name, ...cut.names, ...(cut.imps ? [cut.imps] : [])].map(foldName),
  )) {
    names.set(name, [...(names.get(name) ?? []), cut]);
  }
  return names;
}, new Map<string, readonly Cut[]>());

/**
 * The cut that a member names.
 * @throws Ask where several answer to the name, MemberError where none does.
 * @example readCut('Boston butts', 'cut').key // 'pork/butt'
 */
export function readCut(text: string, option: string): CutKey {
  const found = BY_NAME.get(foldName(text)) ?? closest(text);
  const [only, ...others] = found;
  if (only === undefined) throw new MemberError('cut-unknown', { read: text, near: startingAlike(text) });
  if (others.length === 0) return only.key;
  throw new Ask(
    'which-cut',
    { read: text },
    found.map(({ key, name }) => ({ label: { code: 'cut', values: { cut: key } }, set: { [option]: name } })),
  );
}

/** The cuts whose names are one slip away; short names forgive none, since too many words are near them. */
function closest(text: string): readonly Cut[] {
  const typed = foldName(text);
  if (typed.length < 4) return [];
  const near = [...BY_NAME].filter(([name]) => name.length >= 4 && isOneSlip(typed, name));
  return [...new Set(near.flatMap(([, cuts]) => cuts))];
}

function startingAlike(text: string): readonly CutKey[] {
  const start = foldName(text).slice(0, 3);
  const near = CUTS.filter((cut) => [cut.name, ...cut.names].some((name) => foldName(name).includes(start)));
  return (near.length === 0 ? CUTS : near).slice(0, 4).map(({ key }) => key);
}

/** The cuts with a name that `typed` stands in, those starting with it first: for completion. */
export function matchingCuts(typed: string): readonly Cut[] {
  const text = foldName(typed);
  const rank = (cut: Cut) => {
    const names = [cut.name, ...cut.names].map(foldName);
    return names.some((name) => name.startsWith(text))
      ? 0
      : names.some((name) => name.includes(text))
        ? 1
        : 2;
  };
  return CUTS.filter((cut) => rank(cut) < 2).toSorted((one, other) => rank(one) - rank(other));
}
