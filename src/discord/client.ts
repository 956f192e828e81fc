/** The library's client, set up as this bot needs it: no member's messages, no caches of people, of a server its number alone. */
import {
  Client,
  Events,
  GatewayDispatchEvents,
  type GatewayGuildCreateDispatchData,
  type GatewayGuildUpdateDispatchData,
  GatewayIntentBits,
  Options,
  REST,
} from 'discord.js';
import type { Log } from '../log.ts';
import { requesting } from './requests.ts';

/** Servers that are down would hold up everyone else's first answers; we need nothing of them. */
const WAIT_FOR_CLUBS_MS = 500;

/** An answer has a handler of its own, which the library would keep for an hour. */
const FORGET_HANDLERS_MS = 60_000;

/**
 * The address as the library wants it: without its version, which the library adds.
 *
 * @example apiAddress('https://discord.com/api/v10/') // 'https://discord.com/api'
 */
export function apiAddress(url: string): string {
  return url.replace(/\/+$/, '').replace(/\/v\d+$/, '');
}

/** Which one of several processes that share the platform's clubs. */
export interface ShardOf {
  /** From 0. */
  id: number;
  count: number;
}

/** A client that is not connected yet. It asks `apiUrl` for the gateway's address. */
export function createClient(apiUrl: string, log: Log, shard?: ShardOf): Client {
  const client: Client = new Client({
    intents: [GatewayIntentBits.Guilds],
    ...(shard === undefined ? {} : { shards: [shard.id], shardCount: shard.count }),
    allowedMentions: { parse: [] },
    rest: {
      api: apiAddress(apiUrl),
      makeRequest: requesting(log),
      handlerSweepInterval: FORGET_HANDLERS_MS,
    },
    waitGuildTimeout: WAIT_FOR_CLUBS_MS,
    makeCache: Options.cacheWithLimits({
      ...Options.DefaultMakeCacheSettings,
      MessageManager: 0,
      GuildMemberManager: { maxSize: 0, keepOverLimit: ({ id }) => id === client.user?.id },
      UserManager: { maxSize: 0, keepOverLimit: ({ id }) => id === client.user?.id },
    }),
  });
  // Told to us before the library reads it.
  client.ws.on(GatewayDispatchEvents.GuildCreate, lighten);
  client.ws.on(GatewayDispatchEvents.GuildUpdate, lighten);
  client.on(Events.Error, (error) => log.error({ err: error }, 'the library failed'));
  client.on(Events.ShardError, (error, shard) => log.warn({ shard, err: error }, 'the connection failed'));
  client.on(Events.ShardReconnecting, (shard) => log.info({ shard }, 'connecting again'));
  client.on(Events.ShardResume, (shard, missed) => log.info({ shard, missed }, 'connected again'));
  client.on(Events.ShardDisconnect, ({ code }, shard) =>
    log.error(
      { shard, code, todo: 'look at DISCORD_TOKEN and at the bot’s page on the platform, then start anew' },
      'the platform closed the connection for good',
    ),
  );
  client.rest.on('rateLimited', ({ route, timeToReset, global }) =>
    log.warn({ route, timeToReset, global }, 'held back by the platform'),
  );
  return client;
}

/** Takes away what the library would keep of a server for good, some 70 kB of one, and what nothing here looks at. */
function lighten(server: GatewayGuildCreateDispatchData | GatewayGuildUpdateDispatchData): void {
  Object.assign(server, { channels: [], threads: [], roles: [], members: [], emojis: [], stickers: [] });
}

/** The platform's REST interface alone, for a script that does not log in. */
export function createRest(token: string, apiUrl: string): REST {
  return new REST({ api: apiAddress(apiUrl) }).setToken(token);
}
