/** A command that waits for an answer: what a question, a form or a button comes back to. */
import type { Doubt, Remembered } from '../errors.ts';

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
