/** The bot on the platform: connects what members do there to the desk. */
import { hostname } from 'node:os';
import { setTimeout as wait } from 'node:timers/promises';
import { type Client, Events, type Interaction, OAuth2Scopes, PermissionFlagsBits } from 'discord.js';
import type { Notice, Reply } from '../../shared/chat/reply.ts';
import type { Desk } from '../../shared/chat/request.ts';
import type { Posted, Store } from '../../shared/club/store.ts';
import type { Draw } from '../../shared/pictures/picture.ts';
import type { Log } from '../log.ts';
import { requestOf, sceneOf } from './ask.ts';
import { editCard } from './card.ts';
import type { CommandCard } from './cards.ts';
import { createClient } from './client.ts';
import { watchClubs } from './clubs.ts';
import { complete } from './complete.ts';
import { type PlatformWords, type PostedCard, post } from './post.ts';
import { registerCommands } from './register.ts';
import type { Answerable } from './say.ts';
import { tellAlone } from './tell.ts';

export interface ConnectOptions {
  token: string;
  apiUrl: string;
  /** Registers the commands for this server only. */
  guild?: string | undefined;
  desk: Pick<Desk, 'answer' | 'complete'>;
  draw: Draw;
  store: Pick<Store, 'clubs' | 'left' | 'returned'>;
  log: Log;
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
  /** Milliseconds until a text goes without its picture. */
  drawWithinMs?: number;
  /** Milliseconds that `close` waits for answers on their way. */
  closeWithinMs?: number;
}

export interface Connection {
  /** Shows a later change where a card was posted; false where it is no longer there. */
  edit(card: Pick<Posted, 'channel' | 'message'>, reply: Reply): Promise<boolean>;
  /** Writes to one member alone; false where they take no such messages. */
  tell(notice: Notice): Promise<boolean>;
  /** Takes nothing new, finishes what is on its way, and leaves. */
  close(): Promise<void>;
}

const DEFER_AFTER_MS = 1000;
const DRAW_WITHIN_MS = 8000;
const CLOSE_WITHIN_MS = 10_000;

/** Logs in, registers the commands if they changed, and answers from then on. Throws where it can't log in or register. */
export async function connect(options: ConnectOptions): Promise<Connection> {
  const { token, apiUrl, draw, log } = options;
  const client = createClient(apiUrl, log);
  const clubs = watchClubs(client, options);
  const drawing = { draw, log, withinMs: options.drawWithinMs ?? DRAW_WITHIN_MS };
  const edit: Connection['edit'] = (card, reply) => editCard(client, card, reply, drawing);
  const tell: Connection['tell'] = (notice) => tellAlone(client, notice);
  const onTheirWay = new Map<string, Promise<void>>();
  let closing = false;

  client.on(Events.InteractionCreate, (interaction) => {
    // A second delivery at the same time would race the first, and may win with "that is kept already".
    if (closing || onTheirWay.has(interaction.id)) return;
    const work = take(interaction, options, { edit, tell }).finally(() => onTheirWay.delete(interaction.id));
    onTheirWay.set(interaction.id, work);
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
  return { close, edit, tell };
}

/** Says who is there, and where a club gets it; makes sure that the commands are known. */
async function introduce(client: Client<true>, { cards, guild, log }: ConnectOptions): Promise<void> {
  const registration = await registerCommands(client.rest, client.application.id, cards, { guild });
  // An answer needs no permission; to change a card later, its channel must be seen.
  const invite = client.generateInvite({
    scopes: [OAuth2Scopes.Bot, OAuth2Scopes.ApplicationsCommands],
    permissions: PermissionFlagsBits.ViewChannel,
  });
  log.info(
    {
      bot: client.user.id,
      clubs: client.guilds.cache.size,
      ...registration,
      scope: guild ?? 'everywhere',
      invite,
      host: hostname(),
      process: process.pid,
    },
    `ready as ${client.user.tag}`,
  );
}

/** Takes one interaction to its end. Does not throw. */
async function take(
  interaction: Interaction,
  options: ConnectOptions,
  { edit, tell }: Pick<Connection, 'edit' | 'tell'>,
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
  const posting = {
    draw: options.draw,
    log,
    words,
    withinMs: options.drawWithinMs ?? DRAW_WITHIN_MS,
    deferAfterMs: options.deferAfterMs ?? DEFER_AFTER_MS,
    posted: options.posted ?? (() => {}),
    repost: async (club: string, { piece, reply }: { piece: string; reply: Reply }) => {
      for (const card of (await options.postedAt?.(club, piece)) ?? []) await edit(card, reply);
    },
    tell,
  };
  await post(
    interaction,
    () => (scene ? desk.answer(requestOf(interaction, scene)) : elsewhere(words)),
    posting,
  );
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
function elsewhere(words: PlatformWords): ReturnType<Desk['answer']> {
  const reply: Reply = { answer: words.outsideClub(), small: [words.outsideClubHint()], figures: {} };
  const answer = { kind: 'reply' as const, audience: 'member' as const, edits: false, reply };
  return { audience: 'member', edits: false, answer: Promise.resolve(answer) };
}
