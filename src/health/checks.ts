/** What must hold for members to be answered. */
import { setTimeout as wait } from 'node:timers/promises';
import type { Store } from '../../shared/club/store.ts';
import { messageOf } from '../problem.ts';

/** A running bot, as far as it is looked at. */
export interface Watched {
  connected(): boolean;
  clubs(): number;
  store: Pick<Store, 'clubs'>;
}

/** Resolves where it holds, throws what is wrong. */
export type Check = () => Promise<void>;

export interface Looked {
  /** What was looked at: `gateway`, `store`. */
  name: string;
  /** Null where all is well. */
  wrong: string | null;
}

/** Whoever asks waits for a few seconds at most; a check that takes longer has failed. */
const WITHIN_MS = 3000;

/** Of a bot, or of one that is still starting. */
export const checksOf = (bot: Watched | null): Readonly<Record<string, Check>> => ({
  gateway: async () => {
    if (bot?.connected() !== true) throw new Error('not connected to the platform');
  },
  store: async () => {
    if (bot === null) throw new Error('not open yet');
    await bot.store.clubs();
  },
});

/** Looks at everything at once. Does not throw. */
export const look = (checks: Readonly<Record<string, Check>>): Promise<Looked[]> =>
  Promise.all(Object.entries(checks).map(async ([name, check]) => ({ name, wrong: await wrongWith(check) })));

async function wrongWith(check: Check): Promise<string | null> {
  const done = new AbortController();
  const late = wait(WITHIN_MS, undefined, { signal: done.signal, ref: false }).then(
    () => `no answer within ${WITHIN_MS} ms`,
    () => null,
  );
  try {
    return await Promise.race([check().then(() => null), late]);
  } catch (problem) {
    return messageOf(problem);
  } finally {
    done.abort();
  }
}
