/** The migrations folder, and how far a database has come along it. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type Sqlite from 'better-sqlite3';
import { type MigrationMeta, readMigrationFiles } from 'drizzle-orm/migrator';

/** drizzle's own table, so that its tools can read the database. */
export const TABLE = '__drizzle_migrations';

interface Applied {
  hash: string;
}

/** The folder beside package.json: this file is two folders below it in the source, three when compiled. */
export function migrationsFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'migrations', 'meta', '_journal.json'))) {
    const above = dirname(folder);
    if (above === folder) throw new Error('the migrations folder is missing');
    folder = above;
  }
  return join(folder, 'migrations');
}

/** The migrations in the journal's order, which must be the order of their times. */
export function readJournal(folder: string): MigrationMeta[] {
  const journal = readMigrationFiles({ migrationsFolder: folder });
  journal.forEach((migration, at) => {
    const before = journal[at - 1];
    if (before && before.folderMillis >= migration.folderMillis) {
      throw new Error(`migration ${at} in the journal is not later than the one before it`);
    }
  });
  return journal;
}

/** What was applied to this database, in that order. */
export function readApplied(client: Sqlite.Database): Applied[] {
  const table = client.prepare('select 1 from sqlite_master where type = ? and name = ?').get('table', TABLE);
  if (!table) return [];
  return client.prepare<[], Applied>(`select hash from ${TABLE} order by created_at, rowid`).all();
}

/** How many migrations are missing. Throws where the database did not come along this journal. */
export function countPending(journal: readonly MigrationMeta[], applied: readonly Applied[]): number {
  if (applied.length > journal.length) {
    throw new Error(
      `the database is newer than this program: ${applied.length} migrations, ${journal.length} known`,
    );
  }
  applied.forEach(({ hash }, at) => {
    if (hash === journal[at]?.hash) return;
    const skipped = journal.some((migration) => migration.hash === hash);
    throw new Error(
      skipped
        ? `the database skipped migration ${at}: restore a backup`
        : `migration ${at} of the database is unknown to this program`,
    );
  });
  return journal.length - applied.length;
}
