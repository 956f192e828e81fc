/** A look at a database file that changes nothing in it. */
import { existsSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import { databaseFile } from './database.ts';
import { countPending, migrationsFolder, readApplied, readJournal } from './migrations.ts';

export interface Examined {
  /** Migrations that the next start will apply. */
  pending: number;
  applied: number;
  /** What SQLite complains of; empty where the file is whole. */
  damage: string[];
  clubs: number;
  pieces: number;
}

const BUSY_MS = 5000;

/** Null where there is no such file. Throws where it is no database, or not one of this program's. */
export function examineStore(url: string): Examined | null {
  const file = databaseFile(url);
  if (!existsSync(file)) return null;
  // Not read-only: whoever opens it last takes its log away, which a reader would leave behind.
  const client = new Sqlite(file, { fileMustExist: true, timeout: BUSY_MS });
  try {
    client.pragma('query_only = ON');
    const checked = client.pragma('quick_check') as { quick_check: string }[];
    const damage = checked.map(({ quick_check: line }) => line).filter((line) => line !== 'ok');
    const applied = readApplied(client);
    const pending = countPending(readJournal(migrationsFolder()), applied);
    return { applied: applied.length, pending, damage, ...counted(client, applied.length) };
  } finally {
    client.close();
  }
}

const COUNT = 'select (select count(*) from club) as clubs, (select count(*) from piece) as pieces';

function counted(client: Sqlite.Database, applied: number): Pick<Examined, 'clubs' | 'pieces'> {
  const none = { clubs: 0, pieces: 0 };
  return applied === 0 ? none : (client.prepare<[], typeof none>(COUNT).get() ?? none);
}
