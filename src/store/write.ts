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

interface Writing {
  work(): unknown;
  resolve(value: unknown): void;
  reject(error: unknown): void;
}

const waiting = new WeakMap<Database, Writing[]>();

/**
 * Runs `work` in a transaction: all of it is kept, on the disk, or nothing.
 * `work` is synchronous, may run again where it could not be kept, and what it throws undoes it and passes through.
 *
 * What is written in the same turn of the event loop is committed together, since each commit waits for the disk.
 */
export function write<T>(db: Database, work: () => T): Promise<T> {
  return new Promise((resolve, reject) => {
    const group = waiting.get(db) ?? [];
    group.push({ work, resolve: resolve as Writing['resolve'], reject });
    if (group.length > 1) return;
    waiting.set(db, group);
    setImmediate(() => {
      waiting.delete(db);
      void keepTogether(db, group);
    });
  });
}

/** Where they can't be kept together, each is tried alone: a disk that is full for one may do for the others. */
async function keepTogether(db: Database, group: readonly Writing[]): Promise<void> {
  if (group.length === 1) return keepAlone(db, group);
  try {
    const kept = await inTransaction(db, () =>
      group.map((writing) => ({ ...writing, outcome: undoable(db, writing.work) })),
    );
    for (const { outcome, resolve, reject } of kept) {
      if ('value' in outcome) resolve(outcome.value);
      else reject(outcome.error);
    }
  } catch (error) {
    // Alone they would wait as long once more.
    if (error instanceof Error && isBusy(error.cause)) for (const { reject } of group) reject(error);
    else await keepAlone(db, group);
  }
}

async function keepAlone(db: Database, group: readonly Writing[]): Promise<void> {
  await Promise.all(group.map(({ work, resolve, reject }) => inTransaction(db, work).then(resolve, reject)));
}

/** Holds the write lock from its start. */
function inTransaction<T>(db: Database, work: () => T): Promise<T> {
  const transaction = db.$client.transaction(work);
  return whenFree(() => transaction.immediate());
}

/** Inside a transaction: what `work` throws undoes `work` alone. */
function undoable(db: Database, work: () => unknown): { value: unknown } | { error: unknown } {
  try {
    return { value: db.$client.transaction(work)() };
  } catch (error) {
    // A full disk may end the whole transaction.
    if (!db.$client.inTransaction) throw error;
    return { error };
  }
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
