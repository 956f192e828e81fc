/** The bot on the platform: logs in, and connects what members do there to the desk. */
import { hostname } from 'node:os';
import { setTimeout as wait } from 'node:timers/promises';
import { type Client, Events, OAuth2Scopes, PermissionFlagsBits, Status } from 'discord.js';
import type { Store } from '../../shared/club/store.ts';
import type { Draw } from '../../shared/pictures/picture.ts';
import { openTurns } from '../pictures/turns.ts';
import { editCard } from './card.ts';
import type { CommandCard } from './cards.ts';
import { openChanges } from './changes.ts';
import { createClient, type ShardOf } from './client.ts';
import { isInClub, watchClubs } from './clubs.ts';
import { type CoolDownOptions, openCoolDown } from './cool-down.ts';
import { DRAW_WITHIN_MS, type Elsewhere, type Taking, take, turnAway } from './interaction.ts';
import { registerCommands } from './register.ts';
import { tellAlone } from './tell.ts';

export interface ConnectOptions extends Taking {
  token: string;
  apiUrl: string;
  /** Registers the commands for this server only. */
  guild?: string | undefined;
  /** Of a bot in several processes, which this one is: the first registers the commands. */
  shard?: ShardOf | undefined;
  draw: Draw;
  store: Pick<Store, 'clubs' | 'left' | 'returned'>;
  cards: readonly CommandCard[];
  /** How much of one member is taken at once. */
  coolDown?: CoolDownOptions;
  /** Milliseconds that `close` waits for answers on their way. */
  closeWithinMs?: number;
}

export interface Connection extends Elsewhere {
  /** Whether the bot is in a club, by the platform's word now; throws where it gives none. */
  isIn(club: string): Promise<boolean>;
  /** Whether the platform can reach it just now. */
  connected(): boolean;
  /** How many clubs it is in, as far as they were told to this process. */
  clubs(): number;
  /** Takes nothing new, finishes what is on its way, and leaves. */
  close(): Promise<void>;
}

const CLOSE_WITHIN_MS = 10_000;

/** Logs in, registers the commands if they changed, and answers from then on. Throws where it can't log in or register. */
export async function connect(options: ConnectOptions): Promise<Connection> {
  const { token, apiUrl, draw, log } = options;
  const client = createClient(apiUrl, log, options.shard);
  const clubs = watchClubs(client, options);
  const turns = openTurns(draw);
  const changes = openChanges();
  const drawing = { log, withinMs: options.drawWithinMs ?? DRAW_WITHIN_MS };
  const edit: Connection['edit'] = (card, reply) =>
    editCard(client, card, reply, { ...drawing, draw: turns.of(card.channel), changes });
  const coolDown = openCoolDown(options.coolDown);
  const tell: Connection['tell'] = (notice) => tellAlone(client, notice);
  const onTheirWay = new Map<string, Promise<void>>();
  let closing = false;

  client.on(Events.InteractionCreate, (interaction) => {
    // A second delivery at the same time would race the first, and may win with "that is kept already".
    if (onTheirWay.has(interaction.id)) return;
    const work = closing
      ? turnAway(interaction, options)
      : take(interaction, options, { edit, tell, turns, changes, coolDown });
    onTheirWay.set(
      interaction.id,
      work.finally(() => onTheirWay.delete(interaction.id)),
    );
  });

  const close = async (): Promise<void> => {
    closing = true;
    const finished = Promise.all(onTheirWay.values()).then(() => clubs.noted());
    await Promise.race([finished, wait(options.closeWithinMs ?? CLOSE_WITHIN_MS, undefined, { ref: false })]);
    // The library tells of a connection that we close as of one that it takes up again.
    client.removeAllListeners(Events.ShardReconnecting);
    await client.destroy();
  };

  try {
    const ready = new Promise<Client<true>>((resolve) => client.once(Events.ClientReady, resolve));
    await client.login(token);
    await introduce(await ready, options);
  } catch (error) {
    await close();
    throw error;
  }
  return {
    close,
    edit,
    tell,
    isIn: (club) => isInClub(client, club),
    // The library's own status stays as it was once a connection is lost: that of each shard does not.
    connected: () => client.isReady() && client.ws.shards.every(({ status }) => status === Status.Ready),
    clubs: () => client.guilds.cache.size,
  };
}

/** Says who is there, and where a club gets it; makes sure that the commands are known. */
async function introduce(client: Client<true>, { cards, guild, log, shard }: ConnectOptions): Promise<void> {
  const registration =
    shard === undefined || shard.id === 0
      ? await registerCommands(client.rest, client.application.id, cards, { guild })
      : {};
  // An answer needs no permission; to change a card later, its channel must be seen.
  const invite = client.generateInvite({
    scopes: [OAuth2Scopes.Bot, OAuth2Scopes.ApplicationsCommands],
    permissions: PermissionFlagsBits.ViewChannel,
  });
  log.info(
    {
      bot: client.user.id,
      clubs: client.guilds.cache.size,
      ...(shard === undefined ? {} : { shard: shard.id, shards: shard.count }),
      ...registration,
      scope: guild ?? 'everywhere',
      invite,
      host: hostname(),
      process: process.pid,
    },
    `ready as ${client.user.tag}`,
  );
}
