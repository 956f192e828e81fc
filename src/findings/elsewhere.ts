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

interface Waiting {
  resolve(computed: Computed): void;
  reject(error: unknown): void;
}

/** Starts the thread with the first order, and anew with the next one where it ended. */
export function openElsewhere(database: string): Elsewhere {
  const waiting = new Map<number, Waiting>();
  let worker: Worker | null = null;
  let last = 0;

  const start = (): Worker => {
    const started = startThread(database);
    started.on('message', (delivery: Delivery) => {
      const whose = waiting.get(delivery.id);
      waiting.delete(delivery.id);
      if ('computed' in delivery) whose?.resolve(delivery.computed);
      else whose?.reject(delivery.error);
      // An idle thread must not keep the process alive.
      if (waiting.size === 0) started.unref();
    });
    const ended = (error: unknown) => {
      if (worker === started) worker = null;
      for (const { reject } of waiting.values()) reject(error);
      waiting.clear();
    };
    started.on('error', ended);
    started.on('exit', (code) => ended(new Error(`the findings' thread ended with ${code}`)));
    return started;
  };

  return {
    compute: (club, name, asked) =>
      new Promise((resolve, reject) => {
        worker ??= start();
        last += 1;
        waiting.set(last, { resolve, reject });
        worker.ref();
        worker.postMessage({ id: last, club, name, asked } satisfies Order);
      }),
    close: async () => {
      const closing = worker;
      worker = null;
      await closing?.terminate();
    },
  };
}
