/** The whole bot on the stand-in, put together as `npm start` does: real commands, desk, pictures and a store in a file. */
import { type Bot, type BotOptions, startBot } from '../../src/bot.ts';
import { readEnvironment } from '../../src/environment.ts';
import { draw } from '../../src/pictures/local.ts';
import { type Folder, makeFolder } from '../store/folder.ts';
import { openLog } from './bot.ts';
import { type Club, openStandIn, type StandIn, type StandInOptions } from './stand-in.ts';

/** Saturday morning in Chicago; a test moves it on. */
export const SATURDAY = Date.parse('2026-07-04T15:00:00Z');
export const DAY = 86_400_000;
/** A picture on a busy machine may take its time: only the tests of late answers want a clock that presses. */
const UNHURRIED: StandInOptions = { answerWithinMs: 10_000, patienceMs: 15_000 };

/** A test's members type faster than any at a scale. */
const UNTIRING = { most: Number.POSITIVE_INFINITY, withinMs: 1 };

export interface ClubBot {
  platform: StandIn;
  folder: Folder;
  log: ReturnType<typeof openLog>;
  bot: Bot;
  club: Club;
  /** The bot's clock, which stands until it is set. */
  clock: { now: number };
  /** Everything that went wrong inside the bot. */
  faults(): unknown[];
  close(): Promise<void>;
}

export interface ClubBotOptions extends Omit<BotOptions, 'now'> {
  /** The club's. */
  locale?: string;
  platform?: StandInOptions;
  /** Beside those that every such bot has. */
  settings?: Readonly<Record<string, string>>;
}

/** A bot in one club. Closing throws where the platform or the log complains. */
export async function openClubBot({
  locale = 'en-US',
  platform: how = UNHURRIED,
  settings = {},
  ...options
}: ClubBotOptions = {}): Promise<ClubBot> {
  const platform = await openStandIn(how);
  const club = platform.addClub({ locale });
  const folder = makeFolder();
  const log = openLog();
  const clock = { now: SATURDAY };
  const environment = readEnvironment({
    DISCORD_TOKEN: platform.token,
    DISCORD_API_URL: platform.apiUrl,
    DATABASE_URL: folder.url('club.db'),
    BACKUP_DIR: folder.path,
    ...settings,
  });
  const bot = await startBot(environment, log, {
    deferAfterMs: 9000,
    coolDown: UNTIRING,
    // On this thread: a test whose one picture waits for another thread to start would take a second longer.
    ...(settings.PICTURES === undefined ? { draw } : {}),
    ...options,
    now: () => clock.now,
  });
  const faults = () => log.lines.filter(({ level }) => level === 'error');
  return {
    platform,
    folder,
    log,
    bot,
    club,
    clock,
    faults,
    close: async () => {
      await bot.close();
      folder.discard();
      await platform.close();
      const [fault] = faults();
      if (fault) throw new Error(`the bot complains: ${JSON.stringify(fault)}`);
    },
  };
}
