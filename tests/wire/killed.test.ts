import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Folder, makeFolder } from '../store/folder.ts';
import { startProcess } from './bot-process.ts';
import { killInTheMiddle } from './kill.ts';
import { openStandIn, type StandIn } from './stand-in.ts';

describe('a bot killed while eight members weigh in', () => {
  test(
    'has kept whole what it answered for, and keeps nothing twice',
    () => killInTheMiddle(50, 25),
    120_000,
  );
});

describe('a bot of its own process', () => {
  let platform: StandIn;
  let folder: Folder;
  beforeEach(async () => {
    platform = await openStandIn();
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
    ...changed,
  });

  test('told to stop, finishes the answers on their way and ends well', async () => {
    const club = platform.addClub();
    const bot = startProcess(folder.path, environment());
    await bot.ready;
    const said = Array.from({ length: 6 }, () =>
      club.addMember().types('/weigh', { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' }),
    );
    await Promise.race(said);
    const { code, errors, output } = await bot.kill('SIGTERM');
    expect([code, errors]).toEqual([0, '']);
    for (const { message } of await Promise.all(said)) expect(message.text).toContain('17.4 % came off');
    expect(output).toContain('finishing what is on its way');
    // Ids and timings only: neither what was weighed nor what was typed.
    expect(output).not.toMatch(/packer|14\.83/);
  });

  test('that can not start says in one line why', async () => {
    writeFileSync(join(folder.path, 'text.db'), 'Shopping list: brisket, paper, salt.\n'.repeat(200));
    mkdirSync(join(folder.path, 'folder.db'));
    const cases: readonly [Record<string, string>, RegExp][] = [
      [{ DATABASE_URL: 'mysql://localhost/club' }, /^DATABASE_URL: must start with file:\n$/],
      [
        { DATABASE_URL: folder.url('text.db') },
        /^DATABASE_URL: file:\S+ can't be used: file is not a database\n$/,
      ],
      [
        { DATABASE_URL: folder.url('folder.db') },
        /^DATABASE_URL: file:\S+ can't be used: unable to open database file\n$/,
      ],
      [
        { DISCORD_TOKEN: 'another', DATABASE_URL: folder.url('other.db') },
        /^DISCORD_TOKEN: the platform does not know it\.\n$/,
      ],
      [
        { DISCORD_API_URL: 'http://127.0.0.1:9/api' },
        /^DISCORD_API_URL: \S+ can't be reached: ECONNREFUSED\n$/,
      ],
      [{ DISCORD_TOKEN: '' }, /^There is no DISCORD_TOKEN.*\n.*\.env.*\n.*rehearse\n$/],
    ];
    const ended = await Promise.all(
      cases.map(([changed]) => startProcess(folder.path, environment(changed)).ended),
    );
    for (const [at, [, says]] of cases.entries())
      expect(ended[at]).toMatchObject({ code: 1, errors: expect.stringMatching(says) });
    expect(readFileSync(join(folder.path, 'text.db'), 'utf8')).toMatch(/^Shopping list/);
    expect(platform.logins).toBe(0);
  }, 120_000);
});
