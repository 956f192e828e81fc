/** The rows of *averages*: what is told of each group, in the picture, below it and in its alt text. */
import { FEWEST_FOR_HALF, type GroupFigures } from '../club/group.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import type { Averaged } from '../yield/measure.ts';
import { fitsAlt, shortened, withinAlt } from './alt.ts';
import type { RowMarks } from './averages-marks.ts';

const LONGEST_NAME = 40;

type Words = PictureWords['averages'];

/** One group of pieces, and its figures. */
export interface Group {
  /** Drawn as it stands, so no names of people. */
  name: string;
  /** Whether the name is the club's own word: then it is drawn on this machine only. */
  own: boolean;
  /** Fractions, or money for the reader's weight: of every piece, or of an even choice of them. */
  shares: readonly number[];
  /** Of them, those of whoever the picture is for; drawn besides. */
  mine?: readonly number[];
  figures: GroupFigures;
  /** Where the mean likely lies, drawn where both are told. */
  low?: number | null;
  high?: number | null;
}

/** What the picture of averages shows. */
export interface Grouped {
  measure: Averaged;
  /** What all of them are of: `Whole packer brisket, by grade`. Drawn as it stands. */
  about: string;
  /** The figure to look at first, where one stands for all groups. */
  mean: number | null;
  /** Most pieces first; those without a piece are left out. */
  groups: readonly Group[];
}

/** A group with its marks. */
export interface Row extends RowMarks {
  group: Group;
  /** Told in figures for one piece as well. */
  told: number;
}

const pair = (low: number | null, high: number | null): readonly [number, number] | null =>
  low === null || high === null ? null : [low, high];

/** A group's row with all of its pieces; none without a piece. */
export function rowOf(group: Group): Row[] {
  const { meanShare: told, lowerQuartile, upperQuartile, pieces } = group.figures;
  if (told === null) return [];
  return [
    {
      group,
      told,
      shares: group.shares.toSorted((a, b) => a - b),
      mine: group.mine ?? [],
      count: pieces,
      mean: pieces < 2 ? null : told,
      half: pieces < FEWEST_FOR_HALF ? null : pair(lowerQuartile, upperQuartile),
      range: pair(group.low ?? null, group.high ?? null),
    },
  ];
}

/** How it is read, and what of it is not drawn. */
export function footOf(rows: readonly Row[], groups: number, words: Words): readonly string[] {
  const first = rows[0]?.group.figures;
  const count = rows.reduce((sum, { group }) => sum + group.figures.pieces, 0);
  const drawn = rows.reduce((sum, { shares }) => sum + shares.length, 0);
  return [
    words.reading({
      halves: rows.some(({ half }) => half !== null),
      ranges: rows.some(({ range }) => range !== null),
      mine: rows.some(({ mine }) => mine.length > 0),
    }),
    first === undefined ? null : words.countsNote({ count: first.pieces, members: first.members }),
    drawn < count ? words.drawn({ count, drawn }) : null,
    rows.length < groups ? words.groups({ groups, drawn: rows.length }) : null,
  ].filter((line) => line !== null);
}

/** The same in words; the spreads are left out where there are too many groups for them. */
export function altOf(
  rows: readonly Row[],
  { measure, about, mean }: Grouped,
  foot: readonly string[],
  words: Words,
): string {
  const said = (spreads: boolean) => [
    words.altHead({ about: shortened(about), measure }),
    ...(mean === null ? [] : [words.altMean({ measure, share: mean })]),
    ...rows.flatMap(({ group: { name, figures }, told, half, range }) => [
      words.altGroup({
        measure,
        name: [...name].slice(0, LONGEST_NAME).join(''),
        share: told,
        count: figures.pieces,
        members: figures.members,
      }),
      ...(spreads && half !== null ? [words.altHalf({ measure, low: half[0], high: half[1] })] : []),
      ...(spreads && range !== null ? [words.altRange({ measure, low: range[0], high: range[1] })] : []),
    ]),
    ...foot.slice(1).map((line) => `${line}.`),
  ];
  return withinAlt(fitsAlt(said(true)) ? said(true) : said(false));
}
