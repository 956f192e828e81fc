/** The marks of *pairs*: a dot and its likely range a row, over the zone that is too small to argue about. */
import type { Verdict } from '../statistics/verdict.ts';
import { bandsOf } from './bands.ts';
import { GROUND, INK, OKABE_ITO, PALE_GREY } from './palette.ts';
import type { Json } from './picture.ts';

/** Layout pixels. */
const RANGE = 5;
const RADIUS = { dot: 11, ring: 9 } as const;
const RING_WIDTH = 5;
const ZERO_WIDTH = 3;

/** What is drawn of a row whose range is told. All in points. */
export interface PairMark {
  difference: number;
  low: number;
  high: number;
  verdict: Verdict;
}

/** A row, and where it stands. */
export interface PairRowMark {
  /** Null while it is too early. */
  mark: PairMark | null;
  /** Layout pixels from the top of the data. */
  middle: number;
}

/** What the series are called in a legend. */
export interface PairNames {
  differences: string;
  ranges: string;
  none: string;
  same: string;
}

/** The zone of a row, in points and layout pixels. */
export interface Zone {
  margin: number;
  height: number;
}

/** To a thousandth of a point: less than a pixel. Never -0. */
const rounded = (points: number): number => Math.round(points * 1e3) / 1e3 + 0;

/** The chart's series, the topmost first. What goes beyond the axis ends with it. */
export function pairSeries(
  rows: readonly PairRowMark[],
  { margin, height }: Zone,
  axis: { min: number; max: number },
  names: PairNames,
): readonly Json[] {
  const inside = (points: number) => rounded(Math.max(axis.min, Math.min(points, axis.max)));
  const marks = rows.flatMap(({ mark, middle }) => (mark === null ? [] : [{ ...mark, middle }]));
  const open = marks.map(({ verdict }) => verdict === 'open');
  const told = [
    {
      label: names.differences,
      data: marks.map(({ difference, middle }) => ({ x: inside(difference), y: middle })),
      radius: open.map((is) => (is ? RADIUS.ring : RADIUS.dot)),
      backgroundColor: open.map((is) => (is ? GROUND : OKABE_ITO.blue)),
      borderColor: OKABE_ITO.blue,
      borderWidth: open.map((is) => (is ? RING_WIDTH : 0)),
      clip: false,
    },
    bandsOf(
      names.ranges,
      marks.map(({ low, high, middle }) => ({ span: [inside(low), inside(high)] as const, middle })),
      RANGE,
      INK,
    ),
  ];
  return [
    ...(marks.length === 0 ? [] : told),
    {
      label: names.none,
      data: rows.map(({ middle }) => ({ x: 0, y: middle })),
      // An upright line as high as the zone.
      pointStyle: 'line',
      rotation: 90,
      radius: height / 2,
      borderColor: INK,
      borderWidth: ZERO_WIDTH,
      clip: false,
    },
    bandsOf(
      names.same,
      rows.map(({ middle }) => ({ span: [rounded(-margin), rounded(margin)] as const, middle })),
      height,
      PALE_GREY,
    ),
  ];
}
