/** What the doctor found. */
import { messageOf } from '../problem.ts';

export interface Finding {
  /** What was looked at, in a word: `token`. */
  what: string;
  /** `note`: nothing is wrong, but the host may want to know. */
  state: 'ok' | 'note' | 'wrong';
  /** How it is, or what to do. */
  says: string;
}

export type Told = Omit<Finding, 'what'>;

export const ok = (says: string): Told => ({ state: 'ok', says });
export const note = (says: string): Told => ({ state: 'note', says });
export const wrong = (says: string): Told => ({ state: 'wrong', says });

/** Looks, and takes what is thrown for what is wrong. */
export async function find(what: string, look: () => Told | Promise<Told>): Promise<Finding> {
  try {
    return { what, ...(await look()) };
  } catch (problem) {
    return { what, ...wrong(messageOf(problem)) };
  }
}

const MARKS = { ok: 'ok   ', note: 'note ', wrong: 'WRONG' };

/** One line. */
export const lineOf = ({ what, state, says }: Finding): string =>
  `${MARKS[state]}  ${what.padEnd(9)}  ${says.replaceAll(/\s*\n\s*/g, ' ')}`;
