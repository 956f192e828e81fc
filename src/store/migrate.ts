/** Bringing a database up to this program's schema. Only the launcher does it, before anything is served. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type Sqlite from 'better-sqlite3';
import type { MigrationMeta } from 'drizzle-orm/migrator';
import { copyName } from './backup.ts';
import { connect, type Database } from './database.ts';
import { countPending, migrationsFolder, readApplied, readJournal, TABLE } from './migrations.ts';

export interface MigrationOptions {
  /** Where a copy of the database goes before it is changed; without it there is none. */
  backupDir?: string;
  /** Names the copy. UTC milliseconds. */
  now?: () => number;
  folder?: string;
}

/** What was done: how many migrations, and where the copy is. */
export interface Migrated {
  applied: number;
  backup: string | null;
}

/** Migrates the file of `url`; throws, with everything as it was, where that can't be done safely. */
export async function migrateStore(url: string, options: MigrationOptions = {}): Promise<Migrated> {
  const db = connect(url);
  try {
    return migrate(db, options);
  } finally {
    db.$client.close();
  }
}

/**
 * Migrates an open database. drizzle's own migrator is not used: it compares times alone, so that it passes over
 * a migration without a word, and it can't look for orphans before it commits.
 */
export function migrate({ $client: client }: Database, options: MigrationOptions = {}): Migrated {
  const journal = readJournal(options.folder ?? migrationsFolder());
  const applied = readApplied(client);
  if (countPending(journal, applied) === 0) return { applied: 0, backup: null };
  const backup = applied.length > 0 ? copy(client, applied.length, options) : null;

  // Inside a transaction SQLite ignores this switch, and a rebuilt table would take its children along.
  client.pragma('foreign_keys = OFF');
  try {
    const transaction = client.transaction(() => applyPending(client, journal));
    return { applied: transaction.immediate(), backup };
  } finally {
    client.pragma('foreign_keys = ON');
  }
}

function applyPending(client: Sqlite.Database, journal: readonly MigrationMeta[]): number {
  client.exec(
    `create table if not exists ${TABLE} (id SERIAL PRIMARY KEY, hash text NOT NULL, created_at numeric)`,
  );
  const keep = client.prepare(`insert into ${TABLE} (hash, created_at) values (?, ?)`);
  // Looked at again under the lock: another launcher may have been here.
  const pending = countPending(journal, readApplied(client));
  for (const migration of journal.slice(journal.length - pending)) {
    for (const statement of migration.sql) client.exec(statement);
    keep.run(migration.hash, migration.folderMillis);
  }
  const orphans = client.pragma('foreign_key_check');
  if (Array.isArray(orphans) && orphans.length > 0) {
    throw new Error(
      `the migration would leave ${orphans.length} rows without their parent: nothing was changed`,
    );
  }
  if (countPending(journal, readApplied(client)) !== 0) {
    throw new Error('fewer migrations were applied than the journal has: nothing was changed');
  }
  return pending;
}

function copy(client: Sqlite.Database, applied: number, options: MigrationOptions): string | null {
  if (options.backupDir === undefined || client.memory) return null;
  mkdirSync(options.backupDir, { recursive: true });
  const file = join(options.backupDir, copyName(`before-migration-${applied}`, (options.now ?? Date.now)()));
  client.prepare('vacuum into ?').run(file);
  return file;
}

/** Throws one line where the schema is not this program's. */
export function checkSchema({ $client: client }: Database, folder = migrationsFolder()): void {
  const pending = countPending(readJournal(folder), readApplied(client));
  if (pending > 0)
    throw new Error(`the database is older than this program: ${pending} migrations are missing`);
}
