/** The rows of *pairs*: what is drawn of each, on which axis, and the same in words. */
import { verdictOf } from '../statistics/verdict.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import type { Measure } from '../yield/measure.ts';
import { fitsAlt, shortened, withinAlt } from './alt.ts';
import type { PairMark } from './pairs-marks.ts';
import { type Ticks, ticksOf } from './ticks.ts';

const LONGEST_NAME = 60;

type Words = PictureWords['pairs'];

/** Two kinds of pieces, and what the first-named loses more than the other. */
export interface Pair {
  /** `Prime against Choice`. Drawn as it stands, so no names of people. */
  name: string;
  /** Whether there are the club's own words in the name: then it is drawn on this machine only. */
  own: boolean;
  /** What the first-named loses more, as a fraction; with its ends, which are null while it is too early. */
  difference: number | null;
  low: number | null;
  high: number | null;
}

/** What the picture of pairs shows. */
export interface Pairs {
  measure: Measure;
  /** What all of them are of: `Whole packer brisket, by grade`. Drawn as it stands. */
  about: string;
  /** What is too small to argue about, as a fraction, above 0. */
  margin: number;
  count: number;
  members: number;
  /** What says most first; of more than ten the first ten are drawn. */
  pairs: readonly Pair[];
}

/** A pair, and what is drawn of it; nothing while it is too early. */
export interface Row {
  pair: Pair;
  mark: PairMark | null;
}

/** In a fraction: pictures tell differences in points. */
export const POINTS = 100;

/** Fractions, in points; without an interval there is nothing to draw. */
export function rowOf(pair: Pair, margin: number): Row {
  const { difference, low, high } = pair;
  if (difference === null || low === null || high === null) return { pair, mark: null };
  const verdict = verdictOf(low, high, margin);
  return {
    pair,
    mark: { difference: difference * POINTS, low: low * POINTS, high: high * POINTS, verdict },
  };
}

/** Ranges may reach so many times as far as the differences, or the margin; what is wider ends at the edge. */
const MOST_REACH = 4;
const ROOM = 0.04;

/** In points: 0 and the zone around it, every difference, and what of the ranges has room. */
export function axisOf(marks: readonly PairMark[], margin: number): Ticks {
  const reach = ({ low, high }: PairMark) => Math.max(-low, high);
  const narrowest = marks.length === 0 ? 0 : Math.min(...marks.map(reach));
  const farthest = Math.max(margin, ...marks.map(({ difference }) => Math.abs(difference)));
  const most = Math.max(MOST_REACH * farthest, narrowest);
  const near = (points: number) => Math.max(-most, Math.min(points, most));
  const values = [
    -2 * margin,
    2 * margin,
    ...marks.flatMap(({ difference, low, high }) => [difference, near(low), near(high)]),
  ];
  const [first, last] = [Math.min(...values), Math.max(...values)];
  const wider = (last - first) * ROOM;
  return ticksOf(first - wider, last + wider);
}

/** The same in words; the pairs without an answer yet are left out where there are too many for them. */
export function altOf(
  { about, measure, margin, count, members }: Pairs,
  rows: readonly Row[],
  words: Words,
): string {
  const said = (early: boolean) => [
    words.altHead({ about: shortened(about), measure }),
    `${words.counts({ count, members })}.`,
    ...rows.flatMap(({ pair: { name: whole, difference, low, high }, mark }) => {
      const name = [...whole].slice(0, LONGEST_NAME).join('');
      if (mark === null || difference === null || low === null || high === null)
        return early ? [words.altEarly({ name })] : [];
      return [words.altPair({ name, difference, low, high })];
    }),
    words.altZone({ margin }),
  ];
  return withinAlt(said(fitsAlt(said(true))));
}

/** What there is room for beside an axis. */
const LONGEST_BESIDE = 32;

function beside(name: string): string {
  const letters = [...name];
  return letters.length <= LONGEST_BESIDE ? name : `${letters.slice(0, LONGEST_BESIDE - 1).join('')}…`;
}

/** The rows' names and differences, for a renderer that draws no notes: `['Prime against Choice', '-2.2']`. */
export const plainNames = (rows: readonly Row[], words: Words) =>
  rows.map(({ pair: { name, own, difference }, mark }, index) => [
    own ? words.unnamed({ nth: index + 1 }) : beside(name),
    mark === null || difference === null ? words.early() : words.points({ difference }),
  ]);
