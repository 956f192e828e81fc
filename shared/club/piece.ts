/** A piece as a club keeps it. */
import type { CalendarDay } from '../measure/day.ts';
import type { Bone, CutKey, GradeKey, StyleKey, Wrap } from '../trade/keys.ts';
import type { Weighed } from '../yield/piece.ts';

/** A piece with everything that was told of it. What was not told is null. */
export interface Piece extends Weighed {
  /** The id of the interaction that started it: the same message twice is one piece. */
  id: string;
  /** Posting order within the club, from 1: what people see ("piece 128"). */
  seq: number;
  member: string;
  /** UTC milliseconds. */
  postedAt: number;
  day: CalendarDay;
  cut: CutKey;
  grade: GradeKey | null;
  style: StyleKey | null;
  bone: Bone | null;
  wrap: Wrap | null;
  shop: string | null;
  note: string | null;
  /** Its label says that it was injected or pumped before it was sold. */
  pumped: boolean;
  /** Some weight was an estimate: counts in averages, not in boards, debates or predictions. */
  approximate: boolean;
  /** The texts as typed, by option. */
  typed: Readonly<Record<string, string>>;
  /** Confirmed by its poster or a manager although unusual. UTC milliseconds. */
  confirmedAt: number | null;
  /** Set aside by a manager: kept, out of every figure. */
  setAsideAt: number | null;
  setAsideWhy: string | null;
  /** How often it was corrected or added to. */
  revision: number;
}

/**
 * Meat that took up brine keeps another share of its weight in the heat: a group of its own.
 * @example isInjected({ pumped: false, added: 200 g }) // true
 */
export const isInjected = ({ pumped, added }: Pick<Piece, 'pumped' | 'added'>): boolean =>
  pumped || (added !== null && added > 0);

/** A piece about to be kept: the store gives it its `seq`. */
export type NewPiece = Omit<Piece, 'seq' | 'revision' | 'confirmedAt' | 'setAsideAt' | 'setAsideWhy'>;

/** A piece that comes from elsewhere with all that was settled about it. */
export type ImportedPiece = Omit<Piece, 'seq' | 'revision'>;

/** What may change in a piece once it is kept. */
export type PieceChange = Partial<Omit<Piece, 'id' | 'seq' | 'member' | 'postedAt' | 'revision'>>;

/** Who changes a piece, through which interaction, when and why. */
export interface Correction {
  interaction: string;
  member: string;
  at: number;
  why?: string;
}
