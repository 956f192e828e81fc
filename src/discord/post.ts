/** When an answer is posted: at once if it is there in time, else after "wait", and never later than the platform waits. */
import { type Message, MessageFlags } from 'discord.js';
import type { Covers, Form, Notice, Reply } from '../../shared/chat/reply.ts';
import type { Answer, Coming } from '../../shared/chat/request.ts';
import type { platform } from '../../shared/words/en/platform.ts';
import { type Meter, type Outcome, outcomeOf } from '../health/meter.ts';
import type { Log } from '../log.ts';
import { nameOf } from './ask.ts';
import type { Changes } from './changes.ts';
import { type Drawing, drawAll } from './drawing.ts';
import { renderForm } from './form.ts';
import { giveUp } from './give-up.ts';
import { addPictures } from './late-pictures.ts';
import { type Drawn, picturesOf, render } from './render.ts';
import { type Answerable, defer, isOnMessage, say } from './say.ts';

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
  meter: Pick<Meter, 'told'>;
  words: PlatformWords;
  /** Without an answer for this many milliseconds the platform is told to wait; it gives up after three seconds. */
  deferAfterMs: number;
  /** Whether so few pictures are before this one that a text can wait for it. */
  drawnSoon(): boolean;
  changes: Changes;
  /** Told of each card of a piece once it is posted. */
  posted(card: PostedCard): Promise<void> | void;
  /** Shows a piece's card where it was posted before. */
  repost(club: string, card: { piece: string; reply: Reply }): Promise<void>;
  /** Shows something else in the place of cards whose pieces are gone. Does not throw. */
  cover(covers: Covers): Promise<void>;
  /** Writes to one member alone; false where they take no such messages. */
  tell(notice: Notice): Promise<boolean>;
}

type Ready =
  | { kind: 'form'; form: Form }
  | { kind: 'message'; answer: Extract<Answer, { kind: 'reply' }>; drawn: Promise<Drawn>; soon: boolean };

const NONE: Drawn = new Map();

/** Posts the answer of `begin`, which starts the work. Does not throw: what fails is written down, and told where it can be. */
export async function post(interaction: Answerable, begin: () => Coming, posting: Posting): Promise<void> {
  const startedAt = performance.now();
  const facts = {
    what: nameOf(interaction),
    interaction: interaction.id,
    club: interaction.guildId,
    member: interaction.user.id,
  };
  const elapsed = () => performance.now() - startedAt;
  let acknowledgedMs: number | null = null;
  const acknowledged = () => {
    acknowledgedMs ??= elapsed();
  };
  let outcome: Outcome;
  try {
    outcome = await answer(interaction, begin(), posting, acknowledged);
    posting.log.info({ ...facts, ms: Math.round(elapsed()), deferred: interaction.deferred }, 'answered');
  } catch (error) {
    outcome = await giveUp(interaction, error, facts, posting);
  }
  const [command = ''] = facts.what.split(':');
  posting.meter.told({ command, outcome, acknowledgedMs, ms: elapsed() });
}

async function answer(
  interaction: Answerable,
  coming: Coming,
  posting: Posting,
  acknowledged: () => void,
): Promise<Outcome> {
  const { deferAfterMs } = posting;
  const until = performance.now() + deferAfterMs;
  const work = prepare(coming, posting);
  const inTime = await settlesWithin(work, deferAfterMs);
  const way = { edits: coming.edits, privately: coming.audience === 'member' };
  const [done, told] = await Promise.allSettled([
    work,
    inTime ? undefined : defer(interaction, way).then(acknowledged),
  ]);
  if (done.status === 'rejected') throw done.reason;
  if (told.status === 'rejected') throw told.reason;
  const ready = done.value;
  if (ready.kind === 'form') {
    await openForm(interaction, ready.form, posting);
    acknowledged();
    return outcomeOf(ready);
  }
  // A text waits for its picture as long as an answer may take, and once more where that was over before.
  const patienceMs = inTime ? until - performance.now() : deferAfterMs;
  const together = ready.soon && (await settlesWithin(ready.drawn, Math.max(patienceMs, 0)));
  await sayAll(interaction, ready, together ? await ready.drawn : NONE, coming, posting, acknowledged);
  return outcomeOf(ready.answer);
}

/** Words; the pictures are begun. */
async function prepare(coming: Coming, posting: Posting): Promise<Ready> {
  const answer = await coming.answer;
  if (answer.kind === 'form') return answer;
  const { reply } = answer;
  const pictures = [reply, reply.privately].flatMap((part) => (part ? picturesOf(part) : []));
  const soon = pictures.length === 0 || posting.drawnSoon();
  return { kind: 'message', answer, drawn: drawAll(pictures, posting), soon };
}

function settlesWithin(work: Promise<unknown>, ms: number): Promise<boolean> {
  return new Promise((resolve) => {
    const late = setTimeout(resolve, ms, false);
    const settled = () => {
      clearTimeout(late);
      resolve(true);
    };
    work.then(settled, settled);
  });
}

async function sayAll(
  interaction: Answerable,
  { answer, drawn }: Extract<Ready, { kind: 'message' }>,
  pictures: Drawn,
  coming: Coming,
  posting: Posting,
  acknowledged: () => void,
): Promise<void> {
  const { reply } = answer;
  if (answer.edits && isOnMessage(interaction)) posting.changes.begin(interaction.message.id);
  const since = posting.changes.moment();
  // What was to be private stays so; what was to be public may turn out private.
  const privately = coming.audience === 'member' || answer.audience === 'member';
  const message = await say(interaction, render(reply, pictures), { edits: answer.edits, privately });
  acknowledged();
  const club = interaction.guildId;
  if (reply.piece !== undefined && club && message && isPublic(message)) {
    await posting.posted({ club, piece: reply.piece, channel: message.channelId, message: message.id });
  }
  const said = [{ reply, message }];
  if (reply.privately) {
    const body = render(reply.privately, pictures);
    const apart = await say(interaction, body, { edits: false, privately: true });
    said.push({ reply: reply.privately, message: apart });
  }
  const late = pictures === NONE ? addPictures(interaction, said, drawn, { ...posting, since }) : undefined;
  if (answer.reposts && club) await posting.repost(club, answer.reposts);
  if (reply.tell) await notify(reply.tell, posting);
  await late;
  // Last: of many cards it takes minutes.
  if (reply.covers) await posting.cover(reply.covers);
}

/** What was asked for is done and said: that somebody else can't be told is no fault of the answer. */
async function notify(notice: Notice, { tell, log }: Posting): Promise<void> {
  const { member } = notice;
  try {
    log.info({ member, reached: await tell(notice) }, 'told');
  } catch (error) {
    log.warn({ member, err: error }, 'could not tell');
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
