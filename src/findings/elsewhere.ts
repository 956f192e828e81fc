/** Another thread that reads and computes, so that this one can go on answering. */
import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Asked, FindingName } from '../../shared/findings/index.ts';
import type { Computed } from './compute.ts';

export interface Elsewhere {
  compute(club: string, name: FindingName, asked: Asked<FindingName>): Promise<Computed>;
  close(): Promise<void>;
}

/** What goes over, and what comes back. */
export interface Order {
  id: number;
  club: string;
  name: FindingName;
  asked: Asked<FindingName>;
}
export type Delivery = { id: number } & ({ computed: Computed } | { error: unknown });

/** Compiled, the thread's file stands beside this one. In development it is TypeScript, which tsx has to read there too. */
const ENDING = extname(import.meta.url);
const SOURCE = new URL(`./worker${ENDING}`, import.meta.url);
const inDevelopment = (): string => {
  // By its address: the process may run in a folder where nothing is installed.
  const tsx = import.meta.resolve('tsx/esm/api');
  return `import('${tsx}').then(({ register }) => { register(); return import('${SOURCE.href}'); });`;
};

const startThread = (database: string): Worker =>
  ENDING === '.ts'
    ? new Worker(inDevelopment(), { eval: true, workerData: { database } })
    : new Worker(SOURCE, { workerData: { database } });

/** The longest, of a club of a quarter of a million pieces, takes some seconds; each waits for those before it. */
const WITHIN_MS = 60_000;

interface Waiting {
  resolve(computed: Computed): void;
  reject(error: unknown): void;
  timer: NodeJS.Timeout;
}

interface Thread {
  worker: Worker;
  /** Orders on their way, by id. */
  waiting: Map<number, Waiting>;
}

export interface ElsewhereOptions {
  start?: (database: string) => Worker;
  /** Milliseconds until a thread that says nothing is ended. */
  withinMs?: number;
}

/** Starts the thread with the first order, and anew with the next one where it ended. */
export function openElsewhere(
  database: string,
  { start: startWorker = startThread, withinMs = WITHIN_MS }: ElsewhereOptions = {},
): Elsewhere {
  let thread: Thread | null = null;
  let last = 0;

  const start = (): Thread => {
    const started: Thread = { worker: startWorker(database), waiting: new Map() };
    const { worker, waiting } = started;
    worker.on('message', (delivery: Delivery) => {
      const whose = waiting.get(delivery.id);
      waiting.delete(delivery.id);
      clearTimeout(whose?.timer);
      if ('computed' in delivery) whose?.resolve(delivery.computed);
      else whose?.reject(delivery.error);
      // An idle thread must not keep the process alive.
      if (waiting.size === 0) worker.unref();
    });
    // Its own orders alone: another thread may have been started since.
    const ended = (error: unknown) => {
      if (thread === started) thread = null;
      for (const { reject, timer } of waiting.values()) {
        clearTimeout(timer);
        reject(error);
      }
      waiting.clear();
    };
    worker.on('error', ended);
    worker.on('exit', (code) => ended(new Error(`the findings' thread ended with ${code}`)));
    return started;
  };

  return {
    compute: (club, name, asked) =>
      new Promise((resolve, reject) => {
        thread ??= start();
        const { worker, waiting } = thread;
        last += 1;
        const timer = setTimeout(() => void worker.terminate(), withinMs);
        waiting.set(last, { resolve, reject, timer });
        worker.ref();
        worker.postMessage({ id: last, club, name, asked } satisfies Order);
      }),
    close: async () => {
      const closing = thread;
      thread = null;
      await closing?.worker.terminate();
    },
  };
}
