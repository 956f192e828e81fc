/** The figures of a group of pieces: by cut, by grade, or all of a cut. */
import { type Averages, averages } from '../statistics/averages.ts';
import { rowsAt } from '../statistics/rows.ts';
import type { Averaged } from '../yield/measure.ts';
import { type Columns, type Factor, placesBy, rowsFor } from './columns.ts';
import type { Sifted } from './sift.ts';

/**
 * A group's averages under the names that `figures` has, for a loss or, where the measure is a yield, the yield. Where it
 * is `cost`, the shares are money a kilo on the plate, in the club's currency.
 */
export interface GroupFigures extends Averages {
  /** The key of the cut or grade; null for pieces that were not told one. */
  key: string | null;
  /** Rows left out of this measure: unusual and not confirmed, without a loss, or heavier than before. */
  waiting: number;
  untouched: number;
  gained: number;
}

/** Fewer pieces have no middle half worth the name. */
export const FEWEST_FOR_HALF = 4;

/**
 * A group of fewer pieces or members has figures, but no range that is worth drawing.
 * @example isThin({ pieces: 4, members: 3 }) // true
 */
export const isThin = ({ pieces, members }: { pieces: number; members: number }): boolean =>
  pieces < 5 || members < 3;

/**
 * What a member reads as a share: trim as what came off, every other measure as what was kept; a cost as it is.
 * @example shareShown('plate', 0.53) // 0.47; of trim it stays 0.53
 */
export const shareShown = (measure: Averaged, loss: number): number =>
  measure === 'trim' || measure === 'cost' ? loss : 1 - loss;

/** All rows as one group. */
export function wholeGroup(sifted: Sifted, measure: Averaged, key: string | null): GroupFigures {
  const { waiting, untouched, gained } = sifted;
  return {
    key,
    ...shown(measure, averages(rowsFor(sifted.counted, measure))),
    waiting: waiting.count,
    untouched: untouched.count,
    gained: gained.count,
  };
}

/**
 * One group for each value of a factor, most pieces first; rows without a value are a group of their own, last.
 * @param factorOf of any columns, e.g. their grade
 */
export function groupsBy(
  sifted: Sifted,
  measure: Averaged,
  factorOf: (columns: Columns) => Factor,
): GroupFigures[] {
  const placesOf = (columns: Columns) => placesBy(columns, factorOf(columns));
  const counted = placesOf(sifted.counted);
  const [waiting, untouched, gained] = [sifted.waiting, sifted.untouched, sifted.gained].map(placesOf);
  const keys = new Set(
    [counted, waiting, untouched, gained].flatMap((places) => [...(places?.keys() ?? [])]),
  );
  const rows = rowsFor(sifted.counted, measure);
  return [...keys]
    .map((key) => ({
      key,
      ...shown(measure, averages(rowsAt(rows, counted.get(key) ?? []))),
      waiting: waiting?.get(key)?.length ?? 0,
      untouched: untouched?.get(key)?.length ?? 0,
      gained: gained?.get(key)?.length ?? 0,
    }))
    .toSorted(
      (one, other) => Number(one.key === null) - Number(other.key === null) || other.pieces - one.pieces,
    );
}

function shown(measure: Averaged, found: Averages): Averages {
  if (measure === 'trim' || measure === 'cost') return found;
  const kept = (loss: number | null) => (loss === null ? null : shareShown(measure, loss));
  return {
    ...found,
    // What is lost least is kept most: the ends of ranges and the quartiles change places.
    meanShare: kept(found.meanShare),
    meanLow: kept(found.meanHigh),
    meanHigh: kept(found.meanLow),
    pooledShare: kept(found.pooledShare),
    pooledLow: kept(found.pooledHigh),
    pooledHigh: kept(found.pooledLow),
    memberMean: kept(found.memberMean),
    memberLow: kept(found.memberHigh),
    memberHigh: kept(found.memberLow),
    median: kept(found.median),
    lowerQuartile: kept(found.upperQuartile),
    upperQuartile: kept(found.lowerQuartile),
  };
}
