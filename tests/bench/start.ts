/** What starting costs with a large store: the compiled bot as a process of its own, in all its clubs, over loopback sockets. */
import { type ChildProcessByStdio, execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import { HOST_ENVIRONMENT, NODE_FLAGS } from '../start-command.ts';
import { openStandIn } from '../wire/stand-in.ts';
import type { BenchClub } from './clubs.ts';
import { milliseconds } from './measure.ts';
import type { Row } from './table.ts';

const WEIGH_INS = 100;
const ASKED_IN = 200;
const READY_UNDER_MS = 1500;
const MEMORY_UNDER_MB = 250;

export async function starting(url: string, folder: string, clubs: readonly BenchClub[]): Promise<Row[]> {
  execFileSync(join('node_modules', '.bin', 'tsc'), ['-p', 'tsconfig.build.json']);
  const alone = bareNode();
  const platform = await openStandIn({ answerWithinMs: 10_000, patienceMs: 30_000 });
  const joined = clubs.map(({ id }) => platform.addClub({ id, locale: 'en-US' }));
  const from = performance.now();
  const bot = spawn(process.execPath, [...NODE_FLAGS, '.build/src/main.js'], {
    env: {
      ...process.env,
      ...HOST_ENVIRONMENT,
      DISCORD_TOKEN: platform.token,
      DISCORD_API_URL: platform.apiUrl,
      DATABASE_URL: url,
      BACKUP_DIR: join(folder, 'backups'),
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await isReady(bot);
  const ready = performance.now() - from;
  const rows: Row[] = [
    {
      what: `start in ${clubs.length} clubs, until it answers`,
      figure: milliseconds(ready),
      target: { is: ready, under: READY_UNDER_MS, unit: 'ms' },
      beside: `Node alone: ${milliseconds(alone.took)}`,
    },
  ];
  const weigh = (after: string) => {
    const is = residentMegabytes(bot.pid ?? 0);
    rows.push({
      what: `resident memory ${after}`,
      figure: `${is} MB`,
      target: { is, under: MEMORY_UNDER_MB, unit: 'MB' },
      beside: `Node alone: ${alone.megabytes} MB`,
    });
  };
  weigh('then');
  const [largest] = joined;
  const [cut = 'packer'] = clubs.map(({ cuts }) => cuts[0]?.typed);
  const member = largest?.addMember({});
  for (let run = 0; run < WEIGH_INS; run++)
    await joined[1 + (run % (joined.length - 1))]
      ?.addMember({})
      .types('/weigh', { cut, bought: '14.83 lb', trim: '2 lb 9.4 oz' });
  weigh(`after ${WEIGH_INS} weigh-ins with pictures`);
  for (const club of joined.slice(-ASKED_IN)) await club.addMember({}).types('/average', { cut });
  weigh(`after asking in ${ASKED_IN} small clubs`);
  await member?.types('/debate', { cut });
  weigh('after a /debate in the largest club');
  for (const club of joined.slice(1, 1 + ASKED_IN)) await club.addMember({}).types('/average', { cut });
  weigh(`after asking in the ${ASKED_IN} next largest clubs`);
  bot.kill('SIGTERM');
  await once(bot, 'exit');
  await platform.close();
  return rows;
}

async function isReady(bot: ChildProcessByStdio<null, Readable, null>): Promise<void> {
  for await (const line of createInterface({ input: bot.stdout })) if (line.includes('ready as')) break;
  bot.stdout.resume();
}

/** A process that does nothing. */
function bareNode(): { took: number; megabytes: number } {
  const from = performance.now();
  const told = execFileSync(process.execPath, ['-p', 'process.memoryUsage.rss()']);
  return { took: performance.now() - from, megabytes: Math.round(Number(told) / 2 ** 20) };
}

/** From the kernel's account of the process. */
const residentMegabytes = (pid: number): number =>
  Math.round(Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024);
