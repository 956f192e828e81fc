/** What a member does, in no platform's terms, and what comes back. */
import type { Form, Notice, Reply } from './reply.ts';

/** Where and by whom something is done. */
export interface Scene {
  club: string;
  member: string;
  /** Whether the platform says that this member manages the club, at this very press. */
  manager: boolean;
  /** BCP 47, of the member's client and of the server. */
  locale: string;
  clubLocale: string;
  /** UTC milliseconds. */
  now: number;
}

/** Something that a member does: types a command, presses a button or a menu, sends a form. */
export type Request = Scene & { /** The interaction's id: the same one twice is done once. */ id: string } & (
    | { kind: 'command'; command: string; options: Readonly<Record<string, string>> }
    | { kind: 'press'; action: string; values: readonly string[] }
    | { kind: 'submit'; action: string; fields: Readonly<Record<string, string>> }
  );

/** What a member has typed so far of one option, for suggestions. */
export type Completion = Scene & {
  command: string;
  option: string;
  typed: string;
  options: Readonly<Record<string, string>>;
};

/** Who sees an answer: everyone in the channel, or the member alone. */
export type Audience = 'club' | 'member';

/** What comes back: a reply, or a form to fill in. */
export type Answer =
  | {
      kind: 'reply';
      audience: Audience;
      reply: Reply;
      /** Whether it takes the place of the message that was pressed. */
      edits: boolean;
      /** The same piece's card for all to see: shown in the place of each card of it that was posted. */
      reposts?: { piece: string; reply: Reply };
      /** Why nothing was kept, if nothing was: an error's or a question's code. */
      failed?: { code: string; asks: boolean; option?: string };
    }
  | { kind: 'form'; form: Form };

/**
 * An answer on its way. The audience is known before the work is done, since a platform that was told
 * "wait" can't change it later; a failure is always the member's own (`answer.audience` tells).
 */
export interface Coming {
  audience: Audience;
  edits: boolean;
  answer: Promise<Answer>;
}

/** One suggestion for an option. */
export interface Choice {
  /** What is shown; a platform may cut it. */
  label: string;
  /** What is typed in its place. One that is longer than a platform takes is not offered there. */
  value: string;
}

/** The one way in: the platform and the rehearsal both call this. */
export interface Desk {
  answer(request: Request): Coming;
  complete(completion: Completion): Promise<Choice[]>;
  /** The reminders that are due: each is given out once. */
  due(now: number): Promise<Due[]>;
}

/** A reminder for one member alone. */
export interface Due extends Notice {
  club: string;
}
