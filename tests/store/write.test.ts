/** Writing at once: one commit for all, and each has what is its own. */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { connect, type Database, databaseFile } from '../../src/store/database.ts';
import { openStore } from '../../src/store/open.ts';
import { write } from '../../src/store/write.ts';
import { type Folder, makeFolder } from './folder.ts';

let folder: Folder;
let url: string;
let db: Database;
beforeEach(() => {
  folder = makeFolder();
  url = folder.url('club.db');
  db = connect(url);
  db.$client.exec('create table deed (name text primary key)');
  db.$client.pragma('wal_checkpoint(TRUNCATE)');
});
afterEach(() => {
  db.$client.close();
  folder.discard();
});

const insert = (name: string) =>
  write(db, () => db.$client.prepare('insert into deed values (?)').run(name).changes);
const kept = () => db.$client.prepare('select name from deed order by name').pluck().all();

/**
 * Commits in the log: frames whose header has the size of the file after them (SQLite, "Database File Format", 4.1:
 * a header of 32 bytes, then frames of 24 bytes and a page).
 */
function commits(): number {
  const log = readFileSync(`${databaseFile(url)}-wal`);
  const page = log.readUInt32BE(8);
  let found = 0;
  for (let at = 32; at < log.length; at += 24 + page) if (log.readUInt32BE(at + 4) > 0) found += 1;
  return found;
}

test('a hundred at once are one commit, and as many one after the other are a hundred', async () => {
  const names = Array.from({ length: 100 }, (_, at) => `deed ${at}`);
  expect(await Promise.all(names.map(insert))).toEqual(names.map(() => 1));
  expect(commits()).toBe(1);
  for (const name of names) await insert(`${name} again`);
  expect(commits()).toBe(101);
  expect(kept()).toHaveLength(200);
});

test('one that fails is undone alone, all of it', async () => {
  const half = write(db, () => {
    db.$client.exec("insert into deed values ('half')");
    throw new Error('changed my mind');
  });
  const all = await Promise.allSettled([insert('a'), half, insert('a'), insert('b')]);
  expect(all).toMatchObject([
    { status: 'fulfilled', value: 1 },
    { status: 'rejected', reason: { message: 'changed my mind' } },
    { status: 'rejected', reason: { code: 'SQLITE_CONSTRAINT_PRIMARYKEY' } },
    { status: 'fulfilled', value: 1 },
  ]);
  expect(kept()).toEqual(['a', 'b']);
});

test('one that ends the transaction of all takes nothing from the others', async () => {
  let times = 0;
  const ends = write(db, () => {
    times += 1;
    db.$client.exec("insert or rollback into deed values ('a'), ('a')");
  });
  const all = await Promise.allSettled([insert('x'), ends, insert('y')]);
  expect(all.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
  expect(kept()).toEqual(['x', 'y']);
  expect(times).toBe(2);
});

test('what was written right before the end is kept', async () => {
  const store = await openStore(folder.url('other.db'), { migrate: true });
  const left = store.left('nobody', 1);
  await Promise.all([left, store.close()]);
});
