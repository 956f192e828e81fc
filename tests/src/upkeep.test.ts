/** Upkeep by the clock: nightly backups, tidying after an erasure, and clubs that were left long ago. */
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Store } from '../../shared/club/store.ts';
import { adviceOn } from '../../src/advice.ts';
import { SILENT } from '../../src/log.ts';
import { backUp, copiesIn } from '../../src/store/backup.ts';
import { ELSEWHERE } from '../../src/store/elsewhere.ts';
import { openStore } from '../../src/store/open.ts';
import { pendingIn, tidy } from '../../src/store/tidy.ts';
import { openUpkeep, type Upkeep } from '../../src/upkeep.ts';
import { stillThere } from '../store/bytes.ts';
import { type Folder, makeFolder } from '../store/folder.ts';
import { sampleClub, samplePiece } from '../store/samples.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const MIDNIGHT = Date.UTC(2026, 6, 5);
const INES = '771100000000000042';

let folder: Folder;
let url: string;
let backupDir: string;
let store: Store;
let upkeep: Upkeep;
let isIn: (club: string) => Promise<boolean>;

beforeEach(async () => {
  folder = makeFolder();
  url = folder.url('club.db');
  backupDir = join(folder.path, 'backups');
  store = await openStore(url, { migrate: true });
  await store.club('a').found(sampleClub('a'));
  isIn = async () => false;
  // On this thread: a month of nights would start sixty.
  const on = { backUp, tidy };
  upkeep = openUpkeep({ store, database: url, backupDir, isIn: (club) => isIn(club), log: SILENT, on });
});
afterEach(async () => {
  await upkeep.idle();
  await store.close();
  folder.discard();
});

const made = () => copiesIn(backupDir).map(({ at }) => (at - MIDNIGHT) / HOUR);

describe('backups', () => {
  it('are made once a night, in the quiet hours', async () => {
    for (let hour = 0; hour < 72; hour += 1) await upkeep.look(MIDNIGHT + hour * HOUR);
    // The first at once: there was none.
    expect(made()).toEqual([51, 27, 0]);
  });

  it('are made by day too, where the bot is never there at night', async () => {
    for (const hour of [8, 20, 32, 44, 56]) await upkeep.look(MIDNIGHT + hour * HOUR);
    expect(made()).toEqual([44, 8]);
  });

  it('are 14 after a month', async () => {
    for (let night = 0; night < 30; night += 1) {
      await upkeep.look(MIDNIGHT + night * DAY + 3 * HOUR);
      await upkeep.look(MIDNIGHT + night * DAY + 23 * HOUR);
    }
    expect(made()).toHaveLength(14);
  });

  it('are made on where a wrong clock dated one ahead, which stays', async () => {
    await upkeep.look(MIDNIGHT + 365 * DAY);
    for (let night = 0; night < 3; night += 1) await upkeep.look(MIDNIGHT + night * DAY + 3 * HOUR);
    expect(made()).toEqual([365 * 24, 51, 27, 3]);
  });

  it('are made anew where their folder is gone', async () => {
    await upkeep.look(MIDNIGHT);
    rmSync(backupDir, { recursive: true });
    await upkeep.look(MIDNIGHT + HOUR);
    expect(made()).toEqual([1]);
  });

  it('say what to do where a file stands in their place, and go on once it is moved away', async () => {
    writeFileSync(backupDir, 'not a folder');
    const problem = await upkeep.look(MIDNIGHT).catch((thrown: unknown) => thrown);
    expect(adviceOn(problem)).toContain('a file stands where a folder should be');
    rmSync(backupDir);
    await upkeep.look(MIDNIGHT);
    expect(made()).toEqual([0]);
  });
});

describe('what was erased', () => {
  const erase = async (at: number) => {
    await store.club('a').start(samplePiece('1', { member: INES }));
    await store.club('a').eraseMember(INES, at);
  };

  it('is tidied away in the next quiet hour', async () => {
    await erase(MIDNIGHT + 10 * HOUR);
    await upkeep.look(MIDNIGHT + 11 * HOUR);
    expect(await pendingIn(url)).not.toBeNull();
    await upkeep.look(MIDNIGHT + 27 * HOUR);
    expect(await pendingIn(url)).toBeNull();
    expect(made()[0]).toBe(27);
    expect(stillThere(folder.path, [INES])).toEqual([]);
  });

  it('is tidied away within a day in any case, and gone from the older backups within 14', async () => {
    await store.club('a').start(samplePiece('0', { member: INES }));
    await upkeep.look(MIDNIGHT + 6 * HOUR);
    await erase(MIDNIGHT + 6 * HOUR + 1);
    for (const hour of [7, 12, 20]) await upkeep.look(MIDNIGHT + hour * HOUR);
    expect(await pendingIn(url)).not.toBeNull();
    await upkeep.look(MIDNIGHT + 29 * HOUR);
    expect(await pendingIn(url)).toBeNull();
    expect(stillThere(folder.path, [INES])).toHaveLength(1);
    await upkeep.look(MIDNIGHT + 14 * DAY + 6 * HOUR);
    expect(stillThere(folder.path, [INES])).toEqual([]);
  });
});

describe('a club that was left', () => {
  const LEFT = MIDNIGHT - 40 * DAY;

  it('is erased 30 days later, once the platform says so', async () => {
    await store.club('b').found(sampleClub('b'));
    await store.left('a', MIDNIGHT - 30 * DAY + 1);
    await upkeep.look(MIDNIGHT);
    expect(await store.club('a').settings()).not.toBeNull();
    await upkeep.look(MIDNIGHT + HOUR);
    expect([await store.club('a').settings(), await store.clubs()]).toEqual([null, ['b']]);
    expect(await pendingIn(url)).not.toBeNull();
  });

  it('stays where the bot is in it after all', async () => {
    await store.left('a', LEFT);
    isIn = async () => true;
    await upkeep.look(MIDNIGHT);
    expect(await store.clubs()).toEqual(['a']);
    isIn = async () => false;
    await upkeep.look(MIDNIGHT + DAY);
    expect(await store.clubs()).toEqual(['a']);
  });

  it('stays while the platform does not say, and keeps nothing else from being done', async () => {
    await store.left('a', LEFT);
    isIn = async () => {
      throw new Error('out of order');
    };
    await upkeep.look(MIDNIGHT);
    expect(await store.club('a').settings()).not.toBeNull();
    expect(made()).toEqual([0]);
  });
});

it('a look at the same time as another does nothing', async () => {
  await Promise.all([upkeep.look(MIDNIGHT), upkeep.look(MIDNIGHT + 1)]);
  expect(made()).toEqual([0]);
});

it('is done on another thread just the same, and what fails there says what to do', async () => {
  await store.club('a').start(samplePiece('p', { member: INES }));
  await store.club('a').eraseMember(INES, MIDNIGHT);
  const done = await ELSEWHERE.tidy(url, { backupDir, now: MIDNIGHT });
  expect(done).toMatchObject({ dropped: [] });
  expect(await ELSEWHERE.backUp(url, backupDir, MIDNIGHT + HOUR)).toMatchObject({ at: MIDNIGHT + HOUR });
  expect(made()).toEqual([1, 0]);
  expect(await pendingIn(url)).toBeNull();
  expect(stillThere(folder.path, [INES])).toEqual([]);
  writeFileSync(join(folder.path, 'file'), '');
  const failed = await ELSEWHERE.backUp(url, join(folder.path, 'file'), MIDNIGHT).catch((error) => error);
  expect(adviceOn(failed)).toContain('a file stands where a folder should be');
});
