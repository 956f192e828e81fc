/** The rows of *ranks*: which are drawn and where, and the same in words. */
import type { PictureWords } from '../words/en/pictures.ts';
import type { Standing } from '../words/en/ranks.ts';
import type { Averaged } from '../yield/measure.ts';
import { fitsAlt, shortened, withinAlt } from './alt.ts';
import { MOST_RANKS, ROW } from './rank-columns.ts';
import type { RankMark } from './ranks-marks.ts';

/** Layout pixels: from the last placed row to the first one below the divider. */
export const DIVIDED = 48;

type Words = PictureWords['ranks'];

/** One row of a ranking. */
export interface Rank {
  /** From 1. A number stands for a person here. */
  place: number;
  /** As a member reads it: what came off, what was kept, or money for the reader's weight; drawn in towards the club. */
  share: number;
  low: number;
  high: number;
  pieces: number;
  /** Whether it is clearly behind the leader. */
  separable: boolean;
  /** Too few pieces for a place. */
  provisional: boolean;
}

/** What the picture of a ranking shows. */
export interface Ranks {
  measure: Averaged;
  /** What is ranked: `Whole packer brisket, this season`. Drawn as it stands, so no names of people. */
  about: string;
  /** The leader first, provisional ones last. Of more than twelve the first twelve are drawn. */
  rows: readonly Rank[];
  /** How many there are in all. */
  all: number;
}

/** A row, and where it stands. */
export type Row = Rank & RankMark;

const standingOf = ({ separable, provisional }: Rank, first: boolean): Standing =>
  provisional ? 'new' : first ? 'leads' : separable ? 'behind' : 'close';

const inside = (measure: Averaged, share: number): number =>
  measure === 'cost' ? share : Math.min(1, Math.max(0, share));

/** The rows that are drawn, and how high they are together. */
export interface LaidOut {
  rows: readonly Row[];
  /** Where the provisional ones begin; null without any. Layout pixels from the top of the data. */
  provisional: number | null;
  height: number;
}

/** The rows with their places in the data. */
export function laidOut(given: readonly Rank[], measure: Averaged): LaidOut {
  const ranks = given.slice(0, MOST_RANKS);
  const placed = ranks.filter(({ provisional }) => !provisional).length;
  const divided = placed < ranks.length ? DIVIDED : 0;
  return {
    rows: ranks.map((rank, index) => ({
      ...rank,
      low: inside(measure, rank.low),
      high: inside(measure, rank.high),
      standing: standingOf(rank, index === 0),
      middle: index * ROW + ROW / 2 + (rank.provisional ? divided : 0),
    })),
    provisional: divided === 0 ? null : placed * ROW,
    height: ranks.length * ROW + divided,
  };
}

const STANDINGS: readonly Standing[] = ['leads', 'close', 'behind', 'new'];

/** How it is read, and what of it is not drawn. */
export function footOf(rows: readonly Row[], all: number, words: Words): readonly string[] {
  const standings = STANDINGS.filter((one) => rows.some(({ standing }) => standing === one));
  return [
    ...words.reading({ standings }),
    ...(rows.length < all ? [words.first({ drawn: rows.length, all })] : []),
  ];
}

/** The same in words: without the ranges where there are too many rows for them. */
export function altOf(rows: readonly Row[], { measure, about, all }: Ranks, words: Words): string {
  const said = (ranges: boolean) => [
    words.altHead({ about: shortened(about), measure }),
    ...rows.map(({ place, share, low, high, pieces: count, standing }) =>
      words.altRow({ measure, place, share, range: ranges ? { low, high } : null, count, standing }),
    ),
    ...(rows.length < all ? [`${words.first({ drawn: rows.length, all })}.`] : []),
  ];
  return withinAlt(fitsAlt(said(true)) ? said(true) : said(false));
}
