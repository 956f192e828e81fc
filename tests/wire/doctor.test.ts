/** `npm run doctor` in a process of its own, with the stand-in as the platform. */
import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import { commands } from '../../commands/index.ts';
import { speak } from '../../shared/words/index.ts';
import { createRest } from '../../src/discord/client.ts';
import { commandCards } from '../../src/discord/command-cards.ts';
import { applicationOf, registerCommands } from '../../src/discord/register.ts';
import { backUp } from '../../src/store/backup.ts';
import { openStore } from '../../src/store/open.ts';
import { type Folder, makeFolder } from '../store/folder.ts';
import { sampleClub, samplePiece } from '../store/samples.ts';
import { openStandIn, type StandIn } from './stand-in.ts';

const DOCTOR = join(inject('compiled'), 'src', 'scripts', 'doctor.js');

let platform: StandIn;
let folder: Folder;
beforeEach(async () => {
  platform = await openStandIn({ shards: 1 });
  folder = makeFolder();
});
afterEach(async () => {
  folder.discard();
  await platform.close();
});

/** What it prints: the state and the sentence by what was looked at. */
async function examine(changed: Readonly<Record<string, string>> = {}) {
  const environment = {
    PATH: process.env.PATH ?? '',
    DISCORD_TOKEN: platform.token,
    DISCORD_API_URL: platform.apiUrl,
    DATABASE_URL: folder.url('club.db'),
    BACKUP_DIR: join(folder.path, 'backups'),
    ...changed,
  };
  const { code, output } = await new Promise<{ code: number; output: string }>((resolve) => {
    const options = { cwd: folder.path, env: environment };
    execFile(process.execPath, [DOCTOR], options, (error, out, err) =>
      resolve({ code: error === null ? 0 : Number(error.code), output: out + err }),
    );
  });
  expect(output).not.toContain(environment.DISCORD_TOKEN === '' ? '…' : environment.DISCORD_TOKEN);
  const lines = output.trim().split('\n');
  const found = Object.fromEntries(
    lines.map((line): [string, string] => {
      const [, state = line, what = line, says = ''] = /^(ok|note|WRONG) +(\S+) +(.+)$/.exec(line) ?? [];
      return [what, `${state}: ${says}`];
    }),
  );
  return { code, found };
}

async function fill(): Promise<void> {
  const store = await openStore(folder.url('club.db'), { migrate: true });
  const club = store.club('backyard');
  await club.found(sampleClub('backyard'));
  await club.start(samplePiece('piece-1'));
  await store.close();
}

async function register(): Promise<void> {
  const rest = createRest(platform.token, platform.apiUrl);
  const cards = commandCards(commands, speak({ locale: 'en-US', units: 'lb' }));
  await registerCommands(rest, await applicationOf(rest), cards);
}

test('a bot that is well', async () => {
  platform.addClub();
  platform.addClub({ rights: 8n });
  await fill();
  await register();
  await backUp(folder.url('club.db'), join(folder.path, 'backups'), Date.now() - 7_200_000);
  const { code, found } = await examine();
  expect(found).toEqual({
    node: expect.stringMatching(/^ok: v\d+/),
    settings: expect.stringMatching(/^ok: /),
    folder: expect.stringMatching(/^ok: \S+: can be written, \d+ MB left$/),
    backups: expect.stringMatching(/^ok: \S+: can be written, \d+ MB left$/),
    store: expect.stringMatching(/^ok: whole, up to date \(\d+ migrations\), 1 piece of 1 club$/),
    copies: 'ok: the newest is 2 hours old',
    pictures: expect.stringMatching(/^ok: drawn here/),
    token: expect.stringMatching(/^ok: logs in as tally \(\d+\)$/),
    clock: expect.stringMatching(/^ok: /),
    commands: expect.stringMatching(/^ok: \d+ registered everywhere$/),
    clubs: 'ok: in 2, and sees channels in each',
    'log-ins': 'ok: 999 left today',
  });
  expect(code).toBe(0);
  // It leaves nothing behind, and logs in nowhere.
  expect(readdirSync(folder.path).toSorted()).toEqual(['backups', 'club.db']);
  expect(platform.logins).toBe(0);
}, 60_000);

