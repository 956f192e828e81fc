/** Tidying: what was erased leaves the file's free pages, its log and the newest backup. */
import { existsSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { backUp, copiesIn, drop } from './backup.ts';
import { connect, type Database, databaseFile, refuseToWait } from './database.ts';
import { checkSchema } from './migrate.ts';
import { type Pending, upkeep } from './upkeep.ts';
import { whenFree } from './write.ts';

export interface TidyOptions {
  backupDir: string;
  /** UTC milliseconds. */
  now: number;
  /** Keeps the new backup alone. */
  forgetOlder?: boolean;
}

export interface Tidied {
  /** The new backup. */
  backup: string;
  /** The older ones that were deleted. */
  dropped: string[];
}

/** A reader of another process can keep the log from being emptied for a moment. */
const TRIES = 20;
const BETWEEN_TRIES_MS = 100;

/** What waits to be tidied away; null where nothing does, or there is no such file. */
export async function pendingIn(url: string): Promise<Pending | null> {
  if (!existsSync(databaseFile(url))) return null;
  return using(url, async (db) => upkeep(db).pending());
}

/**
 * Rebuilds the file, empties its log, and renews the newest backup: those made since the first erasure are deleted.
 * Throws where the log can't be emptied: then everything is still to be done. Null for a database in memory.
 */
export async function tidy(url: string, options: TidyOptions): Promise<Tidied | null> {
  if (!existsSync(databaseFile(url))) return null;
  const { backupDir, now, forgetOlder = false } = options;
  return using(url, async (db) => {
    const state = upkeep(db);
    const pending = state.pending();
    await whenFree(() => db.$client.exec('vacuum'));
    await emptyLog(db);
    const older = copiesIn(backupDir);
    const copy = await backUp(url, backupDir, now);
    if (copy === null) throw new Error('the database is gone');
    const renewed = older.filter(
      ({ at, file }) => file !== copy.file && (forgetOlder || (pending !== null && at >= pending.since)),
    );
    const dropped = drop(renewed);
    if (pending !== null) await state.clear(pending);
    await emptyLog(db);
    return { backup: copy.file, dropped };
  });
}

/** Writes the log into the file and leaves none of it. */
async function emptyLog({ $client: client }: Database): Promise<void> {
  for (let tries = 0; tries < TRIES; tries += 1) {
    const [result] = client.pragma('wal_checkpoint(TRUNCATE)') as { busy: number }[];
    if (result?.busy === 0) return;
    await wait(BETWEEN_TRIES_MS);
  }
  throw new Error('the log can not be emptied: another process reads it');
}

async function using<T>(url: string, work: (db: Database) => Promise<T>): Promise<T> {
  const db = connect(url);
  try {
    checkSchema(db);
    refuseToWait(db);
    return await work(db);
  } finally {
    db.$client.close();
  }
}
