/** When an answer is posted: at once if it is there in time, else after "wait", and never later than the platform waits. */
import { randomBytes } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import { DiscordAPIError, type Message, MessageFlags, RESTJSONErrorCodes } from 'discord.js';
import type { Form, Notice, Reply } from '../../shared/chat/reply.ts';
import type { Answer, Coming } from '../../shared/chat/request.ts';
import type { platform } from '../../shared/words/en/platform.ts';
import type { Log } from '../log.ts';
import { nameOf } from './ask.ts';
import { type Drawing, drawAll } from './drawing.ts';
import { renderForm } from './form.ts';
import type { MessageBody } from './message.ts';
import { problem } from './problem.ts';
import { picturesOf, render } from './render.ts';
import { type Answerable, defer, say } from './say.ts';

/** The few sentences that this side says itself, in one language. */
export type PlatformWords = ReturnType<typeof platform>;

/** A piece's card that everyone can see, and where. */
export interface PostedCard {
  club: string;
  piece: string;
  channel: string;
  message: string;
}

export interface Posting extends Drawing {
  log: Log;
  words: PlatformWords;
  /** Without an answer for this many milliseconds the platform is told to wait; it gives up after three seconds. */
  deferAfterMs: number;
  /** Told of each card of a piece once it is posted. */
  posted(card: PostedCard): Promise<void> | void;
  /** Shows a piece's card where it was posted before. */
  repost(club: string, card: { piece: string; reply: Reply }): Promise<void>;
  /** Writes to one member alone; false where they take no such messages. */
  tell(notice: Notice): Promise<boolean>;
}

type Ready =
  | { kind: 'form'; form: Form }
  | {
      kind: 'message';
      answer: Extract<Answer, { kind: 'reply' }>;
      body: MessageBody;
      privately: MessageBody | null;
    };

/** Posts the answer of `begin`, which starts the work. Does not throw: what fails is written down, and told where it can be. */
export async function post(interaction: Answerable, begin: () => Coming, posting: Posting): Promise<void> {
  const startedAt = performance.now();
  const facts = {
    what: nameOf(interaction),
    interaction: interaction.id,
    club: interaction.guildId,
    member: interaction.user.id,
  };
  try {
    await answer(interaction, begin(), posting);
    const ms = Math.round(performance.now() - startedAt);
    posting.log.info({ ...facts, ms, deferred: interaction.deferred }, 'answered');
  } catch (error) {
    await giveUp(interaction, error, facts, posting);
  }
}

async function answer(interaction: Answerable, coming: Coming, posting: Posting): Promise<void> {
  const work = prepare(coming, posting);
  const inTime = await settlesWithin(work, posting.deferAfterMs);
  const way = { edits: coming.edits, privately: coming.audience === 'member' };
  const [done, told] = await Promise.allSettled([work, inTime ? undefined : defer(interaction, way)]);
  if (done.status === 'rejected') throw done.reason;
  if (told.status === 'rejected') throw told.reason;
  if (done.value.kind === 'form') await openForm(interaction, done.value.form, posting);
  else await sayAll(interaction, done.value, coming, posting);
}

/** Words and pictures, ready to be sent. */
async function prepare(coming: Coming, drawing: Drawing): Promise<Ready> {
  const answer = await coming.answer;
  if (answer.kind === 'form') return answer;
  const { reply } = answer;
  const apart = reply.privately;
  const drawn = await drawAll(
    [reply, apart].flatMap((part) => (part ? picturesOf(part) : [])),
    drawing,
  );
  return {
    kind: 'message',
    answer,
    body: render(reply, drawn),
    privately: apart ? render(apart, drawn) : null,
  };
}

async function settlesWithin(work: Promise<unknown>, ms: number): Promise<boolean> {
  const done = new AbortController();
  const settled = work.then(
    () => true,
    () => true,
  );
  const late = wait(ms, false, { signal: done.signal }).catch(() => false);
  const inTime = await Promise.race([settled, late]);
  done.abort();
  return inTime;
}

async function sayAll(
  interaction: Answerable,
  { answer, body, privately }: Extract<Ready, { kind: 'message' }>,
  coming: Coming,
  posting: Posting,
): Promise<void> {
  // What was to be private stays so; what was to be public may turn out private.
  const alone = coming.audience === 'member' || answer.audience === 'member';
  const message = await say(interaction, body, { edits: answer.edits, privately: alone });
  const { piece } = answer.reply;
  const club = interaction.guildId;
  if (piece !== undefined && club && message && isPublic(message)) {
    await posting.posted({ club, piece, channel: message.channelId, message: message.id });
  }
  if (privately) await say(interaction, privately, { edits: false, privately: true });
  if (answer.reposts && club) await posting.repost(club, answer.reposts);
  if (answer.reply.tell) await notify(answer.reply.tell, posting);
}

/** What was asked for is done and said: that somebody else can't be told is no fault of the answer. */
async function notify(notice: Notice, { tell, log }: Posting): Promise<void> {
  const { member } = notice;
  try {
    log.info({ member, reached: await tell(notice) }, 'told');
  } catch (error) {
    log.warn({ member, ...problem(error) }, 'could not tell');
  }
}

const isPublic = (message: Message): boolean => !message.flags.has(MessageFlags.Ephemeral);

/** The platform opens a form only as the first answer, and never on a form. */
async function openForm(interaction: Answerable, form: Form, { words, log }: Posting): Promise<void> {
  if (interaction.isModalSubmit()) throw new Error('a form was answered with a form');
  if (!interaction.deferred) {
    await interaction.showModal(renderForm(form));
    return;
  }
  log.warn({ interaction: interaction.id }, 'a form came too late to be opened');
  const late = render({ answer: words.formTooLate(), figures: {} });
  await say(interaction, late, { edits: false, privately: true });
}

/** An answer that is too late, or a second one: another delivery of the same interaction was answered. */
const TOO_LATE: readonly (string | number)[] = [
  RESTJSONErrorCodes.UnknownInteraction,
  RESTJSONErrorCodes.InteractionHasAlreadyBeenAcknowledged,
];

/** Whether an answer came too late, or second. */
export const isTooLate = (error: unknown): error is DiscordAPIError =>
  error instanceof DiscordAPIError && TOO_LATE.includes(error.code);

async function giveUp(
  interaction: Answerable,
  error: unknown,
  facts: object,
  posting: Posting,
): Promise<void> {
  const { log, words } = posting;
  if (isTooLate(error)) {
    log.warn(
      { ...facts, code: error.code },
      'the platform had an answer already, or no longer waited for one',
    );
    return;
  }
  const reference = randomBytes(4).toString('hex');
  log.error({ ...facts, reference, ...problem(error) }, 'could not answer');
  try {
    const body = render({ answer: words.trouble({ reference }), figures: {} });
    await say(interaction, body, { edits: false, privately: true });
  } catch (second) {
    log.error({ ...facts, reference, ...problem(second) }, 'could not say so either');
  }
}
