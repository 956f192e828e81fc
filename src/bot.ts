/** The bot put together: store, commands, desk, pictures and the platform. `npm start` and the wire tests both start it here. */
import { commands } from '../commands/index.ts';
import { hasLeft } from '../shared/club/member.ts';
import type { Store } from '../shared/club/store.ts';
import { speak } from '../shared/words/index.ts';
import { openDesk } from './answer/desk.ts';
import { attachments } from './discord/attachment.ts';
import { commandCards } from './discord/command-cards.ts';
import { type Connection, type ConnectOptions, connect } from './discord/gateway.ts';
import { settingAtFault } from './discord/setting-at-fault.ts';
import { type Environment, EnvironmentError, NO_TOKEN } from './environment.ts';
import { openExchange } from './exchange/open.ts';
import { type Findings, openFindings } from './findings/open.ts';
import { metered } from './health/meter.ts';
import { type Health, openHealth } from './health/open.ts';
import type { Log } from './log.ts';
import { openDraw } from './pictures/open.ts';
import { migrateNamed, openNamed } from './store/from-setting.ts';
import { sharedFile } from './store/open.ts';
import { startTimer } from './timer.ts';
import { openUpkeep } from './upkeep.ts';

/** What may be other than usual: a clock, a slower store or pen, shorter waits. */
export interface BotOptions
  extends Partial<
    Pick<
      ConnectOptions,
      'draw' | 'now' | 'deferAfterMs' | 'drawWithinMs' | 'closeWithinMs' | 'shard' | 'coolDown'
    >
  > {
  /** Told what happens in place of `HEALTH_PORT`. */
  health?: Health;
  /** Wraps the store that was opened. */
  wrapStore?: (store: Store) => Store;
  /** Milliseconds between looks for reminders that are due. */
  remindEveryMs?: number;
  /** Milliseconds until an attached file must be there. */
  fetchWithinMs?: number;
}

/** The platform's numbers, and who has left. */
const isMember = (id: string): boolean => /^\d{15,21}$/.test(id) || hasLeft(id);

export interface Bot extends Connection {
  store: Store;
}

/**
 * Migrates and opens the store, logs in and answers from then on. Throws where any of that can't be done.
 * Of several processes none migrates (who launches them has), and the first does what is to be done once.
 */
export async function startBot(environment: Environment, log: Log, options: BotOptions = {}): Promise<Bot> {
  const { DISCORD_TOKEN: token, DATABASE_URL: database, BACKUP_DIR: backupDir } = environment;
  if (token === undefined) throw new EnvironmentError(NO_TOKEN);
  const {
    wrapStore = (store: Store) => store,
    now = Date.now,
    remindEveryMs,
    fetchWithinMs,
    ...rest
  } = options;
  const leads = rest.shard === undefined || rest.shard.id === 0;
  const health = rest.health ?? (await openHealth(environment, log));
  const store = await opened(database, rest.shard === undefined ? backupDir : null).then(
    wrapStore,
    async (problem) => {
      await health.close();
      throw problem;
    },
  );
  log.info({ database }, 'store open');
  const findings = openFindings(store, sharedFile(database));
  const attachment = attachments({ apiUrl: environment.DISCORD_API_URL, withinMs: fetchWithinMs });
  const exchange = openExchange({ attachment, isMember });
  const desk = openDesk({ store, findings, exchange, commands, log });
  try {
    const connection = await connect({
      ...rest,
      draw: metered(rest.draw ?? openDraw(environment, log), health.meter),
      meter: health.meter,
      token,
      apiUrl: environment.DISCORD_API_URL,
      guild: environment.DISCORD_GUILD_ID,
      desk,
      store,
      log,
      cards: commandCards(commands, speak({ locale: 'en-US', units: 'lb' })),
      now,
      words: (locale) => speak({ locale, units: 'lb' }).platform,
      posted: (card) => store.club(card.club).keepPosted(card),
      postedAt: (club, piece) => store.club(club).posted(piece),
    });
    const timer = !leads
      ? async () => {}
      : startTimer({
          store,
          desk,
          tell: connection.tell,
          upkeep: openUpkeep({
            store,
            database,
            backupDir,
            retentionDays: environment.RETENTION_DAYS,
            isIn: connection.isIn,
            log,
          }),
          now,
          log,
          ...(remindEveryMs === undefined ? {} : { everyMs: remindEveryMs }),
        });
    health.watch({ ...connection, store });
    return { ...connection, store, close: closing(connection, store, findings, health, timer) };
  } catch (problem) {
    await health.close();
    await findings.close();
    await store.close();
    throw settingAtFault(problem, environment);
  }
}

/** @param backupDir where a copy goes before it is migrated; null where that is another process's to do */
async function opened(database: string, backupDir: string | null): Promise<Store> {
  if (backupDir !== null) await migrateNamed(database, backupDir);
  return openNamed(database);
}

/** Once the last answer is on its way nobody asks the store any more. */
const closing =
  (
    connection: Connection,
    store: Store,
    findings: Findings,
    health: Health,
    stopTimer: () => Promise<void>,
  ) =>
  async (): Promise<void> => {
    // A backup on its way is finished too.
    await Promise.all([stopTimer(), connection.close()]);
    await health.close();
    await findings.close();
    await store.close();
  };
