/** The bot put together: store, commands, desk, pictures and the platform. `npm start` and the wire tests both start it here. */
import { commands } from '../commands/index.ts';
import type { Store } from '../shared/club/store.ts';
import { speak } from '../shared/words/index.ts';
import { openDesk } from './answer/desk.ts';
import { commandCards } from './discord/command-cards.ts';
import { type Connection, type ConnectOptions, connect } from './discord/gateway.ts';
import { type Environment, EnvironmentError } from './environment.ts';
import { type Findings, openFindings } from './findings/open.ts';
import type { Log } from './log.ts';
import { openDraw } from './pictures/open.ts';
import { migrateStore, openStore, sharedFile } from './store/open.ts';
import { startTimer } from './timer.ts';

const NO_TOKEN = `There is no DISCORD_TOKEN, so there is nobody to log in as.
Make an application with a bot on the platform's developer page, and put its token into .env: cp .env.example .env
To try everything without an account: npm run -s rehearse`;

/** Nobody is there, or no such address. */
const UNREACHABLE: readonly string[] = [
  'ECONNREFUSED',
  'ENOTFOUND',
  'EAI_AGAIN',
  'ETIMEDOUT',
  'EHOSTUNREACH',
];

/** What may be other than usual: a clock, a slower store or pen, shorter waits. */
export interface BotOptions
  extends Partial<Pick<ConnectOptions, 'draw' | 'now' | 'deferAfterMs' | 'drawWithinMs' | 'closeWithinMs'>> {
  /** Wraps the store that was opened. */
  wrapStore?: (store: Store) => Store;
  /** Milliseconds between looks for reminders that are due. */
  remindEveryMs?: number;
}

export interface Bot extends Connection {
  store: Store;
}

/** Migrates and opens the store, logs in and answers from then on. Throws where any of that can't be done. */
export async function startBot(environment: Environment, log: Log, options: BotOptions = {}): Promise<Bot> {
  const { DISCORD_TOKEN: token, DATABASE_URL: database, BACKUP_DIR: backupDir } = environment;
  if (token === undefined) throw new EnvironmentError(NO_TOKEN);
  const { wrapStore = (store: Store) => store, now = Date.now, remindEveryMs, ...rest } = options;
  const store = wrapStore(await openMigrated(database, backupDir));
  log.info({ database }, 'store open');
  const findings = openFindings(store, sharedFile(database));
  const desk = openDesk({ store, findings, commands, log });
  try {
    const connection = await connect({
      draw: openDraw(environment, log),
      ...rest,
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
    const timer = startTimer({
      store,
      desk,
      tell: connection.tell,
      now,
      log,
      ...(remindEveryMs === undefined ? {} : { everyMs: remindEveryMs }),
    });
    return { ...connection, store, close: closing(connection, store, findings, timer) };
  } catch (problem) {
    await findings.close();
    await store.close();
    throw settingOf(problem, environment);
  }
}

/** What of a failed login is a setting's fault, as the one line that names it; anything else as it is. */
function settingOf(problem: unknown, { DISCORD_API_URL: url }: Environment): unknown {
  const code = problem instanceof Error && 'code' in problem ? String(problem.code) : '';
  if (code === 'TokenInvalid')
    return new EnvironmentError('DISCORD_TOKEN: the platform does not know it.', { cause: problem });
  if (!UNREACHABLE.includes(code)) return problem;
  return new EnvironmentError(`DISCORD_API_URL: ${url} can't be reached: ${code}`, { cause: problem });
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

/** Once the last answer is on its way nobody asks the store any more. */
const closing =
  (connection: Connection, store: Store, findings: Findings, stopTimer: () => void) =>
  async (): Promise<void> => {
    stopTimer();
    await connection.close();
    await findings.close();
    await store.close();
  };
