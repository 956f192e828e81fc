/** `SHARDS`: the bot in several processes, each with its share of the clubs, over one database file. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import Sqlite from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { databaseFile } from '../../src/store/database.ts';
import { type Folder, makeFolder } from '../store/folder.ts';
import { startProcess } from './bot-process.ts';
import { type Club, openStandIn, type StandIn } from './stand-in.ts';

let platform: StandIn;
let folder: Folder;
beforeEach(async () => {
  platform = await openStandIn({ answerWithinMs: 10_000, patienceMs: 15_000, shards: 2 });
  folder = makeFolder();
});
afterEach(async () => {
  folder.discard();
  await platform.close();
});

const environment = (changed: Readonly<Record<string, string>> = {}) => ({
  DISCORD_TOKEN: platform.token,
  DISCORD_API_URL: platform.apiUrl,
  DATABASE_URL: folder.url('club.db'),
  BACKUP_DIR: folder.path,
  SHARDS: 'auto',
  ...changed,
});

const WEIGHED = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' };
const isAlive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

/** A club's shard follows from the millisecond of its founding. */
async function clubsOfBoth(): Promise<Club[]> {
  const clubs: Club[] = [];
  for (let at = 0; at < 40; at += 1) {
    clubs.push(platform.addClub());
    await wait(1);
  }
  return clubs;
}

test('answers every club, is looked at as one, starts again what ends, and stops as one', async () => {
  const clubs = await clubsOfBoth();
  const bot = startProcess(folder.path, environment({ HEALTH_PORT: '0' }));
  await bot.says('all processes are ready');
  const lines = () =>
    bot
      .output()
      .trim()
      .split('\n')
      .map((line): Record<string, unknown> => JSON.parse(line));
  const readyLines = () => lines().filter(({ msg }) => String(msg).startsWith('ready as'));
  await expect.poll(() => readyLines().length).toBe(2);
  const ready = readyLines();
  expect(ready.map(({ shard, shards }) => [shard, shards])).toEqual([
    [0, 2],
    [1, 2],
  ]);
  // One told the platform the commands, one migrated.
  expect(ready.map(({ commands }) => typeof commands)).toEqual(['number', 'undefined']);
  expect(platform.registrations).toBe(1);
  expect(platform.logins).toBe(2);

  const of = (shard: number): Club => {
    const club = clubs.find((one) => one.shard() === shard);
    if (club === undefined) throw new Error(`no club of shard ${shard}`);
    return club;
  };
  for (const shard of [0, 1]) {
    const { message } = await of(shard).addMember().types('/weigh', WEIGHED);
    expect(message.text).toContain('17.4 % came off');
  }

  const port = lines().find(({ msg }) => msg === 'health is told')?.port;
  const page = async (path: string) => {
    const response = await fetch(`http://127.0.0.1:${port}${path}`);
    return [response.status, await response.text()] as const;
  };
  expect(await page('/healthz')).toEqual([
    200,
    'shard 0 gateway: ok\nshard 0 store: ok\nshard 1 gateway: ok\nshard 1 store: ok\n',
  ]);
  // Counted once the answer is told, a moment later.
  for (const shard of [0, 1])
    await expect
      .poll(async () => (await page('/metrics'))[1])
      .toContain(`trimtally_answers_total{command="weigh",outcome="answered",shard="${shard}"} 1`);
  const [, metrics] = await page('/metrics');
  expect(metrics).toMatch(/trimtally_store_bytes\{shard="launcher"\} \d{4,}/);
  expect(metrics).toMatch(/process_resident_memory_bytes\{shard="1"\} \d{7,}/);
  const counted = [...metrics.matchAll(/^trimtally_clubs\{shard="\d"\} (\d+)$/gm)].map(([, count]) =>
    Number(count),
  );
  expect(counted.reduce((sum, count) => sum + count, 0)).toBe(clubs.length);

  // One ends by itself: the other goes on, and it comes back.
  const second = Number(ready[1]?.process);
  process.kill(second, 'SIGKILL');
  await bot.says('it is started again');
  expect((await page('/healthz'))[0]).toBe(503);
  const { message } = await of(0).addMember().types('/weigh', WEIGHED);
  expect(message.text).toContain('17.4 % came off');
  await expect.poll(async () => (await page('/healthz'))[0], { timeout: 30_000, interval: 200 }).toBe(200);
  await of(1).addMember().types('/weigh', WEIGHED);

  const said = [0, 1].map((shard) => of(shard).addMember().types('/weigh', WEIGHED));
  await Promise.race(said);
  const pids = readyLines().map(({ process: pid }) => Number(pid));
  expect(await bot.kill('SIGTERM')).toMatchObject({ code: 0, errors: '' });
  for (const { message: last } of await Promise.all(said)) expect(last.text).toContain('17.4 % came off');
  expect(pids.filter(isAlive)).toEqual([]);
  expect(existsSync(join(folder.path, 'club.db-wal'))).toBe(false);
  const client = new Sqlite(databaseFile(folder.url('club.db')), { readonly: true });
  expect(client.prepare('select count(*) from piece').pluck().get()).toBe(6);
  client.close();
}, 120_000);

test('processes whose launcher is gone stop by themselves', async () => {
  await clubsOfBoth();
  const bot = startProcess(folder.path, environment({ SHARDS: '1' }));
  await bot.ready;
  const pid = Number(/"process":(\d+),"msg":"ready as/.exec(bot.output())?.[1]);
  expect(isAlive(pid)).toBe(true);
  await bot.kill('SIGKILL');
  await expect.poll(() => isAlive(pid)).toBe(false);
}, 60_000);

test('says in one line what keeps it from starting', async () => {
  const cases: readonly [Record<string, string>, RegExp][] = [
    [{ DISCORD_TOKEN: 'another' }, /^DISCORD_TOKEN: the platform does not know it\.\n$/],
    [
      { DISCORD_API_URL: 'http://127.0.0.1:9/api' },
      /^DISCORD_API_URL: \S+ can't be reached: ECONNREFUSED\n$/,
    ],
    [{ DATABASE_URL: ':memory:' }, /^SHARDS: several processes need a database file/],
    [{ SHARDS: 'some' }, /^SHARDS: must be auto, or a number of processes from 1 to 1000\n$/],
  ];
  const ended = await Promise.all(
    cases.map(([changed]) => startProcess(folder.path, environment(changed)).ended),
  );
  for (const [at, [, says]] of cases.entries())
    expect(ended[at]).toMatchObject({ code: 1, errors: expect.stringMatching(says) });
}, 60_000);
