/** The bot on the platform: connects what members do there to the desk. */
import { hostname } from 'node:os';
import { setTimeout as wait } from 'node:timers/promises';
import { type Client, Events, type Interaction, OAuth2Scopes, PermissionFlagsBits, Status } from 'discord.js';
import type { Covers, Notice, Reply } from '../../shared/chat/reply.ts';
import type { Coming, Desk } from '../../shared/chat/request.ts';
import type { Posted, Store } from '../../shared/club/store.ts';
import type { Draw } from '../../shared/pictures/picture.ts';
import { type Meter, UNMETERED } from '../health/meter.ts';
import type { Log } from '../log.ts';
import { openTurns, type Turns } from '../pictures/turns.ts';
import { requestOf, sceneOf } from './ask.ts';
import { editCard } from './card.ts';
import type { CommandCard } from './cards.ts';
import { type Changes, openChanges } from './changes.ts';
import { createClient, type ShardOf } from './client.ts';
import { isInClub, watchClubs } from './clubs.ts';
import { complete } from './complete.ts';
import { type CoolDown, type CoolDownOptions, openCoolDown } from './cool-down.ts';
import { type PlatformWords, type PostedCard, post } from './post.ts';
import { problem } from './problem.ts';
import { registerCommands } from './register.ts';
import { render } from './render.ts';
import { type Answerable, say } from './say.ts';
import { tellAlone } from './tell.ts';

export interface ConnectOptions {
  token: string;
  apiUrl: string;
  /** Registers the commands for this server only. */
  guild?: string | undefined;
  /** Of a bot in several processes, which this one is: the first registers the commands. */
  shard?: ShardOf | undefined;
  desk: Pick<Desk, 'answer' | 'complete'>;
  draw: Draw;
  store: Pick<Store, 'clubs' | 'left' | 'returned'>;
  log: Log;
  meter?: Meter;
  cards: readonly CommandCard[];
  /** UTC milliseconds. */
  now: () => number;
  /** What this side says itself, for a reader's locale. */
  words: (locale: string) => PlatformWords;
  /** Told of each card of a piece that everyone can see. */
  posted?: (card: PostedCard) => Promise<void> | void;
  /** Where the cards of a piece were posted. */
  postedAt?: (club: string, piece: string) => Promise<readonly Posted[]>;
  /** Milliseconds without an answer until the platform is told to wait. */
  deferAfterMs?: number;
  /** Milliseconds until a text stays without its picture. */
  drawWithinMs?: number;
  /** How much of one member is taken at once. */
  coolDown?: CoolDownOptions;
  /** Milliseconds that `close` waits for answers on their way. */
  closeWithinMs?: number;
}

export interface Connection {
  /** Shows a later change where a card was posted; false where it is no longer there. */
  edit(card: Pick<Posted, 'channel' | 'message'>, reply: Reply): Promise<boolean>;
  /** Writes to one member alone; false where they take no such messages. */
  tell(notice: Notice): Promise<boolean>;
  /** Whether the bot is in a club, by the platform's word now; throws where it gives none. */
  isIn(club: string): Promise<boolean>;
  /** Whether the platform can reach it just now. */
  connected(): boolean;
  /** How many clubs it is in, as far as they were told to this process. */
  clubs(): number;
  /** Takes nothing new, finishes what is on its way, and leaves. */
  close(): Promise<void>;
}

const DEFER_AFTER_MS = 1000;
/** A text does not wait for that long: its picture follows. */
const DRAW_WITHIN_MS = 30_000;
/** So many pictures take about half a second: a text that comes after them goes at once. */
const MOST_BEFORE = 10;
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

/** What one answer has to do with others. */
interface Shared extends Pick<Connection, 'edit' | 'tell'> {
  turns: Turns;
  changes: Changes;
  coolDown: CoolDown;
}

/** Takes one interaction to its end. Does not throw. */
async function take(
  interaction: Interaction,
  options: ConnectOptions,
  { edit, tell, turns, changes, coolDown }: Shared,
): Promise<void> {
  const { desk, log } = options;
  const now = options.now();
  if (interaction.isAutocomplete()) return complete(interaction, { desk, log, now });
  if (!isAnswerable(interaction)) {
    log.warn({ interaction: interaction.id, type: interaction.type }, 'an interaction that is not ours');
    return;
  }

  const scene = sceneOf(interaction, now);
  const words = options.words(interaction.locale);
  const place = interaction.guildId ?? interaction.user.id;
  const posting = {
    draw: turns.of(place),
    drawnSoon: () => turns.before(place) < MOST_BEFORE,
    changes,
    log,
    meter: options.meter ?? UNMETERED,
    words,
    withinMs: options.drawWithinMs ?? DRAW_WITHIN_MS,
    deferAfterMs: options.deferAfterMs ?? DEFER_AFTER_MS,
    posted: options.posted ?? (() => {}),
    repost: async (club: string, { piece, reply }: { piece: string; reply: Reply }) => {
      for (const card of (await options.postedAt?.(club, piece)) ?? []) await edit(card, reply);
    },
    cover: async ({ cards, reply }: Covers) => {
      for (const card of cards) {
        // One that can't be reached must not keep the others.
        await edit(card, reply).catch((error: unknown) =>
          log.warn({ channel: card.channel, ...problem(error) }, 'could not cover a card'),
        );
      }
    },
    tell,
  };
  const begin = (): Coming => {
    if (scene === null) return elsewhere(words);
    // What was typed into a form is not to be typed again.
    const taken = coolDown.takes({ ...scene, id: interaction.id }) || interaction.isModalSubmit();
    return taken ? desk.answer(requestOf(interaction, scene)) : later(words);
  };
  await post(interaction, begin, posting);
}

/** What comes while the bot is leaving: said kindly, and nothing is begun. Does not throw. */
async function turnAway(interaction: Interaction, { log, words }: ConnectOptions): Promise<void> {
  if (!isAnswerable(interaction)) return;
  try {
    const body = render({ answer: words(interaction.locale).restarting(), figures: {} });
    await say(interaction, body, { edits: false, privately: true });
    log.info({ interaction: interaction.id }, 'turned away');
  } catch (error) {
    log.warn({ interaction: interaction.id, ...problem(error) }, 'could not turn away');
  }
}

function isAnswerable(interaction: Interaction): interaction is Answerable & Interaction {
  return (
    interaction.isChatInputCommand() ||
    interaction.isButton() ||
    interaction.isStringSelectMenu() ||
    interaction.isModalSubmit()
  );
}

/** The answer outside of a club. */
const elsewhere = (words: PlatformWords): Coming =>
  privately({ answer: words.outsideClub(), small: [words.outsideClubHint()], figures: {} });

/** The answer to who does very much at once. */
const later = (words: PlatformWords): Coming =>
  privately({ answer: words.oneMoment(), figures: {} }, 'one-moment');

function privately(reply: Reply, refused?: string): Coming {
  const answer = {
    kind: 'reply' as const,
    audience: 'member' as const,
    edits: false,
    reply,
    ...(refused === undefined ? {} : { failed: { code: refused, asks: false } }),
  };
  return { audience: 'member', edits: false, answer: Promise.resolve(answer) };
}
