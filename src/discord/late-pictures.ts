/** Pictures that come after their text: added in one edit, unless something else stands there by then. */
import type { Message } from 'discord.js';
import type { Reply } from '../../shared/chat/reply.ts';
import type { Picture } from '../../shared/pictures/picture.ts';
import type { Log } from '../log.ts';
import type { Changes } from './changes.ts';
import { type Drawn, picturesOf, render } from './render.ts';
import { type Answerable, sayAnew } from './say.ts';

/** A message whose text went out alone. */
export interface Alone {
  reply: Reply;
  /** Where it stands; null where the platform did not say. */
  message: Message | null;
}

/**
 * Waits for `drawn`, then shows each message again, with its pictures. Does not throw: the text is said.
 * @param since when the texts were begun to be sent: whatever was begun to be changed after that is newer
 */
export async function addPictures(
  interaction: Answerable,
  alone: readonly Alone[],
  drawn: Promise<Drawn>,
  { changes, since, log }: { changes: Changes; since: number; log: Log },
): Promise<void> {
  const waiting = alone
    .filter(({ reply }) => picturesOf(reply).length > 0)
    .flatMap(({ reply, message }) =>
      message === null ? [] : [{ reply, message, change: changes.begin(message.id, since) }],
    );
  const pictures = await drawn;
  for (const { reply, message, change } of waiting) {
    try {
      if (change.isNewest() && picturesOf(reply).some((picture: Picture) => pictures.has(picture)))
        await sayAnew(interaction, message, render(reply, pictures));
    } catch (error) {
      // The message may be gone by now, or the platform out of order.
      log.warn({ interaction: interaction.id, err: error }, 'a picture could not be added to its text');
    }
  }
}
