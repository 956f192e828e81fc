/** The port through which commands ask a club's store. Each method is a question that a command has. */
import type { Doubt, Remembered } from '../errors.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Measure } from '../yield/measure.ts';
import type { Club } from './club.ts';
import type { Member, Pan } from './member.ts';
import type { Correction, NewPiece, Piece, PieceChange } from './piece.ts';

/** What was written, or found already written by the same interaction (`fresh` false). */
export interface Kept {
  piece: Piece;
  fresh: boolean;
}

/** What pressing one of a question's readings does. */
export interface DraftReading {
  /** The options of the command with this reading taken. */
  options: Readonly<Record<string, string>>;
  /** The doubt it settles. */
  confirms: Doubt | null;
  /** The option that is still to be typed, in a form. */
  opens: string | null;
  remember: Remembered | null;
}

/** A command held back by a question or an error, until it is answered or mended. */
export interface Draft {
  id: string;
  member: string;
  command: string;
  options: Readonly<Record<string, string>>;
  /** Doubts settled so far. */
  confirmed: readonly Doubt[];
  /** In the order of the question's buttons; none after an error. */
  readings: readonly DraftReading[];
  /** The id of the interaction that typed the command: the piece that comes of it has this id. */
  interaction: string;
  /** UTC milliseconds. */
  expiresAt: number;
}

/** Where a piece's card was posted, so that a later change can be shown there. */
export interface Posted {
  piece: string;
  channel: string;
  message: string;
}

/** A change that was made to a piece: the fields that changed, as they were and as they became. */
export interface CorrectionRecord {
  member: string;
  at: number;
  why: string | null;
  before: PieceChange;
  after: PieceChange;
}

/** A ping that a member asked for. */
export interface Reminder {
  club: string;
  member: string;
  piece: string;
  /** UTC milliseconds. */
  dueAt: number;
}

/** One factor of the rows of `Columns`: a code per row into `values`; -1 where it was not told. */
export interface Factor {
  codes: Int32Array;
  values: string[];
}

/** The pieces of one measure in posting order, one entry a row in each array. Shared by all who ask: never written to. */
export interface Columns {
  /** Rises with each write to the cut: what was computed for a version stays right for it. */
  version: number;
  /** How many rows. */
  count: number;
  seq: Int32Array;
  /** Grams. */
  base: Float64Array;
  /** Grams; negative where the piece gained. */
  loss: Float64Array;
  /** Pieces in the lot. */
  pieces: Int32Array;
  /** 1 for an estimate. */
  approximate: Uint8Array;
  /** 1 where its poster confirmed it. */
  confirmed: Uint8Array;
  /** Days since 1970-01-01. */
  day: Int32Array;
  /** What was paid for a kilo of it, in the row's currency; NaN where no price was told. */
  pricePerKg: Float64Array;
  member: Factor;
  cut: Factor;
  grade: Factor;
  style: Factor;
  bone: Factor;
  shop: Factor;
  wrap: Factor;
  /** Calendar month, `2026-07`. */
  month: Factor;
  /** Of the price, ISO 4217. */
  currency: Factor;
}

/** A club's own store: bound to one club, so that one club's rows never reach another. */
export interface ClubStore {
  readonly id: string;

  /** The club's settings; null before its first command. */
  settings(): Promise<Club | null>;
  /** Founds the club with these settings unless it is there already; returns what is kept. */
  found(club: Club): Promise<Club>;
  change(settings: Partial<Omit<Club, 'id'>>): Promise<Club>;
  /** Notes that the club was welcomed; true once, for whoever comes first. */
  welcome(at: number): Promise<boolean>;

  /** A member's settings; one who is new has none. */
  member(id: string): Promise<Member>;
  remember(id: string, settings: Partial<Omit<Member, 'id'>>): Promise<Member>;
  /** A member's pans, by name. */
  pans(member: string): Promise<Pan[]>;
  /** Keeps a pan, or its new weight; names differing in case alone are one. */
  keepPan(member: string, pan: Pan): Promise<void>;
  /** Whether there was one of that name. */
  removePan(member: string, name: string): Promise<boolean>;

  /**
   * Keeps a new piece; the same id again keeps nothing and returns the one that is there.
   * Null: it was kept once, and removed since.
   */
  start(piece: NewPiece): Promise<Kept | null>;
  /**
   * Changes a piece in one transaction: `change` sees it as it stands and returns what becomes new.
   * What `change` throws undoes everything. It may be asked twice, where another process was writing.
   * The same interaction again changes nothing. Null: no such piece.
   */
  correct(id: string, by: Correction, change: (piece: Piece) => PieceChange): Promise<Kept | null>;
  /**
   * Takes a piece away with its corrections, for good: its id and its number alone stay, so that neither is used
   * again, and where its cards were posted. Whether it was there.
   */
  remove(id: string, at: number): Promise<boolean>;
  /** The piece that this interaction changed or added to; null if there is none. */
  changedBy(interaction: string): Promise<Piece | null>;
  /** What was changed in a piece, oldest first. */
  corrections(piece: string): Promise<CorrectionRecord[]>;
  /** By id or by the number people see; null if there is none, or it was removed. */
  piece(reference: { id: string } | { seq: number }): Promise<Piece | null>;
  /** A member's pieces that are not on the plate yet, newest first, at most 25. */
  open(member: string): Promise<Piece[]>;
  /** A member's newest pieces, at most `limit`. */
  newest(member: string, limit: number): Promise<Piece[]>;
  /**
   * Rows that have `measure`, in posting order, of one cut or (null) of all. Removed and set-aside pieces are left out.
   * From the heat on, injected and pumped pieces are a group of their own: they are the rows of `injected` alone.
   */
  columns(cut: CutKey | null, measure: Measure, injected?: boolean): Promise<Columns>;
  /** Rises with each write to a cut, at least once a piece; over all cuts, for null. */
  version(cut: CutKey | null): Promise<number>;
  /** The shops the club named, most used first, at most 100. */
  shops(): Promise<string[]>;

  keepDraft(draft: Draft): Promise<void>;
  /** Null if there is none or it has expired by `now`. */
  draft(id: string, now: number): Promise<Draft | null>;
  keepPosted(posted: Posted): Promise<void>;
  posted(piece: string): Promise<Posted[]>;
  /** Keeps a reminder; another one for the same piece and member takes its place. */
  remind(reminder: Omit<Reminder, 'club'>): Promise<void>;
}

/** All clubs of one store. */
export interface Store {
  club(id: string): ClubStore;
  /** Ids of the clubs that are there and have not left. */
  clubs(): Promise<string[]>;
  /** Notes that a club is gone (its data go later) or has come back. */
  left(club: string, at: number): Promise<void>;
  returned(club: string): Promise<void>;
  /** Takes the reminders that are due by `now`: each is given to one caller once, whatever the number of processes. */
  dueReminders(now: number): Promise<Reminder[]>;
  /** Forgets drafts that expired before `now`. */
  forgetDrafts(now: number): Promise<void>;
  close(): Promise<void>;
}
