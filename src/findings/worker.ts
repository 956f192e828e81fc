/** The other thread's side: its own connection to the file, one order after the other. */
import { workerData } from 'node:worker_threads';
import { openStore } from '../store/open.ts';
import { serveThread } from '../thread.ts';
import { type Computed, compute } from './compute.ts';
import type { Order } from './elsewhere.ts';

const store = await openStore((workerData as { database: string }).database);
let before: Promise<unknown> = Promise.resolve();

serveThread(({ club, name, asked }: Order): Promise<Computed> => {
  const computed = before.then(() => compute(store.club(club), name, asked));
  before = computed.catch(() => {});
  return computed;
});
