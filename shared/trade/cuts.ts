/** The cuts that clubs cook. A new cut is one more row. */
import { NANOGRAMS, type Nanograms } from '../measure/units.ts';
import type { CutKey } from './keys.ts';
import type { StyleFamily } from './styles.ts';

export type Species = 'beef' | 'pork' | 'lamb' | 'poultry';

export interface Cut {
  key: CutKey;
  species: Species;
  /** The English public name. */
  name: string;
  /** What people type, lower case; the name itself need not be repeated. One name may belong to several cuts: then it is asked. */
  names: readonly string[];
  /** Item number of the USDA Institutional Meat Purchase Specifications, where there is one. */
  imps: string | null;
  /** Whether it is sold with its bone, without, or both ways (only then is it worth asking). */
  bone: 'in' | 'out' | 'both';
  /** How much fat is left on is told by this family's measures; null where nobody trims it by a measure. */
  styles: StyleFamily | null;
  /** The range of one usual piece. Common practice, no source: from memory. */
  usual: { low: Nanograms; high: Nanograms };
}

/** Rows: key, name, what people type, IMPS item, bone, styles, usual pounds from and to. */
const ROWS: readonly [
  string,
  string,
  string,
  string | null,
  Cut['bone'],
  StyleFamily | null,
  number,
  number,
][] = [
  [
    'beef/brisket-whole',
    'Whole packer brisket',
    'packer, whole brisket, packer brisket, full packer, brisket',
    '120',
    'out',
    'brisket',
    10,
    18,
  ],
  [
    'beef/brisket-flat',
    'Brisket flat',
    'flat, flat half, brisket flat half, brisket',
    '120A',
    'out',
    'brisket',
    5,
    10,
  ],
  [
    'beef/brisket-point',
    'Brisket point',
    'point, point half, brisket point half, brisket',
    '120B',
    'out',
    'brisket',
    4,
    9,
  ],
  ['beef/chuck-roll', 'Beef chuck roll', 'chuck roll, chuck', '116A', 'out', null, 12, 24],
  [
    'beef/short-ribs',
    'Beef short ribs',
    'short ribs, plate ribs, beef ribs, dino ribs',
    '123',
    'in',
    'ribs',
    3,
    12,
  ],
  ['beef/tri-tip', 'Beef tri-tip', 'tri-tip, tritip, bottom sirloin tri-tip', '185C', 'out', null, 1.5, 4],
  [
    'beef/strip-loin',
    'Beef strip loin',
    'strip loin, striploin, top loin, new york strip',
    null,
    'both',
    null,
    9,
    16,
  ],
  [
    'beef/tenderloin',
    'Beef tenderloin',
    'beef tenderloin, whole tenderloin, tenderloin, fillet of beef',
    null,
    'out',
    null,
    4,
    9,
  ],
  ['beef/bottom-round', 'Beef bottom round', 'bottom round, round, outside round', null, 'out', null, 8, 20],
  ['beef/eye-of-round', 'Beef eye of round', 'eye of round, eye round, round', null, 'out', null, 3, 7],
  [
    'pork/butt',
    'Pork butt',
    'butt, boston butt, pork shoulder butt, shoulder, pork shoulder',
    '406',
    'both',
    'butt',
    6,
    11,
  ],
  [
    'pork/picnic',
    'Pork picnic shoulder',
    'picnic, picnic ham, shoulder, pork shoulder',
    '405',
    'both',
    null,
    5,
    10,
  ],
  [
    'pork/spareribs',
    'Pork spareribs',
    'spares, spareribs, spare ribs, ribs, pork ribs',
    '416',
    'in',
    'ribs',
    2.5,
    6,
  ],
  [
    'pork/back-ribs',
    'Pork back ribs',
    'back ribs, baby backs, baby back ribs, loin ribs, ribs, pork ribs',
    '422',
    'in',
    'ribs',
    1.5,
    4,
  ],
  [
    'lamb/shoulder',
    'Lamb shoulder',
    'lamb shoulder, square-cut shoulder, shoulder',
    '207',
    'both',
    null,
    3,
    8,
  ],
  ['poultry/turkey-whole', 'Whole turkey', 'turkey, whole bird', null, 'in', null, 10, 24],
];

const pounds = (count: number) => (count * NANOGRAMS.lb) as Nanograms;

export const CUTS: readonly Cut[] = ROWS.map(([key, name, names, imps, bone, styles, low, high]) => ({
  key: key as CutKey,
  species: key.slice(0, key.indexOf('/')) as Species,
  name,
  names: names.split(', '),
  imps,
  bone,
  styles,
  usual: { low: pounds(low), high: pounds(high) },
}));

const BY_KEY = new Map(CUTS.map((cut) => [cut.key, cut]));

/** The cut of a key that stands in storage. @throws Error for a key that no catalogue has: a bug, not a member's slip. */
export function cutOf(key: CutKey): Cut {
  const cut = BY_KEY.get(key);
  if (cut === undefined) throw new Error(`no cut ${key} in the catalogue`);
  return cut;
}
