/** `npm start`: the bot on the platform. */
import { commands } from '../commands/index.ts';
import { speak } from '../shared/words/index.ts';
import { openDesk } from './answer/desk.ts';
import { commandCards } from './discord/command-cards.ts';
import { connect } from './discord/gateway.ts';
import { EnvironmentError, readEnvironment } from './environment.ts';
import { openLog } from './log.ts';
import { draw } from './pictures/local.ts';
import { migrateStore, openStore } from './store/open.ts';

const NO_TOKEN = `There is no DISCORD_TOKEN, so there is nobody to log in as.
Make an application with a bot on the platform's developer page, and put its token into .env: cp .env.example .env
To try everything without an account: npm run -s rehearse`;

const FORGET_DRAFTS_EVERY = 3_600_000; // an hour

async function start(): Promise<void> {
  const environment = readEnvironment();
  const { DISCORD_TOKEN: token, DATABASE_URL: database, BACKUP_DIR: backupDir } = environment;
  if (token === undefined) throw new EnvironmentError(NO_TOKEN);
  const log = openLog(environment.LOG_LEVEL);
  await migrateStore(database, { backupDir });
  const store = await openStore(database);
  log.info({ database }, 'store open');
  const english = speak({ locale: 'en-US', units: 'lb' });
  const connection = await connect({
    token,
    apiUrl: environment.DISCORD_API_URL,
    guild: environment.DISCORD_GUILD_ID,
    desk: openDesk({ store, commands, log }),
    draw,
    store,
    log,
    cards: commandCards(commands, english),
    now: Date.now,
    words: (locale) => speak({ locale, units: 'lb' }).platform,
    posted: (card) => store.club(card.club).keepPosted(card),
    postedAt: (club, piece) => store.club(club).posted(piece),
  });
  const forgetting = setInterval(() => {
    store
      .forgetDrafts(Date.now())
      .catch((err: unknown) => log.warn({ err }, 'old drafts were not forgotten'));
  }, FORGET_DRAFTS_EVERY);

  const stop = async (signal: string): Promise<void> => {
    log.info({ signal }, 'stopping: finishing what is on its way');
    clearInterval(forgetting);
    await connection.close();
    await store.close();
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop(signal));
}

start().catch((problem: unknown) => {
  // A wrong setting is the host's to mend: one line says which. Anything else keeps its stack.
  console.error(problem instanceof EnvironmentError ? problem.message : problem);
  process.exitCode = 1;
});
