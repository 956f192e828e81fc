/** The cuts that clubs cook, the most usual first. A new cut is one more row in its species' file. */
import { type Cut, type CutRow, cutFrom, type Species } from './cut.ts';
import { BEEF } from './cuts/beef.ts';
import { GAME } from './cuts/game.ts';
import { GOAT } from './cuts/goat.ts';
import { LAMB } from './cuts/lamb.ts';
import { PORK } from './cuts/pork.ts';
import { POULTRY } from './cuts/poultry.ts';
import { VEAL } from './cuts/veal.ts';
import type { CutKey } from './keys.ts';
import { ownCut } from './own-cuts.ts';

export type { Cut, CutRow, Species } from './cut.ts';

const ROWS: Readonly<Record<Species, readonly CutRow[]>> = {
  beef: BEEF,
  pork: PORK,
  lamb: LAMB,
  goat: GOAT,
  veal: VEAL,
  poultry: POULTRY,
  game: GAME,
};

/** What is offered first, before anything is typed. Common practice, no source: from memory. */
const MOST_USUAL: readonly string[] = [
  'beef/brisket-whole',
  'pork/butt',
  'pork/spareribs',
  'pork/back-ribs',
  'beef/brisket-flat',
  'pork/st-louis-ribs',
  'poultry/turkey-whole',
  'beef/tri-tip',
  'beef/rib-roast',
  'pork/picnic',
  'poultry/chicken-whole',
  'beef/plate-ribs',
  'beef/short-ribs',
  'pork/belly',
  'lamb/shoulder',
  'lamb/leg',
  'beef/chuck-roll',
  'pork/loin',
  'beef/picanha',
  'beef/brisket-point',
  'pork/fresh-ham',
  'beef/ribeye-roll',
  'beef/tenderloin',
  'poultry/turkey-breast',
  'pork/whole-hog',
];

const ALL = (Object.entries(ROWS) as [Species, readonly CutRow[]][]).flatMap(([species, rows]) =>
  rows.map((row) => cutFrom(species, row)),
);

const BY_KEY = new Map(ALL.map((cut) => [cut.key, cut]));

/** Every cut, the most usual first, then by animal. `CUTS[0].key` is `beef/brisket-whole`. */
export const CUTS: readonly Cut[] = [
  ...MOST_USUAL.map((key) => cutOf(key as CutKey)),
  ...ALL.filter(({ key }) => !MOST_USUAL.includes(key)),
];

/**
 * The cut of a key that stands in storage: of the catalogue, or of a club's own.
 *
 * @throws Error for a key that no catalogue has: a bug, not a member's slip.
 * @example cutOf('pork/butt' as CutKey).name // 'Pork butt'
 */
export function cutOf(key: CutKey): Cut {
  const cut = BY_KEY.get(key) ?? ownCut(key);
  if (cut === null) throw new Error(`no cut ${key} in the catalogue`);
  return cut;
}
