/** What was erased is gone from the file, its log and the newest backup: looked for byte by byte. */
import { cpSync, existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { getTableColumns, getTableName } from 'drizzle-orm';
import { SQLiteTable } from 'drizzle-orm/sqlite-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ClubStore, Store } from '../../shared/club/store.ts';
import { backUp, copiesIn, dropOldCopies } from '../../src/store/backup.ts';
import { databaseFile } from '../../src/store/database.ts';
import { openStore } from '../../src/store/open.ts';
import * as schema from '../../src/store/schema.ts';
import { pendingIn, tidy } from '../../src/store/tidy.ts';
import { TRACES } from '../../src/store/traces.ts';
import { stillThere } from './bytes.ts';
import { type Folder, makeFolder } from './folder.ts';
import { BRISKET, lb, NOON, sampleClub, samplePiece } from './samples.ts';

const DAY = 86_400_000;
const INES = '771100000000000042';
/** Every id and text of hers has one of these in it. */
const HERS = [INES, '88220000000', 'only-her-note', 'only-her-shop', 'only-her-pan', 'only-her-line'];

let folder: Folder;
let url: string;
let backups: string;
let store: Store;
let club: ClubStore;

beforeEach(async () => {
  folder = makeFolder();
  url = folder.url('club.db');
  backups = join(folder.path, 'backups');
  store = await openStore(url, { migrate: true });
  club = store.club('a');
  await club.found(sampleClub('a'));
});
afterEach(async () => {
  await store.close();
  folder.discard();
});

const idOf = (place: number) => `88220000000${1000 + place}`;

/** Hers and juri's in turns, so that hers stand in the middle of pages; some long enough for pages of their own. */
async function fill(own: ClubStore, count: number): Promise<void> {
  for (let place = 0; place < count; place += 1) {
    const note = `only-her-note ${'x'.repeat(place % 7 === 0 ? 9000 : 50)}`;
    const typed = { bought: '14.8 lb', note };
    const told = { trim: lb(1 + place / count), shop: 'only-her-shop', note, typed };
    await own.start(samplePiece(idOf(place), { member: INES, ...told }));
    await own.start(samplePiece(`juri-${place}`, { member: 'juri', trim: lb(2), note: 'juris own note' }));
  }
  const her = (interaction: string) => ({ interaction, member: INES, at: NOON, why: 'only-her-note' });
  await own.correct(idOf(1), her('88220000000-i'), () => ({ note: 'only-her-note, mended' }));
  await own.correct('juri-1', { ...her('88220000000-j'), why: 'too light' }, () => ({ trim: lb(3) }));
  await own.remove(idOf(2), NOON);
  await own.remember(INES, { presets: { shop: 'only-her-shop', pan: 'only-her-pan' } });
  await own.keepPan(INES, { name: 'only-her-pan', weight: lb(1) });
  await own.remind({ piece: idOf(3), member: INES, dueAt: NOON });
  await own.keepPosted({ piece: idOf(3), channel: 'c', message: 'm' });
  await own.keepDraft({
    id: '88220000000-d',
    member: INES,
    command: 'weigh',
    options: { note: 'only-her-line' },
    confirmed: [],
    readings: [],
    interaction: '88220000000-d',
    expiresAt: NOON + DAY,
  });
}

/** How juri's figures stand. */
async function ofJuri(own: ClubStore) {
  const all = await own.newest('juri', 1000);
  return all.map(({ seq, trim, note, bought, revision }) => ({ seq, trim, note, bought, revision }));
}

describe('after an erasure and a tidy', () => {
  it('no byte of theirs is in the file, its log or the newest backup; the others have all of theirs', async () => {
    await fill(club, 60);
    const before = await ofJuri(club);
    expect(stillThere(folder.path, HERS).length).toBeGreaterThan(HERS.length - 1);
    await club.eraseMember(INES, NOON);
    const done = await tidy(url, { backupDir: backups, now: NOON + 1000 });
    expect(stillThere(folder.path, HERS)).toEqual([]);
    expect(stillThere(folder.path, ['juris own note']).length).toBeGreaterThan(1);
    expect(readdirSync(backups).map((name) => join(backups, name))).toEqual([done?.backup]);
    expect(await ofJuri(club)).toEqual(before);
    expect((await club.columns(BRISKET, 'trim')).count).toBe(60);
    expect((await club.start(samplePiece('next')))?.piece.seq).toBe(121);
  });

  it('nor after they left, but their pieces count on', async () => {
    await fill(club, 30);
    const before = await club.columns(BRISKET, 'trim');
    await club.leave(INES, NOON);
    await tidy(url, { backupDir: backups, now: NOON + 1000 });
    expect(stillThere(folder.path, HERS)).toEqual([]);
    const after = await club.columns(BRISKET, 'trim');
    expect([after.loss, after.base]).toEqual([before.loss, before.base]);
  });

  it('nor of a club that was erased, however many pieces it had', async () => {
    await store.club('b').found(sampleClub('b'));
    await fill(store.club('b'), 4);
    const large = store.club('990000000000000099');
    await large.found(sampleClub('990000000000000099'));
    for (let place = 0; place < 1200; place += 1) await large.start(samplePiece(`5533-${place}`));
    await large.eraseClub(NOON);
    await tidy(url, { backupDir: backups, now: NOON + 1000 });
    expect(stillThere(folder.path, ['990000000000000099', '5533-'])).toEqual([]);
    expect(await store.club('b').piece({ seq: 1 })).not.toBeNull();
  });

  it('the numbers of her pieces do not tell which were one member’s', async () => {
    await fill(club, 4);
    await club.eraseMember(INES, NOON);
    const client = new Sqlite(databaseFile(url), { readonly: true });
    const gone = client.prepare('select * from piece where removed_at is not null').all() as object[];
    client.close();
    expect(gone).toHaveLength(4);
    for (const row of gone) expect(row).toMatchObject({ removed_at: 0, member_id: null });
  });
});

it('every table that says who, or by which message, is known to the erasing', () => {
  const says = Object.values(schema).flatMap((table) => {
    if (!(table instanceof SQLiteTable)) return [];
    const columns = Object.values(getTableColumns(table)).map(({ name }) => name);
    return columns.some((name) => ['member_id', 'interaction_id'].includes(name))
      ? [getTableName(table)]
      : [];
  });
  expect(says.filter((name) => !(name in TRACES))).toEqual([]);
});

describe('tidying', () => {
  it('is pending from the first erasure until it is done, and again after another', async () => {
    expect(await pendingIn(url)).toBeNull();
    await fill(club, 4);
    await club.eraseMember(INES, NOON);
    await club.eraseMember('juri', NOON + 5);
    expect(await pendingIn(url)).toEqual({ since: NOON, erasures: 2 });
    await tidy(url, { backupDir: backups, now: NOON + 1000 });
    expect(await pendingIn(url)).toBeNull();
    await club.eraseMember(INES, NOON + 2000);
    expect(await pendingIn(url)).toBeNull();
    await club.start(samplePiece('1'));
    await club.leave('ines', NOON + 3000);
    expect(await pendingIn(url)).toMatchObject({ since: NOON + 3000 });
  });

  it('renews the newest backup and leaves older ones to their age, unless it is to forget them', async () => {
    await fill(club, 4);
    const old = await backUp(url, backups, NOON - DAY);
    await club.eraseMember(INES, NOON);
    const between = await backUp(url, backups, NOON + 500);
    const done = await tidy(url, { backupDir: backups, now: NOON + 1000 });
    expect(done?.dropped).toEqual([between?.file]);
    expect(copiesIn(backups).map(({ file }) => file)).toEqual([done?.backup, old?.file]);
    const again = await tidy(url, { backupDir: backups, now: NOON + 2000, forgetOlder: true });
    expect(copiesIn(backups).map(({ file }) => file)).toEqual([again?.backup]);
    expect(stillThere(folder.path, HERS)).toEqual([]);
  });

  it('of a database in memory is nothing', async () => {
    expect(await tidy(':memory:', { backupDir: backups, now: NOON })).toBeNull();
    expect(await backUp(':memory:', backups, NOON)).toBeNull();
    expect(existsSync(backups)).toBe(false);
  });

  it('says so where another process reads the log for too long', async () => {
    await fill(club, 4);
    await club.eraseMember(INES, NOON);
    const reader = new Sqlite(databaseFile(url));
    reader.exec('begin');
    reader.prepare('select count(*) from piece').get();
    await club.start(samplePiece('1'));
    await expect(tidy(url, { backupDir: backups, now: NOON + 1000 })).rejects.toThrow('log');
    expect(await pendingIn(url)).not.toBeNull();
    reader.exec('commit');
    reader.close();
    await tidy(url, { backupDir: backups, now: NOON + 2000 });
    expect(stillThere(folder.path, HERS)).toEqual([]);
  });
});

describe('backups', () => {
  it('are made while the club goes on, and hold what was kept until then', async () => {
    for (let place = 0; place < 300; place += 1)
      await club.start(samplePiece(`p${place}`, { note: 'x'.repeat(3000) }));
    const making = backUp(url, backups, NOON);
    let answered = 0;
    for (let going = true; going; answered += 1) {
      going = await Promise.race([making.then(() => false), club.settings().then(() => true)]);
      await new Promise(setImmediate);
    }
    const copy = await making;
    expect(answered).toBeGreaterThan(1);
    const kept = await openStore(`file:${copy?.file}`);
    expect(await kept.club('a').piece({ seq: 300 })).toMatchObject({ id: 'p299' });
    await kept.close();
  });

  it('are restored as the README says: stop, copy, start', async () => {
    await club.start(samplePiece('1'));
    const copy = await backUp(url, backups, NOON);
    await club.start(samplePiece('2'));
    // Stop, and no log of the file that is replaced may stay.
    await store.close();
    const file = databaseFile(url);
    for (const ending of ['-wal', '-shm']) rmSync(`${file}${ending}`, { force: true });
    cpSync(copy?.file ?? '', file);
    store = await openStore(url);
    expect(await store.club('a').piece({ seq: 1 })).toMatchObject(samplePiece('1'));
    expect(await store.club('a').piece({ seq: 2 })).toBeNull();
    expect((await store.club('a').start(samplePiece('3')))?.piece.seq).toBe(2);
  });

  it('are kept for 14 nights; a copy from before a migration as long', async () => {
    const empty = folder.url('empty.db');
    await (await openStore(empty, { migrate: true })).close();
    for (let night = 0; night < 20; night += 1) {
      await backUp(empty, backups, NOON + night * DAY);
      dropOldCopies(backups, NOON + night * DAY);
    }
    const nights = copiesIn(backups).map(({ at }) => (at - NOON) / DAY);
    expect(nights).toEqual([19, 18, 17, 16, 15, 14, 13, 12, 11, 10, 9, 8, 7, 6]);
    cpSync(copiesIn(backups)[0]?.file ?? '', join(backups, 'before-migration-1-2026-07-04T12-00-00-000Z.db'));
    expect(dropOldCopies(backups, NOON + 13 * DAY)).toEqual([]);
    expect(dropOldCopies(backups, NOON + 14 * DAY)).toEqual([
      join(backups, 'before-migration-1-2026-07-04T12-00-00-000Z.db'),
    ]);
    cpSync(databaseFile(empty), join(backups, 'my-own.db'));
    expect(dropOldCopies(backups, NOON + 400 * DAY)).toHaveLength(14);
    expect(readdirSync(backups)).toEqual(['my-own.db']);
  });
});
