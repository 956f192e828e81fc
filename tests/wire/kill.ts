/** Members weigh in while the bot is killed; then what the file holds is compared with what they were answered. */
import { setTimeout as wait } from 'node:timers/promises';
import Sqlite from 'better-sqlite3';
import { expect, vi } from 'vitest';
import type { Piece } from '../../shared/club/piece.ts';
import { NANOGRAMS } from '../../shared/measure/units.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import { databaseFile } from '../../src/store/database.ts';
import { openStore } from '../../src/store/open.ts';
import { makeFolder } from '../store/folder.ts';
import { startProcess } from './bot-process.ts';
import { type Club, type Exchange, openStandIn } from './stand-in.ts';

const MEMBERS = 8;
const WEIGH_INS = 500;
/** Already answered ones that are delivered once more after the restart; the unanswered ones all are. */
const REPEATED = 20;
/** Every piece keeps this much after the knife, so that a half-written one would show. */
const LEFT_POUNDS = 11;

interface Answered {
  exchange: Exchange;
  typed: Record<string, string>;
}

/** Kills the bot `afterMs` after its `answers`th answer to 500 weigh-ins, restarts it, and checks the file each time. */
export async function killInTheMiddle(answers: number, afterMs: number): Promise<void> {
  const platform = await openStandIn({ patienceMs: 60_000 });
  const club = platform.addClub();
  const folder = makeFolder();
  const url = folder.url('club.db');
  const environment = {
    DISCORD_TOKEN: platform.token,
    DISCORD_API_URL: platform.apiUrl,
    DATABASE_URL: url,
    BACKUP_DIR: folder.path,
  };

  const first = startProcess(folder.path, environment);
  await first.ready;
  const answered = await weighUntil(club, answers);
  await wait(afterMs);
  const { signal } = await first.kill('SIGKILL');
  expect(signal).toBe('SIGKILL');
  answered.stop();
  const kept = await readPieces(url, club.id);
  expectWhole(kept);
  expectAnswered(kept, answered.all);
  // At most what was on its way is kept beyond what was answered.
  expect(kept.length - answered.all.length).toBeGreaterThanOrEqual(0);
  expect(kept.length - answered.all.length).toBeLessThanOrEqual(MEMBERS);

  const second = startProcess(folder.path, environment);
  await second.ready;
  const ids = new Set(answered.all.map(({ exchange }) => exchange.id));
  const unanswered = platform.exchanges().filter(({ id }) => !ids.has(id));
  const repeated = [...unanswered, ...answered.all.slice(-REPEATED).map(({ exchange }) => exchange)];
  await deliverAgain(repeated);
  expect(await second.kill('SIGTERM')).toMatchObject({ code: 0, errors: '' });
  const after = await readPieces(url, club.id);
  expectWhole(after);
  expect(after.map(({ id }) => id).toSorted()).toEqual(
    [...ids, ...unanswered.map(({ id }) => id)].toSorted(),
  );
  for (const [at, before] of kept.entries()) expect(after[at]).toEqual(before);

  folder.discard();
  await platform.close();
}

/** Members type one after the other, all at once, until `answers` are there; from `stop` on nobody types any more. */
async function weighUntil(club: Club, answers: number): Promise<{ all: Answered[]; stop: () => void }> {
  const all: Answered[] = [];
  let typing = true;
  let next = 0;
  const enough = new Promise<void>((resolve) => {
    const weigh = async (): Promise<void> => {
      while (typing && next < WEIGH_INS) {
        // Each by another member: who types that fast is asked for a moment.
        const member = club.addMember();
        next += 1;
        const trim = 1 + (next % 300) / 100;
        const typed = {
          cut: 'packer',
          bought: `${(LEFT_POUNDS + trim).toFixed(2)} lb`,
          trim: `${trim.toFixed(2)} lb`,
          note: `weigh-in ${next}`,
        };
        const exchange = await member.types('/weigh', typed);
        if (!typing) return;
        all.push({ exchange, typed });
        if (all.length === answers) resolve();
      }
    };
    for (let at = 0; at < MEMBERS; at += 1) weigh().catch(() => {});
  });
  await enough;
  return {
    all,
    stop: () => {
      typing = false;
    },
  };
}

async function deliverAgain(exchanges: readonly Exchange[]): Promise<void> {
  const before = exchanges.map(({ steps }) => steps.length);
  for (const exchange of exchanges) exchange.again();
  await vi.waitFor(
    () => {
      for (const [at, { steps }] of exchanges.entries())
        expect(steps.length).toBeGreaterThan(before[at] ?? 0);
    },
    { timeout: 20_000 },
  );
}

/** Every piece, in order of its number; throws where the file is damaged or a figure counts another number of rows. */
async function readPieces(url: string, club: string): Promise<Piece[]> {
  const client = new Sqlite(databaseFile(url));
  expect(client.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(client.pragma('foreign_key_check')).toEqual([]);
  const rows = client.prepare<[], { seq: number }>('select seq from piece order by seq').all();
  client.close();
  const store = await openStore(url);
  const pieces = await Promise.all(rows.map(({ seq }) => store.club(club).piece({ seq })));
  const { count, version } = await store.club(club).columns('beef/brisket-whole' as CutKey, 'trim');
  await store.close();
  expect([count, version]).toEqual([rows.length, rows.length]);
  return pieces.filter((piece) => piece !== null);
}

function expectWhole(pieces: readonly Piece[]): void {
  expect(pieces.map(({ seq }) => seq)).toEqual(pieces.map((_, at) => at + 1));
  for (const { bought, trim, typed } of pieces) {
    expect((bought - (trim ?? 0)) / NANOGRAMS.lb).toBeCloseTo(LEFT_POUNDS, 6);
    expect(Object.keys(typed).toSorted()).toEqual(['bought', 'cut', 'note', 'trim']);
  }
}

function expectAnswered(pieces: readonly Piece[], answered: readonly Answered[]): void {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  for (const { exchange, typed } of answered) {
    const piece = byId.get(exchange.id);
    expect(piece).toMatchObject({ typed, note: typed.note });
    expect(exchange.message.isPrivate).toBe(false);
    expect(exchange.message.text).toContain(`Piece ${piece?.seq}, `);
  }
}
