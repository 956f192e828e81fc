/** What the platform says of the bot, asked without logging in. */
import {
  OAuth2Routes,
  OAuth2Scopes,
  PermissionFlagsBits,
  type REST,
  RESTEvents,
  type RESTGetAPICurrentUserGuildsResult,
  type RESTGetAPICurrentUserResult,
  type RESTGetAPIGatewayBotResult,
  Routes,
} from 'discord.js';

export interface Identity {
  id: string;
  name: string;
  /** How far this machine's clock is ahead of the platform's; null where the platform did not tell the time. */
  clockAheadMs: number | null;
}

/** A `Date` header is cut to the second: on average half of one is missing. */
const CUT_MS = 500;
const CLUBS_A_PAGE = 200;

/** Asks who we are. The same answer tells what time it is there. */
export async function identify(rest: REST): Promise<Identity> {
  let date: string | null = null;
  const take = (_request: unknown, { headers }: { headers: { get(name: string): string | null } }) => {
    date = headers.get('date');
  };
  rest.on(RESTEvents.Response, take);
  const startedAt = Date.now();
  const { id, username } = (await rest.get(Routes.user())) as RESTGetAPICurrentUserResult;
  const there = Date.parse(date ?? '');
  const here = (startedAt + Date.now()) / 2;
  rest.off(RESTEvents.Response, take);
  return { id, name: username, clockAheadMs: Number.isNaN(there) ? null : here - there - CUT_MS };
}

/** Where it is, and the clubs whose channels it can't see: there it can't mend a card that it posted. */
export async function clubsOf(rest: REST): Promise<{ clubs: string[]; blind: string[] }> {
  const all: RESTGetAPICurrentUserGuildsResult = [];
  for (let after = '0'; ; ) {
    const query = new URLSearchParams({ limit: String(CLUBS_A_PAGE), after });
    const page = (await rest.get(Routes.userGuilds(), { query })) as RESTGetAPICurrentUserGuildsResult;
    all.push(...page);
    const last = page.at(-1);
    if (last === undefined || page.length < CLUBS_A_PAGE) break;
    after = last.id;
  }
  return {
    clubs: all.map(({ id }) => id),
    blind: all.filter(({ permissions }) => !seesChannels(BigInt(permissions))).map(({ id }) => id),
  };
}

const seesChannels = (permissions: bigint): boolean =>
  (permissions & (PermissionFlagsBits.ViewChannel | PermissionFlagsBits.Administrator)) !== 0n;

export interface LogIns {
  /** How many processes the platform would have. */
  shards: number;
  /** How often the bot may still log in today. */
  left: number;
}

export async function logInsOf(rest: REST): Promise<LogIns> {
  const { shards, session_start_limit } = (await rest.get(Routes.gatewayBot())) as RESTGetAPIGatewayBotResult;
  return { shards, left: session_start_limit.remaining };
}

/** The link by which a club takes the bot in. */
export function inviteOf(application: string): string {
  const query = new URLSearchParams({
    client_id: application,
    permissions: String(PermissionFlagsBits.ViewChannel),
    scope: `${OAuth2Scopes.Bot} ${OAuth2Scopes.ApplicationsCommands}`,
  });
  return `${OAuth2Routes.authorizationURL}?${query}`;
}
