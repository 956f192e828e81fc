/** One file, a hundred writers one after the other, each killed at a random moment: nothing that was told as kept is lost. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import Sqlite from 'better-sqlite3';
import { expect, inject, test } from 'vitest';
import { databaseFile } from '../../src/store/database.ts';
import { migrateStore, openStore } from '../../src/store/open.ts';
import { makeFolder } from './folder.ts';
import { BRISKET, lb } from './samples.ts';

const SCRIPT = join(inject('compiled'), 'tests', 'store', 'write-load.js');
const ROUNDS = Number(process.env.ROUNDS ?? 100);
const LATEST_MS = 400;

/** What one writer told until it was killed. */
async function killed(url: string, prefix: string): Promise<[deed: string, id: string][]> {
  const child = spawn(process.execPath, [SCRIPT, url, 'a', prefix], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const closed = once(child, 'close');
  const told: [string, string][] = [];
  for await (const line of createInterface(child.stdout)) {
    const [deed = '', id = ''] = line.split(' ');
    if (deed === 'ready') setTimeout(() => child.kill('SIGKILL'), Math.random() * LATEST_MS);
    else told.push([deed, id]);
  }
  expect((await closed)[1]).toBe('SIGKILL');
  return told;
}

test('a hundred writers', async () => {
  const folder = makeFolder();
  const url = folder.url('club.db');
  await migrateStore(url);
  const all = new Map<string, Set<string>>();
  let deeds = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [deed, id] of await killed(url, `r${round}`)) {
      all.set(id, (all.get(id) ?? new Set()).add(deed));
      deeds += 1;
    }
    const client = new Sqlite(databaseFile(url));
    expect(client.pragma('quick_check', { simple: true })).toBe('ok');
    expect(client.pragma('foreign_key_check')).toEqual([]);
    client.close();
  }

  const store = await openStore(url);
  const club = store.club('a');
  const last = new Set([...Array(ROUNDS).keys()].map((round) => lastOf([...all.keys()], `r${round}-`)));
  for (const [id, told] of all) {
    const piece = await club.piece({ id });
    if (told.has('removed')) expect(piece, id).toBeNull();
    // Of the last one in each round a deed may be done that was not told any more.
    else if (!last.has(id)) expect(piece, id).toMatchObject({ id, trim: lb(told.has('corrected') ? 3 : 2) });
    if (told.has('posted') && !told.has('removed')) expect(await club.posted(id)).toHaveLength(1);
  }
  // The versions that figures are kept by count exactly what happened, however it ended.
  const { count, version } = await club.columns(BRISKET, 'trim');
  const { pieces } = await club.heldInAll();
  expect(count).toBe(pieces);
  expect(version).toBeGreaterThanOrEqual(
    deeds - [...all.values()].filter((told) => told.has('posted')).length,
  );
  console.log(`${ROUNDS} writers killed, ${deeds} deeds told, ${pieces} pieces kept`);
  await store.close();
  const client = new Sqlite(databaseFile(url));
  expect(client.pragma('integrity_check', { simple: true })).toBe('ok');
  client.close();
  folder.discard();
}, 900_000);

/** Of those of one writer, the one that it came to last. */
function lastOf(ids: readonly string[], prefix: string): string {
  const numbers = ids.filter((id) => id.startsWith(prefix)).map((id) => Number(id.slice(prefix.length)));
  return `${prefix}${Math.max(...numbers)}`;
}
