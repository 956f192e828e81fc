/** What starting costs: the compiled bot as a process of its own, logging in over loopback sockets. */
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { openStandIn } from '../wire/stand-in.ts';
import { milliseconds, type Row } from './measure.ts';

const WEIGH_INS = 100;

/** Milliseconds from the process's start until it answers, and its memory then and after some weigh-ins with pictures. */
export async function startCost(folder: string): Promise<Row[]> {
  execFileSync(join('node_modules', '.bin', 'tsc'), ['-p', 'tsconfig.build.json']);
  const platform = await openStandIn();
  const club = platform.addClub({ locale: 'en-US' });
  const environment = {
    ...process.env,
    DISCORD_TOKEN: platform.token,
    DISCORD_API_URL: platform.apiUrl,
    DATABASE_URL: `file:${join(folder, 'start.db')}`,
    BACKUP_DIR: join(folder, 'backups'),
  };
  const bareFrom = performance.now();
  execFileSync(process.execPath, ['-e', '0']);
  const bare = performance.now() - bareFrom;
  const from = performance.now();
  const bot = spawn(process.execPath, ['.build/src/main.js'], {
    env: environment,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  for await (const line of createInterface({ input: bot.stdout })) if (line.includes('ready as')) break;
  const ready = performance.now() - from;
  bot.stdout.resume();
  const idle = residentMegabytes(bot.pid ?? 0);
  const member = club.addMember({});
  for (let run = 0; run < WEIGH_INS; run++) {
    await member.types('/weigh', { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' });
  }
  const busy = residentMegabytes(bot.pid ?? 0);
  bot.kill('SIGTERM');
  await once(bot, 'exit');
  await platform.close();
  return [
    {
      what: 'start, until it answers',
      value: milliseconds(ready),
      beside: `Node alone: ${milliseconds(bare)}`,
    },
    {
      what: 'resident memory',
      value: `${idle} MB`,
      beside: `${busy} MB after ${WEIGH_INS} weigh-ins with pictures`,
    },
  ];
}

/** From the kernel's account of the process. */
const residentMegabytes = (pid: number): number =>
  Math.round(Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024);
