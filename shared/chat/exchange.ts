/** The port through which commands read a table of pieces that was sent, and write one. It is bound to who asks, and where. */
import type { RowProblem } from '../csv/read-row.ts';
import type { ReplyFile } from './reply.ts';
import type { SentFile } from './sent-file.ts';

/** The formats in which a table is written. */
export const TABLE_FORMATS = ['csv', 'json'] as const;
/** `csv` can be read back; `json` has every figure. */
export type TableFormat = (typeof TABLE_FORMATS)[number];

/** The most that is read of a table in a chat. */
export const TABLE_LIMITS = { rows: 10_000, bytes: 5_000_000 } as const;

/** A row that is no piece. */
export interface BadRow {
  /** From 1, as an editor counts. */
  line: number;
  /** As the file calls it; null where the row as a whole is to blame. */
  column: string | null;
  problem: RowProblem['problem'];
}

/** What was read of a table, whatever becomes of it. */
export interface TableRead {
  /** How many rows there are under the header. */
  rows: number;
  /** As many as are listed; `badCount` counts the others too. */
  bad: readonly BadRow[];
  badCount: number;
  /** Names of columns that were passed over. */
  ignored: readonly string[];
  /** Rows in which a bare number was taken to be in the club's units. */
  unitsTaken: number;
}

/** What would come of a table. */
export interface TableSeen extends TableRead {
  /** Pieces that would be new, and those that are there already. */
  fresh: number;
  there: number;
  /** Of the file's bytes and of what it was read by. */
  hash: string;
}

/** What came of a table. */
export interface TableKept extends TableRead {
  added: number;
  there: number;
}

/** Tables of pieces, in and out. */
export interface Exchange {
  /**
   * Reads a table and keeps nothing.
   * @throws MemberError for a file that can't be had or is no table of pieces
   */
  look(file: SentFile): Promise<TableSeen>;
  /**
   * Reads a table that was looked at once more, and keeps its good rows: all of them, or nothing.
   * @param seen its address and hash, and when it was looked at: UTC milliseconds
   * @throws MemberError as `look` does, and where it is not what was looked at
   */
  keep(seen: { url: string; hash: string; at: number }): Promise<TableKept>;
  /**
   * The club's pieces, or one member's own, in posting order; null where there are none.
   * @throws MemberError where they come to more than can be attached
   */
  write(format: TableFormat, member: string | null): Promise<(ReplyFile & { pieces: number }) | null>;
}
