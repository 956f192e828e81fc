/** How much of a file is read. */
export interface Limits {
  bytes: number;
  rows: number;
  /** Of one row, in characters. */
  row: number;
  /** How many bad rows are listed; the others are counted. */
  listed: number;
}

const MEGABYTE = 1_000_000;

/** For what is sent in a chat: read while the club is served. */
export const CHAT_LIMITS: Limits = { bytes: 8 * MEGABYTE, rows: 10_000, row: 65_536, listed: 100 };

/** For who runs the machine. */
export const HOST_LIMITS: Limits = { bytes: 200 * MEGABYTE, rows: 100_000, row: 65_536, listed: 1000 };
