/** The same bot in several processes, each with its share of the platform's clubs: the library starts them. */
import { setTimeout as wait } from 'node:timers/promises';
import { type Shard, ShardingManager } from 'discord.js';
import type { Log } from '../log.ts';
import { isReport, type Order, type Report } from '../shards/messages.ts';

/** A process that does not answer within this is taken to be stuck. */
const REPORT_WITHIN_MS = 4000;
/** Longer than a process takes to finish what it answers. */
const STOP_WITHIN_MS = 15_000;
/** A process that ends by itself is started again after a wait, since the platform counts the log-ins of a day. */
const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 60_000;

export interface Shards {
  /** Of each process, in their order; null where it does not answer. */
  look(): Promise<(Report | null)[]>;
  /** Each finishes what it answers; resolves when all are gone. */
  stop(): Promise<void>;
  /** Ends them at once. */
  kill(): void;
}

export interface ShardsOptions {
  token: string;
  count: number;
  /** What each process runs. */
  file: string;
  log: Log;
  /** Milliseconds between two log-ins: the platform takes one in five seconds. */
  apartMs?: number;
}

/** What can be told before all have started: stopping must be possible at any time. */
export function openShards({ token, count, file, log, apartMs }: ShardsOptions): Shards & {
  /** Starts one after the other; rejects, with none left, where one of them can't. */
  start(): Promise<void>;
} {
  const manager = new ShardingManager(file, {
    token,
    totalShards: count,
    respawn: false,
    execArgv: process.execArgv,
  });
  let stopping = false;
  let asked = 0;

  manager.on('shardCreate', (shard) => {
    let waitMs = FIRST_WAIT_MS;
    let readyAt: number | null = null;
    shard.on('ready', () => {
      readyAt = performance.now();
    });
    shard.on('death', async () => {
      // One that never was ready fails the start.
      if (stopping || readyAt === null) return;
      if (performance.now() - readyAt > LONGEST_WAIT_MS) waitMs = FIRST_WAIT_MS;
      log.error({ shard: shard.id, waitMs }, 'a process ended: it is started again');
      await wait(waitMs, undefined, { ref: false });
      waitMs = Math.min(waitMs * 2, LONGEST_WAIT_MS);
      if (stopping) return;
      await shard.spawn().catch(({ message }) => log.error({ shard: shard.id, message }, 'not ready yet'));
    });
  });

  const look = (shard: Shard): Promise<Report | null> =>
    new Promise((resolve) => {
      asked += 1;
      const id = asked;
      const done = (report: Report | null): void => {
        clearTimeout(late);
        shard.off('message', take);
        resolve(report);
      };
      const take = (message: unknown): void => {
        if (isReport(message) && message.id === id) done(message);
      };
      const late = setTimeout(() => done(null), REPORT_WITHIN_MS);
      shard.on('message', take);
      send(shard, { trimtally: 'look', id }).catch(() => done(null));
    });

  const kill = (): void => {
    stopping = true;
    for (const { process: child } of manager.shards.values()) child?.kill('SIGKILL');
  };
  const stop = async (): Promise<void> => {
    stopping = true;
    const late = setTimeout(kill, STOP_WITHIN_MS);
    await Promise.all([...manager.shards.values()].map(stopOne));
    clearTimeout(late);
  };

  return {
    start: async () => {
      try {
        await manager.spawn({ ...(apartMs === undefined ? {} : { delay: apartMs }) });
      } catch (problem) {
        await stop();
        throw problem;
      }
    },
    look: () => Promise.all(Array.from({ length: count }, (_, id) => lookAt(manager.shards.get(id)))),
    stop,
    kill,
  };

  async function lookAt(shard: Shard | undefined): Promise<Report | null> {
    return shard?.process?.connected ? look(shard) : null;
  }
}

async function stopOne(shard: Shard): Promise<void> {
  const { process: child } = shard;
  if (!child || child.exitCode !== null) return;
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  await send(shard, { trimtally: 'stop' }).catch(() => child.kill('SIGKILL'));
  await gone;
}

async function send(shard: Shard, order: Order): Promise<void> {
  await shard.send(order);
}
