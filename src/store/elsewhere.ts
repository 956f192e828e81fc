/** Long work on the file, on another thread: it waits for the disk for seconds, in which nobody would be answered. */
import { openThread, startWorker } from '../thread.ts';
import type { backUp } from './backup.ts';
import type { TidyOptions, tidy } from './tidy.ts';

export type Deed =
  | { kind: 'back up'; url: string; backupDir: string; now: number }
  | ({ kind: 'tidy'; url: string } & TidyOptions);

/** Far beyond what any club's file takes: a thread that long silent is stuck. */
const WITHIN_MS = 3_600_000;

/** Done once a night: the thread goes with its deed. */
async function elsewhere<Done>(deed: Deed): Promise<Done> {
  const start = () => startWorker(import.meta.url, './worker');
  const thread = openThread<Deed, Done>({ start, withinMs: WITHIN_MS, name: 'store' });
  try {
    return await thread.ask(deed);
  } finally {
    await thread.close();
  }
}

/** What is done to the file, and where. */
export interface Upkeeping {
  backUp: typeof backUp;
  tidy: typeof tidy;
}

/** Whoever writes while a file is tidied waits; whoever reads does not. */
export const ELSEWHERE: Upkeeping = {
  backUp: (url, backupDir, now) => elsewhere({ kind: 'back up', url, backupDir, now }),
  tidy: (url, options) => elsewhere({ kind: 'tidy', url, ...options }),
};
