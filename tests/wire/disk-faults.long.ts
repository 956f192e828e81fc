/** A bot of its own process on a disk of its own: full, not to be written, back again. Where no such disk can be had, skipped. */
import { copyFileSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { type Folder, makeFolder } from '../store/folder.ts';
import { canMount, startProcess } from './bot-process.ts';
import { type Club, type Exchange, openStandIn, type StandIn } from './stand-in.ts';

let platform: StandIn;
let folder: Folder;
let club: Club;
let disk: string;
beforeEach(async () => {
  platform = await openStandIn({ answerWithinMs: 10_000, patienceMs: 15_000 });
  folder = makeFolder();
  club = platform.addClub();
  disk = join(folder.path, 'disk');
  mkdirSync(disk);
});
afterEach(async () => {
  folder.discard();
  await platform.close();
});

const environment = () => ({
  DISCORD_TOKEN: platform.token,
  DISCORD_API_URL: platform.apiUrl,
  DATABASE_URL: `file:${join(disk, 'club.db')}`,
  BACKUP_DIR: join(folder.path, 'backups'),
});
const WEIGHED = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' };
const weigh = (): Promise<Exchange> =>
  club.addMember().types('/weigh', { ...WEIGHED, note: 'x'.repeat(200) });
const isTaken = ({ message }: Exchange): boolean => message.text.includes('17.4 % came off');

/** Takes all room that is left, a page at a time. */
function fill(file: string): void {
  for (let size = 1 << 20; size >= 512; size /= 2) {
    for (;;) {
      try {
        writeFileSync(file, Buffer.alloc(size), { flag: 'a' });
      } catch {
        break;
      }
    }
  }
}

describe.skipIf(!canMount())('a disk', () => {
  test('that is full: nothing half, advice, and on again by itself once there is room', async () => {
    const bot = startProcess(folder.path, environment(), `mount -t tmpfs -o size=3m tmpfs ${disk}`);
    await bot.ready;
    // What the bot alone sees.
    const seen = join(`/proc/${bot.pid}/root`, disk);
    const taken = [await weigh(), await weigh()];
    fill(join(seen, 'filler'));
    let refused: Exchange | null = null;
    for (let times = 0; times < 60 && refused === null; times += 1) {
      const said = await weigh();
      if (isTaken(said)) taken.push(said);
      else refused = said;
    }
    expect(refused?.message.isPrivate).toBe(true);
    expect(refused?.message.text).toMatch(/not yours.*reference [0-9a-f]{8}/);
    await bot.says('"todo":"the disk is full: make room');
    // What only reads goes on.
    expect((await club.addMember().types('/average', { cut: 'packer' })).message.text).toContain('17.4 %');
    rmSync(join(seen, 'filler'));
    const after = await weigh();
    expect(isTaken(after)).toBe(true);
    taken.push(after);
    // The files go with the process: they are copied while it stands still.
    bot.send('SIGSTOP');
    for (const name of readdirSync(seen)) copyFileSync(join(seen, name), join(folder.path, name));
    bot.send('SIGCONT');
    expect(await bot.kill('SIGTERM')).toMatchObject({ code: 0, errors: '' });
    const client = new Sqlite(join(folder.path, 'club.db'));
    expect(client.pragma('integrity_check', { simple: true })).toBe('ok');
    client.close();
    const store = await openStore(folder.url('club.db'));
    for (const { id } of taken) expect(await store.club(club.id).piece({ id })).toMatchObject({ id });
    expect(await store.club(club.id).piece({ id: refused?.id ?? '' })).toBeNull();
    expect((await store.club(club.id).heldInAll()).pieces).toBe(taken.length);
    await store.close();
  }, 120_000);

  test('that can not be written stops the start with one line', async () => {
    await openStore(`file:${join(disk, 'club.db')}`, { migrate: true }).then((store) => store.close());
    const locked = `mount --bind ${disk} ${disk} && mount -o remount,ro,bind ${disk}`;
    const { code, errors } = await startProcess(folder.path, environment(), locked).ended;
    expect([code, errors]).toEqual([
      1,
      expect.stringMatching(/^DATABASE_URL: file:\S+ can't be used: .*\n$/),
    ]);
  }, 60_000);

  test('of backups that can not be written leaves the members theirs', async () => {
    const { BACKUP_DIR } = environment();
    mkdirSync(BACKUP_DIR);
    const locked = `mount -t tmpfs -o ro tmpfs ${BACKUP_DIR}`;
    const bot = startProcess(folder.path, environment(), locked);
    await bot.ready;
    expect(isTaken(await weigh())).toBe(true);
    expect(await bot.kill('SIGTERM')).toMatchObject({ code: 0, errors: '' });
  }, 60_000);
});
