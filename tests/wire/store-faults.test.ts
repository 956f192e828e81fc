/** The file fails under a running bot: members get a kind sentence, the host a line that says what to do. */
import { openSync, readFileSync, statSync, writeSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import Sqlite from 'better-sqlite3';
import { afterEach, describe, expect, test } from 'vitest';
import { startBot } from '../../src/bot.ts';
import { readEnvironment } from '../../src/environment.ts';
import { openLog } from '../../src/log.ts';
import { databaseFile } from '../../src/store/database.ts';
import { openStore } from '../../src/store/open.ts';
import { type Folder, makeFolder } from '../store/folder.ts';
import { lb, sampleClub, samplePiece } from '../store/samples.ts';
import { DAY, openClubBot } from './club-bot.ts';
import { openStandIn, type StandIn } from './stand-in.ts';

const WEIGHED = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' };

let platform: StandIn | null = null;
let folder: Folder | null = null;
afterEach(async () => {
  folder?.discard();
  await platform?.close();
  platform = null;
  folder = null;
});

/** A bot in a club whose file is there already, and what it logs as its host reads it. */
async function openOn(prepare: (url: string, club: string) => Promise<void>) {
  platform = await openStandIn({ answerWithinMs: 10_000, patienceMs: 15_000 });
  folder = makeFolder();
  const club = platform.addClub();
  const url = folder.url('club.db');
  await prepare(url, club.id);
  let written = '';
  const log = openLog('info', {
    write: (line) => {
      written += line;
    },
  });
  const environment = readEnvironment({
    DISCORD_TOKEN: platform.token,
    DISCORD_API_URL: platform.apiUrl,
    DATABASE_URL: url,
    BACKUP_DIR: folder.path,
  });
  const bot = await startBot(environment, log, { deferAfterMs: 500 });
  const lines = () =>
    written
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
  return {
    bot,
    club,
    url,
    fault: (reference: string) => lines().find((line) => line.reference === reference),
  };
}

const REFERENCE = /reference ([0-9a-f]{8})/;
const referenceIn = (text: string): string => REFERENCE.exec(text)?.[1] ?? `no reference: ${text}`;

describe('another program holds the file', () => {
  test('for a moment: whoever weighs waits, and is answered', async () => {
    const { bot, club, url } = await openOn((at) =>
      openStore(at, { migrate: true }).then((one) => one.close()),
    );
    const ines = club.addMember();
    await ines.types('/weigh', WEIGHED);
    const other = new Sqlite(databaseFile(url));
    other.exec('begin immediate');
    const said = ines.types('/weigh', WEIGHED);
    await wait(900);
    other.exec('commit');
    const { steps, message } = await said;
    expect([steps.slice(0, 2), message.text]).toEqual([
      ['wait', 'edit'],
      expect.stringContaining('17.4 % came off'),
    ]);
    other.close();
    await bot.close();
  });

  test('for long: a reference for the member, advice for the host, and all goes on after it', async () => {
    const { bot, club, url, fault } = await openOn((at) =>
      openStore(at, { migrate: true }).then((one) => one.close()),
    );
    const ines = club.addMember();
    await ines.types('/weigh', WEIGHED);
    const other = new Sqlite(databaseFile(url));
    other.exec('begin immediate');
    const { message } = await ines.types('/weigh', WEIGHED);
    expect([message.isPrivate, message.text]).toEqual([true, expect.stringContaining('not yours')]);
    expect(fault(referenceIn(message.text))).toMatchObject({
      level: 50,
      err: {
        message: 'the store was busy for 2500 ms',
        todo: expect.stringContaining('another program holds'),
      },
    });
    other.exec('rollback');
    other.close();
    expect((await ines.types('/weigh', WEIGHED)).message.text).toContain('17.4 % came off');
    expect((await bot.store.club(club.id).heldInAll()).pieces).toBe(2);
    await bot.close();
  });
});

test('a damaged file: a reference for the member, and for the host to restore a backup', async () => {
  const { bot, club, fault } = await openOn(async (url, id) => {
    const store = await openStore(url, { migrate: true });
    await store.club(id).found(sampleClub(id));
    for (let at = 0; at < 600; at += 1) await store.club(id).start(samplePiece(`p${at}`, { trim: lb(2) }));
    await store.close();
    damage(databaseFile(url));
  });
  const ines = club.addMember();
  const { message } = await ines.types('/average', { cut: 'packer' });
  expect([message.isPrivate, message.text]).toEqual([true, expect.stringContaining('not yours')]);
  expect(fault(referenceIn(message.text))).toMatchObject({
    err: { code: 'SQLITE_CORRUPT', todo: expect.stringContaining('restore a backup') },
  });
  // What is not damaged is answered.
  expect((await ines.types('/help', {})).message.text).toContain('/weigh');
  await bot.close();
});

/** Overwrites every page of the pieces' table and its indexes but the first of the file. */
function damage(file: string): void {
  const client = new Sqlite(file);
  client.pragma('wal_checkpoint(TRUNCATE)');
  const size = client.pragma('page_size', { simple: true }) as number;
  client.close();
  const bytes = readFileSync(file);
  const handle = openSync(file, 'r+');
  for (let page = 1; page < statSync(file).size / size; page += 1) {
    // Those that hold text of our pieces.
    if (bytes.subarray(page * size, (page + 1) * size).includes('"bought"'))
      writeSync(handle, Buffer.alloc(size, 0xa7), 0, size, page * size);
  }
}

describe('a clock', () => {
  test('that jumps ahead ends questions kindly, and one that jumps back keeps on taking weights', async () => {
    const at = await openClubBot();
    const ines = at.club.addMember();
    const asked = await ines.types('/weigh', {
      cut: 'packer',
      bought: '14.10 lb',
      trim: '2.5',
      price: '4.99',
    });
    const pressed = asked.message.labels[0] ?? '';
    at.clock.now += 400 * DAY;
    const late = await ines.presses(asked.message, pressed);
    expect([late.message.isPrivate, late.message.text]).toEqual([
      true,
      expect.stringMatching(/quarter|again/),
    ]);
    at.clock.now -= 4000 * DAY;
    for (const back of [0, 1, 40_000]) {
      at.clock.now -= back * 60_000;
      const { message } = await ines.types('/weigh', WEIGHED);
      expect(message.text).toContain('17.4 % came off');
    }
    expect((await ines.types('/average', { cut: 'packer' })).message.text).toContain('3 pieces');
    expect((await ines.types('/board', {})).message.isPrivate).toBe(false);
    expect((await ines.types('/mine season', {})).message.text).toContain('piece');
    await at.close();
  });
});
