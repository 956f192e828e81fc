/** The club's averages: of all cuts by cut, or of one cut apart by one thing. */
import { type Columns, columnsAt, type Factor, placesBy } from '../club/columns.ts';
import { countUncosted, type UncostedCounts } from '../club/costs.ts';
import { type GroupFigures, groupsBy, wholeGroup } from '../club/group.ts';
import { type FactorName, type Filter, narrowed } from '../club/narrow.ts';
import { sharesBy } from '../club/shares.ts';
import { type Sifted, siftedBy } from '../club/sift.ts';
import { bandsOf, bandWidth } from '../club/size-band.ts';
import type { Units } from '../measure/units.ts';
import { MOST_MARKS, thin } from '../statistics/thin.ts';
import type { Looked } from './finding.ts';
import { type AboutAny, siftedAll } from './sifted.ts';

/** What groups can be told apart by: a factor, or bands of weight. */
export const APART_BY = [
  'cut',
  'grade',
  'style',
  'bone',
  'size',
  'shop',
  'wrap',
  'month',
  'member',
] as const satisfies readonly (FactorName | 'size')[];
export type ApartBy = (typeof APART_BY)[number];

export interface AskedAverages extends AboutAny {
  by: ApartBy;
  filter: Filter;
  /** Of the bands of weight. */
  units: Units;
  /** Whose own pieces are shown besides; null for nobody's. */
  mine: string | null;
}

/** A group with some of its pieces. */
export interface FoundGroup {
  figures: GroupFigures;
  /** At most 400, evenly chosen, ascending; fractions, as a member reads them, or money a kilo on the plate. */
  shares: readonly number[];
  /** The asker's own among them, all of them up to as many. */
  mine: readonly number[];
}

/** All of a cut, or what a filter leaves of it. */
export interface FoundWhole extends FoundGroup {
  /** Pieces that have no cost to compare; null where shares are averaged. */
  uncosted: UncostedCounts | null;
}

export interface FoundAverages {
  /** What the filter leaves. */
  whole: FoundWhole;
  /** The whole cut, where a filter leaves less of it. */
  unfiltered: FoundWhole | null;
  /** The asker's own pieces. */
  mine: GroupFigures | null;
  injected: GroupFigures | null;
  /** Whose pieces are the most of the whole, and which part of it they are; null without any. */
  most: { member: string; part: number } | null;
  /** Most pieces first; months and bands of weight in their order. */
  groups: readonly FoundGroup[];
}

export function findAverages(looked: Looked, asked: AskedAverages): FoundAverages {
  const { measure, cut, filter, mine } = asked;
  const look = (columns: Columns) => narrowed(columns, filter);
  const own = (columns: Columns) =>
    mine === null ? columnsAt(columns, []) : narrowed(columns, { member: mine });
  const { all, apart, uncosted } = siftedAll(looked, asked);
  const some = siftedBy(all, look);
  const injected = apart && siftedBy(apart, look);
  const alone = (sifted: Sifted, narrow?: typeof look): FoundWhole => ({
    figures: wholeGroup(sifted, measure, cut),
    shares: drawn(sharesBy(sifted.counted, measure, NO_FACTOR).get(null)),
    mine: drawn(sharesBy(own(sifted.counted), measure, NO_FACTOR).get(null)),
    uncosted: uncosted && countUncosted(uncosted, narrow),
  });
  return {
    whole: alone(some, look),
    unfiltered: Object.keys(filter).length > 0 ? alone(all) : null,
    mine: mine === null ? null : wholeGroup(siftedBy(some, own), measure, cut),
    injected: injected === null || injected.counted.count === 0 ? null : wholeGroup(injected, measure, cut),
    most: mostPieces(some.counted),
    groups: groupsApart(some, own, asked),
  };
}

function mostPieces(counted: Columns): FoundAverages['most'] {
  let most: FoundAverages['most'] = null;
  for (const [member, { length }] of placesBy(counted, counted.member)) {
    const part = length / counted.count;
    if (member !== null && part > (most?.part ?? 0)) most = { member, part };
  }
  return most;
}

function groupsApart(sifted: Sifted, own: (columns: Columns) => Columns, asked: AskedAverages): FoundGroup[] {
  const { measure, by } = asked;
  const factorOf = factorBy(sifted.counted, asked);
  const sharesIn = (columns: Columns) => sharesBy(columns, measure, factorOf(columns));
  const [shares, mine] = [sharesIn(sifted.counted), sharesIn(own(sifted.counted))];
  const groups = groupsBy(sifted, measure, factorOf).map((figures) => ({
    figures,
    shares: drawn(shares.get(figures.key)),
    mine: drawn(mine.get(figures.key)),
  }));
  const inOrder = ORDERS[by];
  return inOrder === undefined
    ? groups
    : groups.toSorted(({ figures: one }, { figures: other }) => inOrder(one.key ?? '', other.key ?? ''));
}

/** Months follow each other, and bands of weight; everything else stands by how many pieces there are. */
const ORDERS: Partial<Record<ApartBy, (one: string, other: string) => number>> = {
  month: (one, other) => (one < other ? -1 : 1),
  size: (one, other) => Number.parseFloat(one) - Number.parseFloat(other),
};

function factorBy(counted: Columns, { by, units }: AskedAverages): (columns: Columns) => Factor {
  if (by !== 'size') return (columns) => columns[by];
  const width = bandWidth(counted, units);
  return (columns) => bandsOf(columns, width, units);
}

/** Told of no row: all of them are one group. */
const NO_FACTOR: Factor = { codes: new Int32Array(), values: [] };

const drawn = (shares: Float64Array | undefined): readonly number[] =>
  shares === undefined ? [] : thin([...shares.toSorted()], MOST_MARKS);
