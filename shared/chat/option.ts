/** An option of a command: what a member may type there, and how it is read. */
import type { Club } from '../club/club.ts';
import type { Member } from '../club/member.ts';
import type { Piece } from '../club/piece.ts';
import type { CalendarDay } from '../measure/day.ts';
import type { Nanograms, Units } from '../measure/units.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';

/** What reading an option depends on. */
export interface Reader {
  /** The option's name. */
  option: string;
  /** BCP 47, of the member's client: how they write a decimal. */
  locale: string;
  club: Club;
  member: Member;
  /** What a bare number is in: as the member said once, or as the rest of the line says; null where neither does. */
  units: Units | null;
  pans: ReadonlyMap<string, Nanograms>;
  /** The cuts of the club's own that it knows; while an option is completed, those that it offers. */
  ownCuts: readonly CutKey[];
  today: CalendarDay;
}

/** What completing an option depends on. */
export interface Completer extends Reader {
  say: Speech;
  /** What the other options hold so far. */
  options: Readonly<Record<string, string>>;
  /** The shops that the club named, most used first. */
  shops(): Promise<readonly string[]>;
  /** The member's newest pieces. */
  pieces(): Promise<readonly Piece[]>;
}

/** What is offered while somebody types: what the menu shows, and what it writes. */
export interface Suggestion {
  label: string;
  value: string;
}

/** One option of a command. Without `complete` and `choices` nothing is offered. */
export interface Option<Value> {
  kind: 'text' | 'yes-no' | 'member' | 'file';
  /** Whether its text may name units, which then hold for the bare numbers of the whole line. */
  tellsUnits?: true;
  /** @throws MemberError or Ask, nothing else. */
  read(text: string, reader: Reader): Value;
  /** An extra must not hold up the weights: when it can't be taken the command goes on without it and asks after. */
  extra?: boolean;
  /** Fixed values, at most 25; `say.choices` has their words. */
  choices?: readonly string[];
  complete?(typed: string, completer: Completer): Promise<readonly Suggestion[]> | readonly Suggestion[];
}

/** The options of a command by name. */
export type Options = Readonly<Record<string, Option<unknown>>>;

/** What was given: each option's value, or undefined where it was not given. `null` takes a value back. */
export type Given<O extends Options> = {
  [Name in keyof O]?: O[Name] extends Option<infer Value> ? Value | null : never;
};
