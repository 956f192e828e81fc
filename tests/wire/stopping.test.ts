/** A bot of its own process that is told to stop: once, twice, while it starts, while another thread computes. */
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { type Folder, makeFolder } from '../store/folder.ts';
import { importedPiece, lb, NOON, sampleClub } from '../store/samples.ts';
import { startProcess } from './bot-process.ts';
import { openStandIn, type StandIn } from './stand-in.ts';

let platform: StandIn;
let folder: Folder;
beforeEach(async () => {
  platform = await openStandIn({ patienceMs: 15_000 });
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
  ...changed,
});

describe('told to stop', () => {
  test('finishes, turns others away kindly, and leaves a whole file behind', async () => {
    const club = platform.addClub();
    const bot = startProcess(folder.path, environment());
    await bot.ready;
    const said = Array.from({ length: 12 }, () =>
      club.addMember().types('/weigh', { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' }),
    );
    await Promise.race(said);
    bot.send('SIGTERM');
    await bot.says('finishing what is on its way');
    const turnedAway = club.addMember().types('/mine pans', {});
    const late = turnedAway.then(
      ({ message }) => message,
      () => null,
    );
    expect(await bot.ended).toMatchObject({ code: 0, errors: '' });
    expect(bot.output()).toContain('"msg":"stopped"');
    expect(bot.output()).not.toContain('connecting again');
    for (const { message } of await Promise.all(said)) expect(message.text).toContain('17.4 % came off');
    // It was said, or the bot was gone already: never half an answer.
    const message = await late;
    if (message !== null)
      expect([message.isPrivate, message.text]).toEqual([
        true,
        expect.stringContaining('restarted just now'),
      ]);
    // The last to close takes the log into the file.
    expect(existsSync(join(folder.path, 'club.db-wal'))).toBe(false);
  }, 60_000);

  test('lets the other thread go that read the file', async () => {
    const club = platform.addClub();
    const store = await openStore(folder.url('club.db'), { migrate: true });
    const kept = store.club(club.id);
    await kept.found(sampleClub(club.id));
    const pieces = Array.from({ length: 3100 }, (_, at) =>
      importedPiece(`piece-${at}`, { trim: lb(2 + (at % 10) / 10), member: `member-${at % 30}` }),
    );
    await kept.addAll(pieces, NOON);
    await store.close();

    const bot = startProcess(folder.path, environment());
    await bot.ready;
    const { message } = await club.addMember().types('/average', { cut: 'packer' });
    expect(message.text).toContain('3100');
    expect(await bot.kill('SIGTERM')).toMatchObject({ code: 0, errors: '' });
    expect(existsSync(join(folder.path, 'club.db-wal'))).toBe(false);
  }, 120_000);
});

test('told twice, ends at once', async () => {
  const club = platform.addClub();
  // A chart host that never answers holds the answer up.
  const host = createServer(() => {});
  const asked = once(host, 'request');
  await new Promise<void>((resolve) => host.listen(0, '127.0.0.1', resolve));
  const { port } = host.address() as AddressInfo;
  const bot = startProcess(
    folder.path,
    environment({ PICTURES: 'quickchart', QUICKCHART_URL: `http://127.0.0.1:${port}` }),
  );
  await bot.ready;
  const said = club.addMember().types('/weigh', { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' });
  said.catch(() => {});
  await asked;
  bot.send('SIGINT');
  await bot.says('finishing what is on its way');
  bot.send('SIGTERM');
  const { code, errors } = await bot.ended;
  expect([code, errors]).toEqual([143, '']);
  host.closeAllConnections();
  host.close();
}, 60_000);

test('told while it starts, ends at once', async () => {
  const bot = startProcess(folder.path, environment({ HEALTH_PORT: '0' }));
  // It listens before it logs in.
  await bot.says('health is told');
  const { code, signal } = await bot.kill('SIGTERM');
  // It may have been ready by then.
  expect([code, signal]).toEqual([bot.output().includes('"msg":"stopped"') ? 0 : 143, null]);
}, 60_000);
