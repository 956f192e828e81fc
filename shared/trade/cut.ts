/** What the catalogue tells of a cut, and how one row of a species' file becomes it. */
import { NANOGRAMS, type Nanograms } from '../measure/units.ts';
import type { CutKey } from './keys.ts';
import type { StyleFamily } from './styles.ts';

/** The animals, the most usual first. */
export const SPECIES = ['beef', 'pork', 'lamb', 'goat', 'veal', 'poultry', 'game'] as const;

/** One of them. */
export type Species = (typeof SPECIES)[number];

/** What the knife usually takes off the raw piece. A bone that comes out after the fire is not among it. */
export type RawLoss = 'fat' | 'bone' | 'skin' | 'membrane' | 'giblets' | 'silverskin';

/**
 * Where an item number was checked: `published` in the Institutional Meat Purchase Specifications of the USDA
 * Agricultural Marketing Service, or the wholesale meat specifications of the Canadian Food Inspection Agency, which
 * use the same numbers; `memory` where no copy was at hand.
 */
export type ItemSource = 'published' | 'memory';

/** One row of the catalogue. Weights, bones and what is lost raw are common practice, no source: from memory. */
export interface CutRow {
  /** What follows the species in its key: `brisket-whole`. Never changes. */
  key: string;
  /** The English public name, at most 32 characters. */
  name: string;
  /** The name starts with a proper name (`Denver`), which keeps its capital within a sentence. */
  proper?: true;
  /** What people type, lower case, parted by `, `. A name that several cuts answer to stands in `shared-names.ts`. */
  names: string;
  /** Words for the animal, which people put before or after a name: `pork butt`, `shoulder of goat`. */
  animal: string;
  /** Item number of the Institutional Meat Purchase Specifications, and whether it was checked. */
  imps?: readonly [item: string, source: ItemSource];
  /** Whether it is sold with its bone, without, or both ways (only then is it worth asking). */
  bone: 'in' | 'out' | 'both';
  /** The family of measures that tells how much fat is left on, where the trade has one. */
  styles?: StyleFamily;
  /** What the knife usually takes off raw; empty where nothing is. */
  raw: readonly RawLoss[];
  /** The range of one usual piece, in pounds; of a pack, where it is sold by the pack. */
  pounds: readonly [low: number, high: number];
  /** Usually sold in a bag with a good deal of juice, so that it is worth weighing out of the bag. */
  packedWet?: true;
}

/** A cut as the program knows it. */
export interface Cut {
  key: CutKey;
  species: Species;
  /** The English public name. */
  name: string;
  /** Whether the name keeps its capital within a sentence. */
  proper: boolean;
  /** What people type, lower case; the name itself need not be repeated. */
  names: readonly string[];
  /** Words for the animal. */
  animal: readonly string[];
  /** Item number of the Institutional Meat Purchase Specifications of the USDA, where there is one. */
  imps: string | null;
  impsSource: ItemSource | null;
  /** Whether it is sold with its bone, without, or both ways (only then is it worth asking). */
  bone: 'in' | 'out' | 'both';
  /** How much fat is left on is told by this family's measures; null where nobody trims it by a measure. */
  styles: StyleFamily | null;
  /** What the knife usually takes off raw. */
  raw: readonly RawLoss[];
  /** The range of one usual piece. Common practice, no source: from memory. */
  usual: { low: Nanograms; high: Nanograms };
  packedWet: boolean;
}

const pounds = (count: number) => (count * NANOGRAMS.lb) as Nanograms;

/**
 * The cut that a row tells of.
 *
 * @example cutFrom('pork', row).key // 'pork/butt'
 */
export function cutFrom(species: Species, row: CutRow): Cut {
  const [low, high] = row.pounds;
  return {
    key: `${species}/${row.key}` as CutKey,
    species,
    name: row.name,
    proper: row.proper ?? false,
    names: row.names.split(', '),
    animal: row.animal.split(', '),
    imps: row.imps?.[0] ?? null,
    impsSource: row.imps?.[1] ?? null,
    bone: row.bone,
    styles: row.styles ?? null,
    raw: row.raw,
    usual: { low: pounds(low), high: pounds(high) },
    packedWet: row.packedWet ?? false,
  };
}
