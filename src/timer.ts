/** What happens without anybody asking: reminders, forgetting what is over, and the upkeep of the file. */
import type { Desk, Due } from '../shared/chat/request.ts';
import type { Store } from '../shared/club/store.ts';
import { HOUR_MS, MINUTE_MS } from '../shared/measure/time.ts';
import type { Log } from './log.ts';
import type { Upkeep } from './upkeep.ts';

export interface TimerParts {
  store: Pick<Store, 'forgetDrafts'>;
  desk: Pick<Desk, 'due'>;
  /** Hands a reminder to its member alone; false where they can't be reached. */
  tell(due: Due): Promise<boolean>;
  upkeep: Upkeep;
  now(): number;
  log: Log;
  /** Milliseconds between looks for reminders. */
  everyMs?: number;
}

/** Starts the timer; what it returns stops it, and resolves when nothing of the upkeep runs any more. */
export function startTimer({
  store,
  desk,
  tell,
  upkeep,
  now,
  log,
  everyMs = MINUTE_MS,
}: TimerParts): () => Promise<void> {
  const remind = async () => {
    for (const due of await desk.due(now())) {
      const reached = await tell(due);
      log.info({ club: due.club, member: due.member, reached }, 'reminded');
    }
  };
  const repeat = (work: () => Promise<void>, every: number, what: string) =>
    setInterval(() => void work().catch((err: unknown) => log.warn({ err }, `${what} failed`)), every);
  const timers = [
    repeat(remind, everyMs, 'reminding'),
    repeat(() => store.forgetDrafts(now()), HOUR_MS, 'forgetting drafts'),
    repeat(() => upkeep.look(now()), 10 * MINUTE_MS, 'upkeep'),
  ];
  return () => {
    timers.forEach(clearInterval);
    return upkeep.idle();
  };
}
