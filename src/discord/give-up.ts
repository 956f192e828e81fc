/** An answer that can't be posted. */
import { randomBytes } from 'node:crypto';
import { DiscordAPIError, RESTJSONErrorCodes } from 'discord.js';
import type { Outcome } from '../health/meter.ts';
import type { Posting } from './post.ts';
import { render } from './render.ts';
import { type Answerable, say } from './say.ts';

/** An answer that is too late, or a second one: another delivery of the same interaction was answered. */
const TOO_LATE: readonly (string | number)[] = [
  RESTJSONErrorCodes.UnknownInteraction,
  RESTJSONErrorCodes.InteractionHasAlreadyBeenAcknowledged,
];

/** Whether an answer came too late, or second. */
export const isTooLate = (error: unknown): error is DiscordAPIError =>
  error instanceof DiscordAPIError && TOO_LATE.includes(error.code);

/** What fails is written down, and told where it can be. Does not throw. */
export async function giveUp(
  interaction: Answerable,
  error: unknown,
  facts: object,
  { log, words }: Pick<Posting, 'log' | 'words'>,
): Promise<Outcome> {
  if (isTooLate(error)) {
    log.warn(
      { ...facts, code: error.code },
      'the platform had an answer already, or no longer waited for one',
    );
    return 'late';
  }
  const reference = randomBytes(4).toString('hex');
  log.error({ ...facts, reference, err: error }, 'could not answer');
  try {
    const body = render({ answer: words.trouble({ reference }), figures: {} });
    await say(interaction, body, { edits: false, privately: true });
  } catch (second) {
    log.error({ ...facts, reference, err: second }, 'could not say so either');
  }
  return 'fault';
}
