/** The other thread's side: its own connection to the file, one order after the other. */
import { parentPort, workerData } from 'node:worker_threads';
import { openStore } from '../store/open.ts';
import { compute } from './compute.ts';
import type { Delivery, Order } from './elsewhere.ts';

const store = await openStore((workerData as { database: string }).database);
const port = parentPort;
let before = Promise.resolve();

port?.on('message', (order: Order) => {
  before = before.then(() => deliver(order));
});

async function deliver({ id, club, name, asked }: Order): Promise<void> {
  const delivery: Delivery = await compute(store.club(club), name, asked).then(
    (computed) => ({ id, computed }),
    (error: unknown) => ({ id, error }),
  );
  port?.postMessage(delivery);
}
