/** The figures of a group of pieces: by cut, by grade, or all of a cut. */
import { type Averages, averages, type Group } from '../statistics/averages.ts';
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

/** One group for each value of a factor, most pieces first; rows without a value are a group of their own, last. */
export function groupsBy(columns: Columns, measure: Measure, factor: Factor): GroupFigures[] {
  const rows = new Map<number, number[]>();
  for (let row = 0; row < columns.count; row++) {
    const code = factor.codes[row] ?? -1;
    const own = rows.get(code);
    if (own === undefined) rows.set(code, [row]);
    else own.push(row);
  }
  return [...rows]
    .map(([code, members]) => groupFigures(factor.values[code] ?? null, measure, pick(columns, members)))
    .toSorted(
      (one, other) => Number(one.key === null) - Number(other.key === null) || other.pieces - one.pieces,
    );
}

const pick = (columns: Columns, rows: readonly number[]): Group => ({
  base: rows.map((row) => columns.base[row] ?? 0),
  loss: rows.map((row) => columns.loss[row] ?? 0),
  member: rows.map((row) => columns.member.codes[row] ?? -1),
});

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
