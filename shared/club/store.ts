/** The port through which commands ask a club's store. Each method is a question that a command has. */
import type { CalendarDay } from '../measure/day.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Averaged } from '../yield/measure.ts';
import type { Club } from './club.ts';
import type { Columns } from './columns.ts';
import type { Draft } from './draft.ts';
import type { Member, Pan } from './member.ts';
import type { Correction, ImportedPiece, NewPiece, Piece, PieceChange } from './piece.ts';

/** What was written, or found already written by the same interaction (`fresh` false). */
export interface Kept {
  piece: Piece;
  fresh: boolean;
}

/** What became of pieces that were added together. */
export interface Added {
  added: number;
  /** Those whose ids were there already. */
  there: number;
}

/** Where a piece's card was posted, so that a later change can be shown there. */
export interface Posted {
  piece: string;
  channel: string;
  message: string;
}

/** A message in a channel. */
export type Place = Pick<Posted, 'channel' | 'message'>;

/** What is kept of a member or a club. */
export interface Held {
  pieces: number;
  /** Whether there is anything at all: settings, pans, a question that waits for its answer. */
  anything: boolean;
}

/** What is kept of a member in one club. */
export interface HeldIn {
  club: string;
  pieces: number;
}

/** What was erased, or given up; nothing at all where `clubs` is 0. */
export interface Erased {
  pieces: number;
  clubs: number;
  /** Where cards of the pieces still stand, the newest first. Nobody else knows of them any more. */
  cards: readonly Place[];
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
  /** Who is left out of boards and pictures: their ids, sorted. */
  hiddenMembers(): Promise<string[]>;
  /** A member's pans, by name. */
  pans(member: string): Promise<Pan[]>;
  /** Keeps a pan, or its new weight; names differing in case alone are one. */
  keepPan(member: string, pan: Pan): Promise<void>;
  /** Whether there was one of that name. */
  removePan(member: string, name: string): Promise<boolean>;

  /** The cuts of the club's own that it offers, by key. */
  ownCuts(): Promise<CutKey[]>;
  /** Keeps one; one that is there stays. */
  keepOwnCut(key: CutKey): Promise<void>;
  /** Whether there was one; the pieces of it stay. */
  removeOwnCut(key: CutKey): Promise<boolean>;
  /** Those that pieces are of, whether it offers them or not; by key. */
  weighedOwnCuts(): Promise<CutKey[]>;

  /**
   * Keeps a new piece; the same id again keeps nothing and returns the one that is there.
   * Null: it was kept once, and removed since.
   */
  start(piece: NewPiece): Promise<Kept | null>;
  /**
   * Keeps many new pieces, in this order: all of them or, where something is thrown, none. One whose id the club has
   * already, or had before it was removed, is passed over. Takes its time, and leaves the others theirs.
   * @param at UTC milliseconds
   */
  addAll(pieces: readonly ImportedPiece[], at: number): Promise<Added>;
  /** How many of these ids `addAll` would pass over. Takes its time, and leaves the others theirs. */
  known(ids: readonly string[]): Promise<number>;
  /**
   * Changes a piece in one transaction: `change` sees it as it stands and returns what becomes new.
   * What `change` throws undoes everything. It may be asked twice, where another process was writing.
   * The same interaction again changes nothing. Null: no such piece.
   */
  correct(id: string, by: Correction, change: (piece: Piece) => PieceChange): Promise<Kept | null>;
  /**
   * Takes a piece away with its corrections, for good: its id and its number alone stay, so that neither is used
   * again, whose it was, so that they can be erased, and where its cards were posted. Whether it was there.
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
  /** The newest pieces that managers set aside, whoever weighed them in, at most `limit`. */
  setAside(limit: number): Promise<Piece[]>;
  /** The pieces posted after the one of this number (0: from the first), of one member or all, oldest first, at most `limit`. */
  following(seq: number, limit: number, member?: string): Promise<Piece[]>;
  /** A member's pieces from one day to another, both included, in posting order; null: no bound. None that is set aside. */
  ofMember(member: string, from: CalendarDay | null, to: CalendarDay | null): Promise<Piece[]>;
  /**
   * Rows that have `measure`, in posting order, of one cut or (null) of all. Removed and set-aside pieces are left out.
   * From the heat on, injected and pumped pieces are a group of their own: they are the rows of `injected` alone.
   * The rows of `cost` are those of `plate`, and all that are not on the plate yet.
   */
  columns(cut: CutKey | null, measure: Averaged, injected?: boolean): Promise<Columns>;
  /** The cuts that pieces are of, most pieces first. */
  cuts(): Promise<CutKey[]>;
  /** Those of a member's pieces, most pieces first; of equals the one weighed in last. None that is set aside. */
  cutsOf(member: string): Promise<CutKey[]>;
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

  /** What is kept of a member here; of the whole club. */
  held(member: string): Promise<Held>;
  heldInAll(): Promise<Held>;
  /**
   * Takes a member's name off their pieces, which count on, together, under one random id (`hasLeft`) that is shown
   * nowhere. Deleted are their settings, pans, drafts and reminders, notes, texts as typed, shops that nobody else
   * named, and where their cards were posted.
   * @param at UTC milliseconds
   */
  leave(member: string, at: number): Promise<Erased>;
  /**
   * Deletes all that is kept of a member here. The numbers of their pieces are not given again; ids, texts and weights
   * are gone. What they changed of somebody else's piece stays changed, under no name.
   * @param at UTC milliseconds
   */
  eraseMember(member: string, at: number): Promise<Erased>;
  /** Deletes the club with all that is in it. Takes its time where it is large, and leaves the others theirs. */
  eraseClub(at: number): Promise<Erased>;
}

/** What one member left in all clubs of a store: bound to that member, as a ClubStore is to its club. */
export interface MemberStore {
  /** The clubs where anything of theirs is kept, by id. */
  held(): Promise<HeldIn[]>;
  /** Deletes it everywhere, all of it or nothing, as `eraseMember` does in one club. */
  erase(at: number): Promise<Erased>;
}

/** All clubs of one store. */
export interface Store {
  club(id: string): ClubStore;
  /** What a member left in all clubs: to be handed to that member alone. */
  everywhere(member: string): MemberStore;
  /** Ids of the clubs that are there and have not left. */
  clubs(): Promise<string[]>;
  /** Notes that a club is gone (its data go later) or has come back. */
  left(club: string, at: number): Promise<void>;
  returned(club: string): Promise<void>;
  /**
   * The clubs that are gone for as long as their rows are kept, by id.
   * @param days how long they are kept; as `PURGED_AFTER_DAYS` says, if it is left out
   */
  overdue(now: number, days?: number): Promise<string[]>;
  /** Takes the reminders that are due by `now`: each is given to one caller once, whatever the number of processes. */
  dueReminders(now: number): Promise<Reminder[]>;
  /** Forgets drafts that expired before `now`. */
  forgetDrafts(now: number): Promise<void>;
  close(): Promise<void>;
}
