/** One connection to a database file, set so that what was answered is kept. */
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import Sqlite from 'better-sqlite3';
import { type BetterSQLite3Database, drizzle } from 'drizzle-orm/better-sqlite3';
import * as schema from './schema.ts';

export type Database = BetterSQLite3Database<typeof schema> & { $client: Sqlite.Database };

export const MEMORY = ':memory:';

/** Opening a file that another process just closes may have to wait; nothing is served yet, so it may. */
const OPENING_WAIT_MS = 5000;

/**
 * Pages of the log, 16 MB, after which it is written into the file, by whoever commits just then: at SQLite's usual 1000
 * one weigh-in in a hundred had to wait for that.
 */
const LOG_PAGES = 4000;

/** What each thread's connection keeps of the file: the driver's usual 16 MB made no answer faster that was measured. */
const CACHE_KB = 2000;

/** The file of a `DATABASE_URL`: `file:data/trimtally.db`, `file:///var/club.db`, `:memory:`. */
export function databaseFile(url: string): string {
  if (url === MEMORY) return MEMORY;
  if (!url.startsWith('file:') || url === 'file:') {
    const scheme = /^[a-z0-9+.-]*:/i.exec(url)?.[0] ?? 'no scheme';
    throw new Error(`DATABASE_URL must be file:<path> or :memory:, not ${scheme}`);
  }
  return url.startsWith('file://') ? fileURLToPath(url) : url.slice('file:'.length);
}

/** Opens the file, and makes it and its folder if need be. The schema is not looked at. */
export function connect(url: string): Database {
  const file = databaseFile(url);
  if (file !== MEMORY) mkdirSync(dirname(file), { recursive: true });
  const client = new Sqlite(file, { timeout: OPENING_WAIT_MS });
  client.pragma('journal_mode = WAL');
  client.pragma('foreign_keys = ON');
  client.pragma('secure_delete = ON');
  client.pragma('synchronous = FULL');
  client.pragma(`wal_autocheckpoint = ${LOG_PAGES}`);
  client.pragma(`cache_size = -${CACHE_KB}`);
  return drizzle(client, { schema });
}

/** From here on a busy file is an error at once: waiting inside SQLite would stop every club. */
export function refuseToWait(db: Database): void {
  db.$client.pragma('busy_timeout = 0');
}
