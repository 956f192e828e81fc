/** How much of a file is read, and how much is written into one. */
import { TABLE_LIMITS } from '../../shared/chat/exchange.ts';
import { MemberError } from '../../shared/errors.ts';

export interface Limits {
  bytes: number;
  rows: number;
  /** Of one row, in characters. */
  row: number;
  /** How many bad rows are listed; the others are counted. */
  listed: number;
}

const MEGABYTE = 1_000_000;

/** For what is sent in a chat: read while the club is served. Every bad row is listed: most of them in a file. */
export const CHAT_LIMITS: Limits = { ...TABLE_LIMITS, row: 65_536, listed: TABLE_LIMITS.rows };

/** For who runs the machine. */
export const HOST_LIMITS: Limits = { bytes: 200 * MEGABYTE, rows: 100_000, row: 65_536, listed: 1000 };

/** Of a file that is attached to an answer: a chat platform takes a little more. */
export const ATTACHED_BYTES = 8 * MEGABYTE;

export const megabytesOf = (bytes: number): number => Math.round(bytes / MEGABYTE);

/** @throws MemberError for more bytes than the limit */
export function refuseLarge(bytes: number, limits: Pick<Limits, 'bytes'>): void {
  if (bytes > limits.bytes) throw new MemberError('csv-too-large', { megabytes: megabytesOf(limits.bytes) });
}
