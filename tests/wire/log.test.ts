/** The log holds ids and timings: nothing that a member typed or was told, whatever goes wrong. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Store } from '../../shared/club/store.ts';
import { startBot } from '../../src/bot.ts';
import { readEnvironment } from '../../src/environment.ts';
import { openLog } from '../../src/log.ts';
import { type Folder, makeFolder } from '../store/folder.ts';
import { openStandIn, type StandIn } from './stand-in.ts';

let platform: StandIn;
let folder: Folder;
beforeEach(async () => {
  platform = await openStandIn({ answerWithinMs: 10_000, patienceMs: 15_000 });
  folder = makeFolder();
});
afterEach(async () => {
  folder.discard();
  await platform.close();
});

/** Each as it would stand in a log, whatever its case. */
const TYPED = [
  'packer',
  'brisket',
  '14.83',
  '9.4 oz',
  '4.99',
  'corner shop',
  'Uncle',
  'smelled',
  'blue pan',
  '1.75',
  '14.38',
  'plenty',
];

test('a session with its slips and its faults', async () => {
  let written = '';
  let broken: string | null = null;
  const log = openLog('trace', {
    write: (line) => {
      written += line;
    },
  });
  const club = platform.addClub();
  const environment = readEnvironment({
    DISCORD_TOKEN: platform.token,
    DISCORD_API_URL: platform.apiUrl,
    DATABASE_URL: folder.url('club.db'),
    BACKUP_DIR: folder.path,
  });
  /** A store whose pieces can't be kept while `broken` says why, with the text in the way that a driver would have it. */
  const wrapStore = (store: Store): Store => ({
    ...store,
    club: (id) => {
      const own = store.club(id);
      return {
        ...own,
        start: (piece) => {
          if (broken === null) return own.start(piece);
          return Promise.reject(
            Object.assign(new Error(broken), { piece, params: [piece.note], code: 'SQLITE_FULL' }),
          );
        },
      };
    },
  });
  const bot = await startBot(environment, log, { deferAfterMs: 9000, wrapStore, remindEveryMs: 50 });

  const [ines, bo] = [club.addMember(), club.addMember({ manager: true })];
  const weighed = {
    cut: 'packer brisket',
    bought: '14.83 lb',
    trim: '2 lb 9.4 oz',
    price: '4.99/lb',
    shop: 'corner shop',
    note: 'Uncle said it smelled fine',
  };
  const { message } = await ines.types('/weigh', weighed);
  await ines.types('/mine pans', { add: 'blue pan 1.75 lb' }).catch(() => {});
  await ines.completes('/weigh', 'cut', 'packer');
  await ines.types('/weigh', { ...weighed, bought: 'plenty' });
  await ines.types('/weigh', { cut: 'packer', bought: '14.10', trim: '2.5', note: 'smelled' });
  const opened = await ines.types('/weigh', {});
  await ines.submits(opened.form, { bought: '14.38 lb', cut: 'packer' });
  await bo.types('/piece show', { piece: '1' }).catch(() => {});
  await bo.types('/average', {});
  broken = 'database or disk is full';
  const fault = await ines.types('/weigh', { ...weighed, trim: '2 lb 9.4 oz' });
  expect(fault.message.text).toMatch(/[0-9a-f]{8}/);
  expect(message.text).toContain('17.4 % came off');
  await bot.close();

  const lines = written.trim().split('\n');
  expect(lines.filter((line) => line.includes('"msg":"answered"')).length).toBeGreaterThanOrEqual(6);
  // The fault is there to be found, by its reference and its place.
  expect(lines.find((line) => line.includes('database or disk is full'))).toMatch(
    /SQLITE_FULL.*"reference":"[0-9a-f]{8}"|"reference":"[0-9a-f]{8}".*SQLITE_FULL/,
  );
  expect(TYPED.filter((text) => written.toLowerCase().includes(text.toLowerCase()))).toEqual([]);
  expect(written).not.toContain(platform.token);
  // Nor what was answered.
  expect(written).not.toContain('came off');
}, 60_000);
