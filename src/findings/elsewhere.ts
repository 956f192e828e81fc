/** Another thread that reads and computes, so that this one can go on answering. */
import type { Worker } from 'node:worker_threads';
import type { Asked, FindingName } from '../../shared/findings/index.ts';
import { openThread, startWorker } from '../thread.ts';
import type { Computed } from './compute.ts';

export interface Elsewhere {
  compute(club: string, name: FindingName, asked: Asked<FindingName>): Promise<Computed>;
  close(): Promise<void>;
}

/** What goes over. */
export interface Order {
  club: string;
  name: FindingName;
  asked: Asked<FindingName>;
}

/** The longest, of a club of a quarter of a million pieces, takes some seconds; each waits for those before it. */
const WITHIN_MS = 60_000;

export interface ElsewhereOptions {
  start?: () => Worker;
  /** Milliseconds until a thread that says nothing is ended. */
  withinMs?: number;
}

export function openElsewhere(
  database: string,
  {
    start = () => startWorker(import.meta.url, './worker', { workerData: { database } }),
    withinMs = WITHIN_MS,
  }: ElsewhereOptions = {},
): Elsewhere {
  const { ask, close } = openThread<Order, Computed>({ start, withinMs, name: 'findings' });
  return { compute: (club, name, asked) => ask({ club, name, asked }), close };
}
