/** Money a kilo, as findings have it, told for the reader's own weight. */
import type { GroupFigures } from '../club/group.ts';
import type { FoundAverages, FoundGroup } from '../findings/averages.ts';
import type { BoardMember, FoundBoard } from '../findings/board.ts';
import { grams, NANOGRAMS, type Units } from '../measure/units.ts';

/** Kilos in the weight that a price is told for: 0.45359237 in a pound. */
export const kilosPer = (units: Units): number => grams(NANOGRAMS[units]) / 1000;

const AMOUNTS = [
  'meanShare',
  'meanLow',
  'meanHigh',
  'pooledShare',
  'pooledLow',
  'pooledHigh',
  'memberMean',
  'memberLow',
  'memberHigh',
  'median',
  'lowerQuartile',
  'upperQuartile',
  'standardDeviation',
] as const satisfies readonly (keyof GroupFigures)[];

function figuresTimes(figures: GroupFigures, kilos: number): GroupFigures {
  const scaled = AMOUNTS.map((name) => {
    const amount = figures[name];
    return [name, amount === null ? null : amount * kilos] as const;
  });
  return { ...figures, ...Object.fromEntries(scaled) };
}

/** The averages of costs for the reader's weight: $11.00 a kilo is $4.99 a pound. */
export function averagesPer(units: Units, found: FoundAverages): FoundAverages {
  const kilos = kilosPer(units);
  const figures = <Some extends GroupFigures | null>(of: Some) =>
    of === null ? of : (figuresTimes(of, kilos) as Some);
  const group = <Some extends FoundGroup>(of: Some): Some => ({
    ...of,
    figures: figures(of.figures),
    shares: of.shares.map((amount) => amount * kilos),
    mine: of.mine.map((amount) => amount * kilos),
  });
  return {
    ...found,
    whole: group(found.whole),
    unfiltered: found.unfiltered && group(found.unfiltered),
    mine: figures(found.mine),
    injected: figures(found.injected),
    groups: found.groups.map(group),
  };
}

/**
 * A ranking by costs for the reader's weight.
 * @example boardPer('lb', a leader at 22.00 a kilo).rows[0].share // 9.98
 */
export function boardPer(units: Units, found: FoundBoard): FoundBoard {
  const kilos = kilosPer(units);
  const row = (of: BoardMember): BoardMember => ({
    ...of,
    share: of.share * kilos,
    low: of.low * kilos,
    high: of.high * kilos,
  });
  const { posted, mine } = found;
  return {
    ...found,
    posted: posted && { low: posted.low * kilos, high: posted.high * kilos },
    rows: found.rows.map(row),
    mine: mine && row(mine),
  };
}
