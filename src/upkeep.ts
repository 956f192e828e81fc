/** Upkeep of the file: a backup each night, tidying after an erasure, and clubs that the bot was removed from for long. */
import { TIDIED_WITHIN_DAYS } from '../shared/club/retention.ts';
import type { Store } from '../shared/club/store.ts';
import { DAY_MS, HOUR_MS } from '../shared/measure/time.ts';
import type { Log } from './log.ts';
import { copiesIn, dropOldCopies } from './store/backup.ts';
import { ELSEWHERE, type Upkeeping } from './store/elsewhere.ts';
import { pendingIn } from './store/tidy.ts';

/** UTC. Both run beside the answers, but while a large file is rebuilt whoever weighs has to wait. */
const QUIET_HOURS = [3, 4, 5];
/** In the quiet hours a backup is made unless there is one of this very night. */
const THIS_NIGHT_MS = 12 * HOUR_MS;
/** A bot that is never there at night must keep its word too. */
const OVERDUE_MS = TIDIED_WITHIN_DAYS * DAY_MS - 2 * HOUR_MS;
/** At any hour, where no night came: long enough for the next quiet hours. */
const BACKUP_OVERDUE_MS = 30 * HOUR_MS;

export interface UpkeepParts {
  store: Pick<Store, 'overdue' | 'returned' | 'club'>;
  database: string;
  backupDir: string;
  /** How long a club's rows outlive the bot's leaving. */
  retentionDays?: number;
  /** Whether the bot is in a club, by the platform's word; throws where it gives none. */
  isIn(club: string): Promise<boolean>;
  log: Log;
  /** Where the long work on the file is done, if not on another thread. */
  on?: Upkeeping;
}

export interface Upkeep {
  /** Does what is due at `now`; a second one at the same time does nothing. Throws where something failed. */
  look(now: number): Promise<void>;
  /** Resolves when nothing of it runs any more. */
  idle(): Promise<void>;
}

export function openUpkeep(parts: UpkeepParts): Upkeep {
  let running: Promise<void> | null = null;
  return {
    look: async (now) => {
      if (running !== null) return;
      running = keepUp(parts, now).finally(() => {
        running = null;
      });
      await running;
    },
    idle: async () => {
      await running?.catch(() => {});
    },
  };
}

async function keepUp(parts: UpkeepParts, now: number): Promise<void> {
  for (const club of await parts.store.overdue(now, parts.retentionDays)) await purge(parts, club, now);
  const { database, backupDir, log, on = ELSEWHERE } = parts;
  const pending = await pendingIn(database);
  const quiet = QUIET_HOURS.includes(new Date(now).getUTCHours());
  // One that a wrong clock dated ahead must not stand for those of the nights until then.
  const newest = copiesIn(backupDir).find(({ nightly, at }) => nightly && at <= now + HOUR_MS);
  const age = newest === undefined ? Number.POSITIVE_INFINITY : now - newest.at;
  if (pending !== null && (quiet || now - pending.since >= OVERDUE_MS)) {
    const done = await on.tidy(database, { backupDir, now });
    log.info({ ...done }, 'tidied');
  } else if (age >= (quiet ? THIS_NIGHT_MS : BACKUP_OVERDUE_MS)) {
    const copy = await on.backUp(database, backupDir, now);
    if (copy !== null) log.info({ backup: copy.file }, 'backed up');
  }
  const dropped = dropOldCopies(backupDir, now);
  if (dropped.length > 0) log.info({ dropped }, 'dropped old backups');
}

/** The platform is asked once more: a list that lacked the club, or an event that was missed, must cost nobody their rows. */
async function purge({ store, isIn, log }: UpkeepParts, club: string, now: number): Promise<void> {
  try {
    if (await isIn(club)) {
      await store.returned(club);
      log.info({ club }, 'is in a club that was noted as left');
    } else {
      const { pieces } = await store.club(club).eraseClub(now);
      log.info({ club, pieces }, 'erased a club that was left long ago');
    }
  } catch (err) {
    log.warn({ club, err }, 'could not erase a club that was left long ago');
  }
}
