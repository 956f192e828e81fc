/** The figures of a group of pieces: by cut, by grade, or all of a cut. */
import { type Averages, averages, type Group } from '../statistics/averages.ts';
import { rowsAt } from '../statistics/rows.ts';
import type { Measure } from '../yield/measure.ts';
import type { Columns, Factor } from './store.ts';

/** A group's averages under the names that `figures` has, for a loss or, where the measure is a yield, the yield. */
export interface GroupFigures extends Omit<Averages, 'gained'> {
  /** The key of the cut or grade; null for pieces that were not told one. */
  key: string | null;
  /** Rows left out of this measure because they gained weight. */
  gained: number;
}

/** Fewer pieces have no middle half worth the name. */
export const FEWEST_FOR_HALF = 4;

/** A group of fewer pieces or members has figures, but no range that is worth drawing. */
export const isThin = ({ pieces, members }: { pieces: number; members: number }): boolean =>
  pieces < 5 || members < 3;

/** What a member reads as a share: trim as what came off, every other measure as what was kept. */
export const shareShown = (measure: Measure, loss: number): number => (measure === 'trim' ? loss : 1 - loss);

/** All rows of `columns` as one group. */
export function wholeGroup(columns: Columns, measure: Measure, key: string | null): GroupFigures {
  return groupFigures(key, measure, { base: columns.base, loss: columns.loss, member: columns.member.codes });
}

/** The places of the rows of each value of a factor, in posting order; of those without a value under null. */
export function placesBy(
  { count }: Columns,
  { codes, values }: Factor,
): ReadonlyMap<string | null, readonly number[]> {
  const places = new Map<string | null, number[]>();
  for (let row = 0; row < count; row++) {
    const key = values[codes[row] ?? -1] ?? null;
    const own = places.get(key);
    if (own === undefined) places.set(key, [row]);
    else own.push(row);
  }
  return places;
}

/** One group for each value of a factor, most pieces first; rows without a value are a group of their own, last. */
export function groupsBy(columns: Columns, measure: Measure, factor: Factor): GroupFigures[] {
  const rows = { ...columns, member: columns.member.codes };
  return [...placesBy(columns, factor)]
    .map(([key, places]) => groupFigures(key, measure, rowsAt(rows, places)))
    .toSorted(
      (one, other) => Number(one.key === null) - Number(other.key === null) || other.pieces - one.pieces,
    );
}

function groupFigures(key: string | null, measure: Measure, group: Group): GroupFigures {
  const found = averages(group);
  if (measure === 'trim') return { key, ...found };
  const shown = (loss: number | null) => (loss === null ? null : shareShown(measure, loss));
  return {
    key,
    ...found,
    // What is lost least is kept most: the ends of ranges and the quartiles change places.
    meanShare: shown(found.meanShare),
    meanLow: shown(found.meanHigh),
    meanHigh: shown(found.meanLow),
    pooledShare: shown(found.pooledShare),
    pooledLow: shown(found.pooledHigh),
    pooledHigh: shown(found.pooledLow),
    memberMean: shown(found.memberMean),
    memberLow: shown(found.memberHigh),
    memberHigh: shown(found.memberLow),
    median: shown(found.median),
    lowerQuartile: shown(found.upperQuartile),
    upperQuartile: shown(found.lowerQuartile),
  };
}