test('a bot that was never started', async () => {
  const { code, found } = await examine();
  expect([code, found]).toEqual([
    0,
    expect.objectContaining({
      store: 'note: not there yet: npm start makes it',
      copies: expect.stringMatching(/^note: none yet/),
      commands: 'note: not registered yet: npm start registers them',
      clubs: expect.stringMatching(/^note: in none yet: invite it by https:\S+client_id=\d+\S*$/),
    }),
  ]);
  expect(existsSync(join(folder.path, 'club.db'))).toBe(false);
}, 60_000);

test('a bot that is ill says what to do', async () => {
  const club = platform.addClub({ rights: 0n });
  await fill();
  const rest = createRest(platform.token, platform.apiUrl);
  await registerCommands(rest, await applicationOf(rest), [{ name: 'weigh', description: 'Another' }]);
  platform.setClock(-60_000);
  const client = new Sqlite(join(folder.path, 'club.db'));
  client.pragma('wal_checkpoint(TRUNCATE)');
  client.close();
  writeFileSync(join(folder.path, 'backups'), 'in the way of a folder');
  const { code, found } = await examine({
    PICTURES: 'quickchart',
    QUICKCHART_URL: 'http://127.0.0.1:9',
  });
  expect(code).toBe(1);
  expect(found).toMatchObject({
    backups: expect.stringMatching(/^WRONG: \S+backups is no folder$/),
    clock: expect.stringMatching(/^WRONG: (59|60|61) s ahead of the platform's: .*timedatectl/),
    commands: expect.stringMatching(/^WRONG: other ones .*npm run register$/),
    clubs: expect.stringContaining(`sees no channels in 1 (${club.id})`),
    pictures: expect.stringMatching(/^ok: /),
    host: expect.stringMatching(/^WRONG: http:\/\/127\.0\.0\.1:9 does not draw \(.*\)/),
  });
}, 60_000);

test('a damaged file, an old backup, and a strange token', async () => {
  await fill();
  await backUp(folder.url('club.db'), join(folder.path, 'copies'), Date.now() - 5 * 86_400_000);
  const damaged = await damage();
  const [first, second, third] = await Promise.all([
    examine({ DATABASE_URL: damaged, BACKUP_DIR: join(folder.path, 'copies') }),
    examine({ DISCORD_TOKEN: 'not.the-one', DATABASE_URL: ':memory:' }),
    examine({ DISCORD_TOKEN: 'Bot a.token with words' }),
  ]);
  expect(first).toMatchObject({
    code: 1,
    found: {
      store: expect.stringMatching(/^WRONG: .*restore a backup, as README says$/),
      copies: expect.stringMatching(/^WRONG: the newest is 120 hours old/),
    },
  });
  expect(second).toMatchObject({
    code: 1,
    found: {
      token: 'WRONG: DISCORD_TOKEN: the platform does not know it.',
      store: expect.stringMatching(/^WRONG: in memory/),
    },
  });
  expect(third).toEqual({
    code: 1,
    found: { settings: 'WRONG: DISCORD_TOKEN: must be the token alone: letters, digits, dots, - and _' },
  });
  const unreachable = await examine({ DISCORD_API_URL: 'http://127.0.0.1:9/api', DISCORD_TOKEN: 'a.token' });
  expect(unreachable).toMatchObject({
    code: 1,
    found: { token: expect.stringMatching(/^WRONG: DISCORD_API_URL: \S+ can't be reached: ECONNREFUSED$/) },
  });
}, 120_000);

/** The same store with a page in the middle overwritten. */
async function damage(): Promise<string> {
  const from = new Sqlite(join(folder.path, 'club.db'));
  const { rootpage } = from
    .prepare<[], { rootpage: number }>("select rootpage from sqlite_master where name = 'piece'")
    .get() ?? { rootpage: 0 };
  const pageSize = Number(from.pragma('page_size', { simple: true }));
  const bytes = from.serialize();
  from.close();
  bytes.fill(0xff, (rootpage - 1) * pageSize, rootpage * pageSize);
  mkdirSync(join(folder.path, 'damaged'));
  writeFileSync(join(folder.path, 'damaged', 'club.db'), bytes);
  return folder.url('damaged/club.db');
}
