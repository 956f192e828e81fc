/** One interaction, from its coming to its end. */
import type { Interaction } from 'discord.js';
import type { Covers, Notice, Reply } from '../../shared/chat/reply.ts';
import type { Coming, Desk } from '../../shared/chat/request.ts';
import type { Posted } from '../../shared/club/store.ts';
import { type Meter, UNMETERED } from '../health/meter.ts';
import type { Log } from '../log.ts';
import type { Turns } from '../pictures/turns.ts';
import { requestOf, sceneOf } from './ask.ts';
import type { Changes } from './changes.ts';
import { complete } from './complete.ts';
import type { CoolDown } from './cool-down.ts';
import { type PlatformWords, type PostedCard, post } from './post.ts';
import { render } from './render.ts';
import { type Answerable, say } from './say.ts';

/** With what an interaction is taken. */
export interface Taking {
  desk: Pick<Desk, 'answer' | 'complete'>;
  log: Log;
  meter?: Meter;
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
}

const DEFER_AFTER_MS = 1000;
/** A text does not wait for that long: its picture follows. */
export const DRAW_WITHIN_MS = 30_000;
/** So many pictures take about half a second: a text that comes after them goes at once. */
const MOST_BEFORE = 10;

/** What is written elsewhere than in the answer. */
export interface Elsewhere {
  /** Shows a later change where a card was posted; false where it is no longer there. */
  edit(card: Pick<Posted, 'channel' | 'message'>, reply: Reply): Promise<boolean>;
  /** Writes to one member alone; false where they take no such messages. */
  tell(notice: Notice): Promise<boolean>;
}

/** What one answer has to do with others. */
interface Shared extends Elsewhere {
  turns: Turns;
  changes: Changes;
  coolDown: CoolDown;
}

/** Takes one interaction to its end. Does not throw. */
export async function take(
  interaction: Interaction,
  options: Taking,
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
          log.warn({ channel: card.channel, err: error }, 'could not cover a card'),
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
export async function turnAway(
  interaction: Interaction,
  { log, words }: Pick<Taking, 'log' | 'words'>,
): Promise<void> {
  if (!isAnswerable(interaction)) return;
  try {
    const body = render({ answer: words(interaction.locale).restarting(), figures: {} });
    await say(interaction, body, { edits: false, privately: true });
    log.info({ interaction: interaction.id }, 'turned away');
  } catch (error) {
    log.warn({ interaction: interaction.id, err: error }, 'could not turn away');
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
