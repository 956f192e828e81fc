/** The bot put together: store, commands, desk, pictures and the platform. `npm start` and the wire tests both start it here. */
import { commands } from '../commands/index.ts';
import type { Store } from '../shared/club/store.ts';
import { speak } from '../shared/words/index.ts';
import { openDesk } from './answer/desk.ts';
import { commandCards } from './discord/command-cards.ts';
import { type Connection, type ConnectOptions, connect } from './discord/gateway.ts';
import { type Environment, EnvironmentError } from './environment.ts';
import type { Log } from './log.ts';
import { draw } from './pictures/local.ts';
import { migrateStore, openStore } from './store/open.ts';

const NO_TOKEN = `There is no DISCORD_TOKEN, so there is nobody to log in as.
Make an application with a bot on the platform's developer page, and put its token into .env: cp .env.example .env
To try everything without an account: npm run -s rehearse`;

const FORGET_DRAFTS_EVERY = 3_600_000; // an hour

/** What may be other than usual: a clock, a slower store or pen, shorter waits. */
export interface BotOptions
  extends Partial<
    Pick<ConnectOptions, 'draw' | 'now' | 'deferAfterMs' | 'drawWithinMs' | 'closeWithinMs'>
  > {
  /** Wraps the store that was opened. */
  wrapStore?: (store: Store) => Store;
}

export interface Bot extends Connection {
  store: Store;
}

/** Migrates and opens the store, logs in and answers from then on. Throws where any of that can't be done. */
export async function startBot(environment: Environment, log: Log, options: BotOptions = {}): Promise<Bot> {
  const { DISCORD_TOKEN: token, DATABASE_URL: database, BACKUP_DIR: backupDir } = environment;
  if (token === undefined) throw new EnvironmentError(NO_TOKEN);
  const { wrapStore = (store: Store) => store, now = Date.now, ...rest } = options;
  const store = wrapStore(await openMigrated(database, backupDir));
  log.info({ database }, 'store open');
  try {
    const connection = await connect({
      draw,
      ...rest,
      token,
      apiUrl: environment.DISCORD_API_URL,
      guild: environment.DISCORD_GUILD_ID,
      desk: openDesk({ store, commands, log }),
      store,
      log,
      cards: commandCards(commands, speak({ locale: 'en-US', units: 'lb' })),
      now,
      words: (locale) => speak({ locale, units: 'lb' }).platform,
      posted: (card) => store.club(card.club).keepPosted(card),
      postedAt: (club, piece) => store.club(club).posted(piece),
    });
    return { ...connection, store, close: closing(connection, store, forgetDrafts(store, now, log)) };
  } catch (problem) {
    await store.close();
    throw problem;
  }
}

async function openMigrated(database: string, backupDir: string): Promise<Store> {
  try {
    await migrateStore(database, { backupDir });
    return await openStore(database);
  } catch (problem) {
    const why = problem instanceof Error ? problem.message : String(problem);
    throw new EnvironmentError(`DATABASE_URL: ${database} can't be used: ${why}`, { cause: problem });
  }
}

function forgetDrafts(store: Store, now: () => number, log: Log): NodeJS.Timeout {
  return setInterval(() => {
    store
      .forgetDrafts(now())
      .catch((err: unknown) => log.warn({ err }, 'old drafts were not forgotten'));
  }, FORGET_DRAFTS_EVERY);
}

/** Once the last answer is on its way nobody asks the store any more. */
const closing =
  (connection: Connection, store: Store, forgetting: NodeJS.Timeout) => async (): Promise<void> => {
    clearInterval(forgetting);
    await connection.close();
    await store.close();
  };
