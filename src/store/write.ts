/** Reading and writing while other processes do: tried again, without stopping the other clubs. */
import { setTimeout as wait } from 'node:timers/promises';
import Sqlite from 'better-sqlite3';
import type { Database } from './database.ts';

const PATIENCE_MS = 2500;
const FIRST_WAIT_MS = 1;
const LONGEST_WAIT_MS = 200;

const isBusy = (error: unknown): boolean =>
  error instanceof Sqlite.SqliteError && error.code.startsWith('SQLITE_BUSY');

/**
 * Runs `work` until the file is free, for 2.5 s at most. `work` must be without effect where it is refused.
 * The waits grow, and differ at random so that two waiting processes part ways.
 */
export async function whenFree<T>(work: () => T): Promise<T> {
  const until = performance.now() + PATIENCE_MS;
  for (let longest = FIRST_WAIT_MS; ; longest = Math.min(longest * 2, LONGEST_WAIT_MS)) {
    try {
      return work();
    } catch (error) {
      if (!isBusy(error)) throw error;
      const pause = longest * (0.5 + Math.random() / 2);
      if (performance.now() + pause > until) {
        throw new Error(`the store was busy for ${PATIENCE_MS} ms`, { cause: error });
      }
      await wait(pause);
    }
  }
}

/**
 * Runs `work` in one transaction that holds the write lock from its start: all of it is kept, or nothing.
 * `work` is synchronous, may run again where the file was busy, and what it throws undoes it and passes through.
 */
export function write<T>(db: Database, work: () => T): Promise<T> {
  const transaction = db.$client.transaction(work);
  return whenFree(() => transaction.immediate());
}

/** Runs one reading statement. */
export function read<T>(work: () => T): Promise<T> {
  return whenFree(work);
}

/** Runs several reading statements that see the same moment. */
export function readTogether<T>(db: Database, work: () => T): Promise<T> {
  const transaction = db.$client.transaction(work);
  return whenFree(() => transaction.deferred());
}
