/** A command in no platform's terms: what it is called, what it reads, who sees its answer, what it does. */
import type { Club } from '../club/club.ts';
import type { Member } from '../club/member.ts';
import type { ClubStore, MemberStore } from '../club/store.ts';
import type { Doubt } from '../errors.ts';
import type { Find } from '../findings/index.ts';
import type { CalendarDay } from '../measure/day.ts';
import type { Nanograms } from '../measure/units.ts';
import type { Speech } from '../words/index.ts';
import type { Exchange } from './exchange.ts';
import type { Given, Options } from './option.ts';
import type { Doubtful, Form, Presser, Reply } from './reply.ts';
import type { Audience } from './request.ts';

/** Everything that a command may ask or use. */
export interface Context {
  /** The interaction that this comes of: what is kept under it is kept once. */
  id: string;
  store: ClubStore;
  /** What the member left in all clubs. */
  self: MemberStore;
  /** Tables of pieces, in and out. */
  exchange: Exchange;
  /** What the club's pieces say. */
  find: Find;
  club: Club;
  member: Member;
  pans: ReadonlyMap<string, Nanograms>;
  now: number;
  today: CalendarDay;
  /** The words of whoever sees the answer: the club's, or the member's. */
  say: Speech;
  /** The words of another member of the club, for what is written to them alone. */
  wordsFor(member: string): Promise<Speech>;
  /** The options as typed. */
  typed: Readonly<Record<string, string>>;
  /** Whether `typed` is all there is to a piece: what it does not hold any more is taken back. */
  replaces: boolean;
  /** Doubts that the member has settled. */
  confirmed: ReadonlySet<Doubt>;
  /** Extras that could not be taken as typed. */
  doubts: readonly Doubtful[];
}

/** A press on an action of the command. */
export interface Press {
  owner: string;
  about: readonly string[];
  /** The choice of a menu; null for a button. */
  value: string | null;
}

/** What pressing one of a command's actions does, who may, and who sees what comes of it. */
export interface PressRule {
  by: Presser;
  audience: Audience;
  /** Whether the answer takes the place of the message that was pressed. */
  edits: boolean;
  run(context: Context, press: Press): Promise<Reply | Form>;
}

/** A command: everything that a platform needs to offer it, and the desk to run it. */
export interface Command<O extends Options = Options> {
  /** `weigh`, or family and name: `mine units`. */
  name: string;
  audience(typed: Readonly<Record<string, string>>): Audience;
  /** For those alone who manage the club: its lines, presses, forms and completions, at that very moment. */
  managers?: true;
  options: O;
  /** Which options stand first in the form (at most four; all others go into its paragraph). */
  form(typed: Readonly<Record<string, string>>): readonly (keyof O & string)[];
  run(context: Context, given: Given<O>): Promise<Reply | Form>;
  actions?: Readonly<Record<string, PressRule>>;
  /** The card of a piece as all see it, for where it was posted before. Null: there is no such piece. */
  card?(context: Context, piece: string): Promise<Reply | null>;
}

/** Declares a command; what `run` is given follows from the options' types. */
export function command<const O extends Options>(declared: Command<O>): Command {
  // Every command reads its own options only, so the desk may treat all commands alike.
  return declared as unknown as Command;
}

/**
 * Whether a command's result is a form to fill in rather than a reply.
 * @example isForm({ answer: 'Kept.', figures: {} }) // false
 */
export const isForm = (result: Reply | Form): result is Form => 'inputs' in result;
