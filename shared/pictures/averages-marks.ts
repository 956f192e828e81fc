/** The marks of *averages*: a row a group, with its pieces as dots, its mean, its middle half and its likely range. */
import { type Axis, along, shareAt } from './axis.ts';
import { type Band, bandsOf } from './bands.ts';
import { highest, MOST_MARKS, radiusOf, stacks, thin } from './dots.ts';
import { INK, OKABE_ITO, PALE_BLUE } from './palette.ts';
import type { Json } from './picture.ts';

/** Layout pixels: a row is a line of text, a strip of dots, and room to the next. */
export const TEXT_ROW = 34;
const BETWEEN_ROWS = 12;
const STRIP = { least: 36, most: 104, all: 320 } as const;
const LEAST_STEP = 7;
const MEAN_WIDTH = 5;
const RANGE_WIDTH = 4;

/** What is drawn of one group. */
export interface RowMarks {
  /** Ascending fractions. */
  shares: readonly number[];
  /** The reader's own among them. */
  mine: readonly number[];
  /** How many pieces there are, drawn or not. */
  count: number;
  /** Null for one piece, which is its own mean. */
  mean: number | null;
  half: readonly [number, number] | null;
  range: readonly [number, number] | null;
}

/** What the series are called in a legend. */
export interface RowNames {
  pieces: string;
  mine: string;
  mean: string;
  half: string;
  range: string;
}

const stripOf = (count: number): number =>
  Math.round(Math.max(STRIP.least, Math.min(STRIP.most, STRIP.all / count)));

/** Fewer by so much at a time, until what is left of a row has room. */
const FEWER = 0.9;

/**
 * What is drawn of each group: all of it, or an even choice, where all would be too many or would not fit its strip.
 * @param groups ascending fractions, of `count` pieces each
 */
export function chosen(
  axis: Axis,
  groups: readonly Pick<RowMarks, 'shares' | 'mine' | 'count'>[],
): readonly (readonly number[])[] {
  const strip = stripOf(groups.length);
  const all = groups.reduce((sum, { count }) => sum + count, 0);
  const mine = groups.reduce((sum, own) => sum + own.mine.length, 0);
  const most = MOST_MARKS - groups.length - mine;
  return groups.map(({ shares, count }) => {
    // One at least of each group: the rest is shared out.
    const part = 1 + Math.max(0, Math.floor(((most - groups.length) * count) / all));
    let some = all <= most ? shares : thin(shares, part);
    const fits = () =>
      highest(
        some.map((share) => along(axis, share)),
        LEAST_STEP,
      ) *
        LEAST_STEP <=
      strip;
    while (some.length > 1 && !fits()) some = thin(shares, Math.floor(some.length * FEWER));
    return some;
  });
}

/** The height of one row of so many, in layout pixels. */
export const rowHeight = (count: number): number => TEXT_ROW + stripOf(count) + BETWEEN_ROWS;

/** The chart's series, the topmost first. */
export function marksOf(axis: Axis, rows: readonly RowMarks[], names: RowNames): readonly Json[] {
  const strip = stripOf(rows.length);
  const middleOf = (index: number) => index * rowHeight(rows.length) + TEXT_ROW + strip / 2;
  const places = rows.map(({ shares }) => shares.map((share) => along(axis, share)));
  const { step, rows: dots } = stacks(places, strip, LEAST_STEP);
  const bands = (of: 'half' | 'range'): Band[] =>
    rows.flatMap(({ [of]: span }, index) => (span === null ? [] : [{ span, middle: middleOf(index) }]));
  return [
    {
      label: names.mean,
      data: rows.flatMap(({ mean }, index) => (mean === null ? [] : [{ x: mean, y: middleOf(index) }])),
      // An upright line as high as the strip.
      pointStyle: 'line',
      rotation: 90,
      radius: strip / 2,
      borderColor: INK,
      borderWidth: MEAN_WIDTH,
      clip: false,
    },
    ...(rows.every(({ mine }) => mine.length === 0) ? [] : [ownMarks(axis, rows, names.mine, middleOf)]),
    ...(bands('range').length === 0 ? [] : [bandsOf(names.range, bands('range'), RANGE_WIDTH, INK)]),
    {
      label: names.pieces,
      data: dots.flatMap((row, index) =>
        row.map(({ along, level, of }) => ({
          x: shareAt(axis, along),
          y: middleOf(index) + (level - (of - 1) / 2) * step,
        })),
      ),
      radius: radiusOf(step),
      backgroundColor: OKABE_ITO.blue,
      borderWidth: 0,
      clip: false,
    },
    ...(bands('half').length === 0 ? [] : [bandsOf(names.half, bands('half'), strip, PALE_BLUE)]),
  ];
}

/** Another shape, size and colour, on the middle of its row. */
const OWN = 9;

const ownMarks = (
  axis: Axis,
  rows: readonly RowMarks[],
  label: string,
  middleOf: (index: number) => number,
): Json => ({
  label,
  data: rows.flatMap(({ mine }, index) =>
    mine.map((share) => ({ x: shareAt(axis, along(axis, share)), y: middleOf(index) })),
  ),
  pointStyle: 'rectRot',
  radius: OWN,
  backgroundColor: OKABE_ITO.vermillion,
  borderColor: INK,
  borderWidth: 1.5,
  clip: false,
});
