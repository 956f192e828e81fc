/** Invented clubs for pictures: shares in, what a store would have of them out. */
import { type Columns, columnsAt, type Factor } from '../../../shared/club/columns.ts';
import { wholeGroup } from '../../../shared/club/group.ts';
import type { Sifted } from '../../../shared/club/sift.ts';
import { standingShares } from '../../../shared/findings/standing.ts';
import { shows } from '../../../shared/measure/show.ts';
import type { Group } from '../../../shared/pictures/averages-rows.ts';
import type { Note } from '../../../shared/pictures/notes.ts';
import type { Picture } from '../../../shared/pictures/picture.ts';
import { pictures } from '../../../shared/words/en/pictures.ts';
import type { Measure } from '../../../shared/yield/measure.ts';

export const POUNDS = shows({ locale: 'en-US', units: 'lb' });
export const KILOS = shows({ locale: 'de', units: 'kg' });
export const WORDS = pictures(POUNDS);

const BASE_GRAMS = 6000;
const MEMBERS = 4;

/** One piece a loss, numbered from 1; below 0 gained. Four members take turns. */
export function columnsOf(losses: readonly number[]): Columns {
  const count = losses.length;
  const none: Factor = { codes: new Int32Array(count).fill(-1), values: [] };
  const member = { codes: Int32Array.from(losses, (_loss, row) => row % MEMBERS), values: [] };
  return {
    version: 1,
    count,
    seq: Int32Array.from(losses, (_loss, row) => row + 1),
    base: new Float64Array(count).fill(BASE_GRAMS),
    loss: Float64Array.from(losses, (loss) => loss * BASE_GRAMS),
    pieces: new Int32Array(count).fill(1),
    approximate: new Uint8Array(count),
    confirmed: new Uint8Array(count),
    day: new Int32Array(count),
    pricePerKg: new Float64Array(count).fill(Number.NaN),
    spent: new Float64Array(count).fill(Number.NaN),
    member,
    cut: none,
    grade: none,
    style: none,
    bone: none,
    shop: none,
    wrap: none,
    month: none,
    currency: none,
  };
}

/** All of them counted but those that gained: pictures are drawn of unusual clubs too. */
const siftedOf = (losses: readonly number[]): Sifted => {
  const columns = columnsOf(losses);
  const those = (holds: (loss: number) => boolean) =>
    columnsAt(
      columns,
      losses.flatMap((loss, row) => (holds(loss) ? [row] : [])),
    );
  const none = columnsOf([]);
  return {
    counted: those((loss) => loss >= 0),
    waiting: none,
    untouched: none,
    gained: those((loss) => loss < 0),
  };
};

export function groupOf(name: string, losses: readonly number[], more: Partial<Group> = {}): Group {
  const figures = wholeGroup(siftedOf(losses), 'trim', name);
  return { name, own: false, shares: losses.filter((loss) => loss >= 0), figures, ...more };
}

export const standingOf = (losses: readonly number[], seq = 1, measure: Measure = 'trim') => {
  const sifted = siftedOf(losses);
  return {
    shares: standingShares(sifted.counted, measure, seq),
    measure,
    club: wholeGroup(sifted, measure, null),
  };
};

/** A plausible spread around 18 %, the same each time. */
export const spread = (count: number, middle = 0.18, wide = 0.12): readonly number[] =>
  Array.from({ length: count }, (_none, index) => {
    const [one, other] = [(index * 0.618034) % 1, (index * 0.414214) % 1];
    return middle + wide * (one + other - 1);
  });

export const CLUBS = {
  one: [0.174],
  two: [0.174, 0.21],
  'two alike': [0.2, 0.2],
  eight: [0.174, 0.21, 0.155, 0.232, 0.19, 0.181, 0.142, 0.25],
  400: spread(400),
  5000: spread(5000),
  '400 alike': Array.from({ length: 400 }, () => 0.2),
  '5000 of nothing': Array.from({ length: 5000 }, () => 0),
  'all of it': [1, 1, 1, 1, 1],
  'an outlier': [0.6, ...spread(30)],
  'gains left out': [0.174, 0.21, -0.1, 0.155],
} as const;

interface Words {
  readonly [name: string]: Words | ((values: never) => string);
}

/** A language in which every sentence is English between brackets: what stands outside of them is hard-wired. */
export function bracketed<Some>(words: Some): Some {
  const entries = Object.entries(words as Words).map(([name, word]) => [
    name,
    typeof word === 'function' ? (values: never) => `‹${word(values)}›` : bracketed(word),
  ]);
  return Object.fromEntries(entries) as Some;
}

/** A chart's data as pictures of dots have them. */
export interface Series {
  label: string;
  type?: string;
  data: { x: number | [number, number]; y: number }[];
  radius?: number;
  pointStyle?: string;
  backgroundColor?: string;
}
export const seriesOf = ({ config }: Picture) =>
  (config as unknown as { data: { datasets: Series[] } }).data.datasets;
export const scalesOf = ({ config }: Picture) =>
  (config as unknown as { options: { scales: { x: { min: number; max: number }; y: { max: number } } } })
    .options.scales;
export const notesOf = ({ config }: Picture) =>
  (config as unknown as { options: { plugins: { notes: Note[] } } }).options.plugins.notes;
export const textsOf = (picture: Picture) => notesOf(picture).map(({ text }) => text);

const WIDTH_OF_DATA = 664;

/** Whether no dot of a series hides a part of another one. */
export function apart(picture: Picture, { data, radius = 0 }: Series): boolean {
  const { min, max } = scalesOf(picture).x;
  const dots = data.map(({ x, y }) => ({ x: ((Number(x) - min) / (max - min)) * WIDTH_OF_DATA, y }));
  // A little less than twice the radius: places are rounded.
  const least = 2 * radius - 0.1;
  return dots.every((dot, index) =>
    dots.slice(index + 1).every((other) => Math.hypot(dot.x - other.x, dot.y - other.y) >= least),
  );
}
