import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import Sqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { databaseFile } from '../../src/store/database.ts';
import { migrateStore, openStore } from '../../src/store/open.ts';
import { tidy } from '../../src/store/tidy.ts';
import { stillThere } from './bytes.ts';
import { type Folder, makeFolder } from './folder.ts';
import { BRISKET, importedPiece, NOON, sampleClub, samplePiece } from './samples.ts';

const SCRIPTS = join(inject('compiled'), 'tests', 'store');
const ERASE = join(SCRIPTS, 'erase-club-half.js');
const KEEP = join(SCRIPTS, 'keep-pieces.js');

let folder: Folder;
let url: string;

beforeEach(async () => {
  folder = makeFolder();
  url = folder.url('club.db');
  await migrateStore(url);
});
afterEach(() => folder.discard());

/** Starts a child that keeps pieces; `onLine` hears each id it prints. */
async function keepPieces(
  prefix: string,
  count: number,
  onLine: (printed: number, child: ChildProcess) => void = () => {},
): Promise<{ printed: string[]; signal: NodeJS.Signals | null; code: number | null }> {
  const child = spawn(process.execPath, [KEEP, url, 'a', prefix, `${count}`], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const closed = once(child, 'close');
  const printed: string[] = [];
  for await (const line of createInterface(child.stdout)) {
    if (line === 'ready') continue;
    printed.push(line);
    onLine(printed.length, child);
  }
  const [code, signal] = await closed;
  return { printed, code, signal };
}

describe('two processes at one file', () => {
  it('number their pieces without a gap and without a double', async () => {
    const [one, two] = await Promise.all([keepPieces('x', 250), keepPieces('y', 250)]);
    expect([one.code, two.code]).toEqual([0, 0]);
    const store = await openStore(url);
    const club = store.club('a');
    const found = await Promise.all(Array.from({ length: 500 }, (_, at) => club.piece({ seq: at + 1 })));
    expect(new Set(found.map((piece) => piece?.id))).toEqual(new Set([...one.printed, ...two.printed]));
    expect(await club.piece({ seq: 501 })).toBeNull();
    expect((await club.columns(BRISKET, 'trim')).version).toBe(500);
    await store.close();
  }, 60_000);
});

describe('while a member is erased and the file is tidied', () => {
  it('another process goes on keeping pieces: none is lost, no number is given twice', async () => {
    const store = await openStore(url);
    const club = store.club('a');
    await club.found(sampleClub('a'));
    const OONA = '660000000000000017';
    const hers = Array.from({ length: 400 }, (_, place) =>
      importedPiece(`${OONA}-${place}`, { member: OONA }),
    );
    await club.addAll(hers, NOON);
    const erase = async () => {
      await club.eraseMember(OONA, 1);
      await tidy(url, { backupDir: join(folder.path, 'backups'), now: 2 });
    };
    let erased: Promise<string> | undefined;
    const kept = await keepPieces('x', 400, (printed) => {
      if (printed === 100) erased = erase().then(() => 'erased', String);
    });
    expect([kept.code, await erased]).toEqual([0, 'erased']);
    for (const id of kept.printed) expect(await club.piece({ id })).toMatchObject({ member: 'ines' });
    const seqs = (await club.newest('ines', 1000)).map(({ seq }) => seq);
    expect([seqs.length, new Set(seqs).size, Math.min(...seqs)]).toEqual([400, 400, 401]);
    // One for each that was kept here, one for all of hers together, one for their erasing.
    expect((await club.columns(BRISKET, 'trim')).version).toBe(402);
    await store.close();
    expect(stillThere(folder.path, [OONA])).toEqual([]);
  }, 60_000);

  it('killed while a club is erased, what is left can be erased again', async () => {
    const store = await openStore(url);
    await store.club('a').found(sampleClub('a'));
    const kept = Array.from({ length: 1500 }, (_, place) => importedPiece(`p${place}`));
    await store.club('a').addAll(kept, NOON);
    await store.close();
    const child = spawn(process.execPath, [ERASE, url, 'a'], { stdio: 'inherit' });
    await once(child, 'close');
    const again = await openStore(url);
    const { pieces } = await again.club('a').heldInAll();
    expect([500, 1000]).toContain(pieces);
    expect(await again.club('a').eraseClub(3)).toMatchObject({ pieces, clubs: 1 });
    expect(await again.club('a').settings()).toBeNull();
    await again.close();
  }, 60_000);
});

describe('a process killed while it keeps pieces', () => {
  // Early, in the middle, late; how far the child has come when the signal arrives is chance.
  it.each([7, 191, 446])(
    'has lost nothing that it answered for: after %i',
    async (moment) => {
      const { printed, signal } = await keepPieces('x', 5000, (count, child) => {
        if (count === moment) child.kill('SIGKILL');
      });
      expect(signal).toBe('SIGKILL');
      expect(printed.length).toBeGreaterThanOrEqual(moment);

      const store = await openStore(url);
      const club = store.club('a');
      for (const id of printed) expect(await club.piece({ id })).toMatchObject(samplePiece(id));
      const { version } = await club.columns(BRISKET, 'trim');
      const next = await club.start(samplePiece('next'));
      // One may be kept whose id was not printed any more; each is kept whole, with its version.
      expect(next?.piece.seq).toBe(version + 1);
      expect(version - printed.length).toBeGreaterThanOrEqual(0);
      expect(version - printed.length).toBeLessThanOrEqual(1);
      await store.close();

      const client = new Sqlite(databaseFile(url));
      expect(client.pragma('integrity_check', { simple: true })).toBe('ok');
      expect(client.pragma('foreign_key_check')).toEqual([]);
      client.close();
    },
    60_000,
  );
});

describe('while another process writes', () => {
  it('a write waits its turn, and the clubs go on', async () => {
    const store = await openStore(url);
    await store.club('a').found(sampleClub('a'));
    const other = new Sqlite(databaseFile(url));
    other.exec('begin immediate');
    let answered = 0;
    const start = store.club('a').start(samplePiece('1'));
    const until = performance.now() + 300;
    while (performance.now() < until) {
      // Reading goes on meanwhile: waiting blocks nobody.
      await store.club('a').settings();
      await new Promise((resolve) => setTimeout(resolve, 5));
      answered += 1;
    }
    other.exec('commit');
    expect(answered).toBeGreaterThan(5);
    expect((await start)?.fresh).toBe(true);
    other.close();
    await store.close();
  });

  it('gives up with a reason after a while, and has kept nothing', async () => {
    const store = await openStore(url);
    await store.club('a').found(sampleClub('a'));
    const other = new Sqlite(databaseFile(url));
    other.exec('begin immediate');
    await expect(store.club('a').start(samplePiece('1'))).rejects.toThrow('the store was busy for 2500 ms');
    other.exec('commit');
    other.close();
    expect(await store.club('a').piece({ id: '1' })).toBeNull();
    await store.close();
  });

  it('sees what another store wrote, in columns too', async () => {
    const [one, two] = await Promise.all([openStore(url), openStore(url)]);
    await one.club('a').found(sampleClub('a'));
    expect((await one.club('a').columns(BRISKET, 'trim')).version).toBe(0);
    await two.club('a').start(samplePiece('1', { trim: samplePiece('1').bought }));
    expect((await one.club('a').columns(BRISKET, 'trim')).count).toBe(1);
    await one.close();
    await two.close();
  });

  it('gives a reminder out once, whoever of many asks', async () => {
    const stores = await Promise.all(Array.from({ length: 4 }, () => openStore(url)));
    const [one] = stores;
    await one?.club('a').found(sampleClub('a'));
    for (const id of ['1', '2', '3']) {
      await one?.club('a').start(samplePiece(id));
      await one?.club('a').remind({ piece: id, member: 'ines', dueAt: 5 });
    }
    const given = await Promise.all(stores.map((store) => store.dueReminders(5)));
    expect(
      given
        .flat()
        .map(({ piece }) => piece)
        .sort(),
    ).toEqual(['1', '2', '3']);
    await Promise.all(stores.map((store) => store.close()));
  });
});
