/** What else grows with a club or with the store: completions, files, what is looked up by the clock, backups. */
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { checksOf, look } from '../../src/health/checks.ts';
import { databaseFile } from '../../src/store/database.ts';
import { ELSEWHERE } from '../../src/store/elsewhere.ts';
import type { BenchClub } from './clubs.ts';
import { type Counter, sceneOf } from './counter.ts';
import { LAST_DAY } from './large-store.ts';
import { milliseconds, percentile, spread, timed, watched } from './measure.ts';
import type { Row } from './table.ts';

const RUNS = 50;
/** While somebody types. */
const TYPING_UNDER_MS = 250;
const HELD_UNDER_MS = 50;
const CLOCK_UNDER_MS = 25;

export async function growth(
  counter: Counter,
  url: string,
  folder: string,
  { club, member }: { club: BenchClub; member: string },
): Promise<Row[]> {
  return [
    ...(await completing(counter, club, member)),
    ...(await exporting(counter, club, member)),
    ...(await byTheClock(counter)),
    await backingUp(url, folder),
  ];
}

async function completing({ desk }: Counter, club: BenchClub, member: string): Promise<Row[]> {
  const rows: Row[] = [];
  for (const [option, typed] of [
    ['piece', ''],
    ['cut', 'br'],
    ['shop', 'mar'],
  ] as const) {
    const asked = { ...sceneOf(club, member), command: 'weigh', option, typed, options: {} };
    const times = await timed(RUNS, () => desk.complete(asked));
    rows.push({
      what: `completing ${option}: in the largest club`,
      figure: spread(times),
      target: { is: percentile(times, 0.99), under: TYPING_UNDER_MS, unit: 'ms' },
      beside: `${(await desk.complete(asked)).length} are offered`,
    });
  }
  return rows;
}

async function exporting(counter: Counter, club: BenchClub, member: string): Promise<Row[]> {
  const rows: Row[] = [];
  for (const command of ['mine export', 'club export']) {
    let told = '';
    const { took, held } = await watched(async () => {
      const files = await counter.ask(club, member, { command, options: {} }).then(
        (reply) => reply.files ?? [],
        // As the largest club is told.
        () => [],
      );
      const bytes = files.reduce((sum, { content }) => sum + content.length, 0);
      told = bytes === 0 ? 'too large to attach' : `${(bytes / 2 ** 20).toFixed(1)} MB`;
    });
    rows.push({
      what: `/${command} in the largest club, event loop held`,
      figure: milliseconds(held),
      target: { is: held, under: HELD_UNDER_MS, unit: 'ms' },
      beside: `${told}, after ${milliseconds(took)}`,
    });
  }
  return rows;
}

async function byTheClock({ store }: Counter): Promise<Row[]> {
  const bot = { connected: () => true, clubs: () => 0, store };
  const works: [string, () => Promise<unknown>][] = [
    ['reminders that are due', () => store.dueReminders(LAST_DAY)],
    ['drafts that are over', () => store.forgetDrafts(LAST_DAY)],
    ['clubs that were left long ago', () => store.overdue(LAST_DAY)],
    ['/healthz', () => look(checksOf(bot))],
  ];
  const rows: Row[] = [];
  for (const [what, work] of works) {
    const times = await timed(RUNS, work);
    const target = { is: percentile(times, 0.99), under: CLOCK_UNDER_MS, unit: 'ms' } as const;
    rows.push({ what, figure: spread(times), target, beside: '' });
  }
  return rows;
}

async function backingUp(url: string, folder: string): Promise<Row> {
  const { took, held } = await watched(() => ELSEWHERE.backUp(url, join(folder, 'copies'), LAST_DAY));
  const megabytes = statSync(databaseFile(url)).size / 2 ** 20;
  return {
    what: 'a backup, event loop held',
    figure: milliseconds(held),
    target: { is: held, under: HELD_UNDER_MS, unit: 'ms' },
    beside: `${megabytes.toFixed(0)} MB in ${milliseconds(took)}`,
  };
}
