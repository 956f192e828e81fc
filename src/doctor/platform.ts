/** Whether the platform knows the bot, its commands, and the time. */
import { commands } from '../../commands/index.ts';
import { speak } from '../../shared/words/index.ts';
import { createRest } from '../discord/client.ts';
import { commandCards } from '../discord/command-cards.ts';
import { clubsOf, identify, inviteOf, logInsOf } from '../discord/examine.ts';
import { applicationOf, compareCommands } from '../discord/register.ts';
import { settingAtFault } from '../discord/setting-at-fault.ts';
import type { Environment } from '../environment.ts';
import { type Finding, find, note, ok, wrong } from './finding.ts';

/** Reminders, days and questions that run out go by this clock; a few seconds harm nobody. */
const CLOCK_MS = 5000;
const NEEDED = 'DISCORD_TOKEN is needed: cp .env.example .env, and put the token of your bot into it';
const FEW_LOG_INS = 20;
const MOST_LISTED = 5;

type Rest = ReturnType<typeof createRest>;

export async function examinePlatform(environment: Environment): Promise<Finding[]> {
  const { DISCORD_TOKEN: token, DISCORD_API_URL: url, DISCORD_GUILD_ID: guild } = environment;
  if (token === undefined) return [await find('token', () => wrong(NEEDED))];
  const rest = createRest(token, url);
  const identity = await identify(rest).catch((problem: unknown) => settingAtFault(problem, environment));
  // Without an answer to this, nothing else would be answered.
  if (!isIdentity(identity)) {
    return [
      await find('token', () => {
        throw identity;
      }),
    ];
  }
  const application = await applicationOf(rest);
  return Promise.all([
    find('token', () => ok(`logs in as ${identity.name} (${identity.id})`)),
    find('clock', () => clock(identity.clockAheadMs)),
    find('commands', () => registration(rest, application, guild)),
    find('clubs', () => rights(rest, application, guild)),
    find('log-ins', () => logIns(rest, environment)),
  ]);
}

const isIdentity = (told: unknown): told is Awaited<ReturnType<typeof identify>> => !(told instanceof Error);

function clock(aheadMs: number | null) {
  if (aheadMs === null) return note('the platform did not tell the time');
  const seconds = Math.round(Math.abs(aheadMs) / 1000);
  if (Math.abs(aheadMs) <= CLOCK_MS) return ok('goes with the platform’s');
  return wrong(
    `${seconds} s ${aheadMs > 0 ? 'ahead of' : 'behind'} the platform's: let the machine set its clock by the network (timedatectl set-ntp true)`,
  );
}

async function registration(rest: Rest, application: string, guild: string | undefined) {
  const cards = commandCards(commands, speak({ locale: 'en-US', units: 'lb' }));
  const scope = guild === undefined ? 'everywhere' : { guild };
  const compared = await compareCommands(rest, application, cards, scope);
  if (compared === 'none') return note('not registered yet: npm start registers them');
  if (compared === 'other')
    return wrong('other ones than this program has: start the bot anew, or npm run register');
  const where = guild === undefined ? 'everywhere' : `in ${guild}`;
  const twice =
    guild !== undefined && (await compareCommands(rest, application, cards, 'everywhere')) !== 'none';
  if (twice) return note(`registered ${where} and everywhere, so they are shown twice: npm run register`);
  return ok(`${cards.length} registered ${where}`);
}

async function rights(rest: Rest, application: string, guild: string | undefined) {
  const { clubs, blind } = await clubsOf(rest);
  const invite = inviteOf(application);
  if (guild !== undefined && !clubs.includes(guild))
    return wrong(`not in ${guild}, which DISCORD_GUILD_ID names: invite it by ${invite}`);
  if (clubs.length === 0) return note(`in none yet: invite it by ${invite}`);
  if (blind.length === 0) return ok(`in ${clubs.length}, and sees channels in each`);
  const listed = blind.slice(0, MOST_LISTED).join(', ');
  const more = blind.length > MOST_LISTED ? ', …' : '';
  return wrong(
    `in ${clubs.length}, but sees no channels in ${blind.length} (${listed}${more}): a card there can't be mended; give its role View Channels, or invite it again by ${invite}`,
  );
}

async function logIns(rest: Rest, { SHARDS }: Environment) {
  const { shards, left } = await logInsOf(rest);
  if (left < FEW_LOG_INS)
    return wrong(`${left} left today: it is started too often; find out why before it is locked out`);
  if (SHARDS === undefined && shards > 1)
    return wrong(`the platform wants ${shards} shards for so many clubs: set SHARDS=auto`);
  if (typeof SHARDS === 'number' && SHARDS < shards)
    return wrong(`the platform wants ${shards} shards, SHARDS says ${SHARDS}: set SHARDS=auto`);
  return ok(`${left} left today`);
}
