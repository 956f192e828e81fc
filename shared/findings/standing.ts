/** Where one piece stands among the club's pieces of its cut. */
import type { Columns } from '../club/columns.ts';
import { type GroupFigures, wholeGroup } from '../club/group.ts';
import { type PlaceAmong, placeOf } from '../club/place.ts';
import { sharesOf } from '../club/shares.ts';
import { sift } from '../club/sift.ts';
import { MOST_MARKS, thin } from '../statistics/thin.ts';
import type { Measure } from '../yield/measure.ts';
import type { About, Looked } from './finding.ts';

/** About one piece, among those of its cut. */
export interface AskedStanding extends About {
  /** The number of the piece. */
  seq: number;
  /** Whether it took up brine. */
  injected: boolean;
}

/** The shares to draw, as a member reads them. */
export interface StandingShares {
  /** Of this piece; null where it is not counted. */
  own: number | null;
  /** Of the others, evenly chosen where there are many; ascending. */
  others: readonly number[];
  /** The least and the greatest of all; null without any. */
  range: readonly [number, number] | null;
}

/** The place of a piece, and what is drawn around it. */
export interface FoundStanding {
  club: GroupFigures;
  /** Whether it is unusual here, and nobody stands by it yet. */
  waiting: boolean;
  /** Null where it is not counted in the measure. */
  place: PlaceAmong | null;
  /** Among those of its grade; null where its grade was not told. */
  inGrade: PlaceAmong | null;
  shares: StandingShares;
}

/** Places by what is lost, among all counted pieces of the cut and among those of the same grade. */
export function findStanding({ plain, injected }: Looked, asked: AskedStanding): FoundStanding {
  const { measure, cut, seq } = asked;
  const sifted = sift(asked.injected && injected !== null ? injected : plain);
  const { counted, waiting } = sifted;
  const row = counted.seq.indexOf(seq);
  return {
    club: wholeGroup(sifted, measure, cut),
    waiting: waiting.seq.includes(seq),
    place: placeOf(counted, seq, false),
    inGrade: (counted.grade.codes[row] ?? -1) < 0 ? null : placeOf(counted, seq, true),
    shares: standingShares(counted, measure, seq),
  };
}

/** This piece's share apart from the others'. */
export function standingShares(counted: Columns, measure: Measure, seq: number): StandingShares {
  const shares = sharesOf(counted, measure);
  const row = counted.seq.indexOf(seq);
  const sorted = shares.toSorted();
  const [least, greatest] = [sorted[0], sorted.at(-1)];
  const others = [...shares.filter((_share, index) => index !== row)].sort((one, other) => one - other);
  return {
    own: shares[row] ?? null,
    others: thin(others, MOST_MARKS - 1),
    range: least === undefined || greatest === undefined ? null : [least, greatest],
  };
}
