/** Copies of the database: made while it is used, one a file, and gone when they are old. */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { BACKUPS_KEPT_DAYS } from '../../shared/club/retention.ts';
import { DAY_MS, HOUR_MS } from '../../shared/measure/time.ts';
import { connect, type Database, databaseFile } from './database.ts';

/** A copy in the folder of copies. */
export interface Copy {
  file: string;
  /** UTC milliseconds: all that was kept until then is in it. */
  at: number;
}

/** Looked at each hour, so one that holds what was erased is gone in time. */
const TOO_OLD_MS = BACKUPS_KEPT_DAYS * DAY_MS - 2 * HOUR_MS;
const MOST_KEPT = BACKUPS_KEPT_DAYS;
/** Pages that are copied before the others' turn: four megabytes, some milliseconds. */
const PAGES_TOGETHER = 1000;

/** `backup-2026-07-05T03-00-00-000Z.db`, `before-migration-1-2026-…Z.db`. */
const NAME =
  /^(?<kind>backup|before-migration-\d+)-(?<day>\d{4}-\d\d-\d\d)T(?<time>\d\d-\d\d-\d\d)-(?<ms>\d{3})Z\.db$/;
const UNFINISHED = '.part';

/** What a copy is called: `backup`, or `before-migration-1`, and the moment that it shows. */
export const copyName = (kind: string, at: number): string =>
  `${kind}-${new Date(at).toISOString().replace(/[:.]/g, '-')}.db`;

/** The copies that are there, the newest first: those of each night, and those from before a migration. */
export function copiesIn(folder: string): (Copy & { nightly: boolean })[] {
  if (!existsSync(folder)) return [];
  const found = readdirSync(folder).flatMap((name) => {
    const { kind, day, time = '', ms } = NAME.exec(name)?.groups ?? {};
    if (kind === undefined) return [];
    const at = Date.parse(`${day}T${time.replaceAll('-', ':')}.${ms}Z`);
    return [{ file: join(folder, name), at, nightly: kind === 'backup' }];
  });
  return found.toSorted((one, other) => other.at - one.at);
}

/** Copies a file that is in use, in steps between which everybody else is answered. Null for a database in memory. */
export async function backUp(url: string, folder: string, at: number): Promise<Copy | null> {
  if (!existsSync(databaseFile(url))) return null;
  const db = connect(url);
  try {
    return await copyTo(db, folder, at);
  } finally {
    db.$client.close();
  }
}

async function copyTo({ $client: client }: Database, folder: string, at: number): Promise<Copy> {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, copyName('backup', at));
  const unfinished = `${file}.${process.pid}${UNFINISHED}`;
  try {
    await client.backup(unfinished, { progress: () => PAGES_TOGETHER });
    // Under its name stands nothing but a whole copy.
    renameSync(unfinished, file);
  } finally {
    for (const left of [unfinished, `${unfinished}-journal`]) rmSync(left, { force: true });
  }
  return { file, at };
}

/**
 * Deletes the copies that are over 14 days old, and of those made at night all but the newest 14; what a copy that
 * was stopped half-way left behind, too. @returns the files
 */
export function dropOldCopies(folder: string, now: number): string[] {
  const copies = copiesIn(folder);
  const tooMany = copies.filter(({ nightly }) => nightly).slice(MOST_KEPT);
  return drop([...new Set([...tooMany, ...copies.filter(({ at }) => now - at > TOO_OLD_MS)])]);
}

export function drop(copies: readonly Copy[]): string[] {
  const files = copies.map(({ file }) => file);
  for (const file of files) rmSync(file, { force: true });
  return files;
}
