/** Showing a later change where a card was posted. */
import { type Client, DiscordAPIError, RESTJSONErrorCodes, Routes } from 'discord.js';
import type { Reply } from '../../shared/chat/reply.ts';
import type { Posted } from '../../shared/club/store.ts';
import type { Changes } from './changes.ts';
import { type Drawing, drawAll } from './drawing.ts';
import { picturesOf, render } from './render.ts';

/** The message is gone, or we may no longer see its channel. */
const GONE: readonly (string | number)[] = [
  RESTJSONErrorCodes.UnknownChannel,
  RESTJSONErrorCodes.UnknownMessage,
  RESTJSONErrorCodes.MissingAccess,
  RESTJSONErrorCodes.MissingPermissions,
];

/**
 * Puts `reply` in the place of a card that was posted, unless a newer change came first while its picture was drawn.
 * False where the card is no longer there.
 */
export async function editCard(
  client: Client,
  { channel, message }: Pick<Posted, 'channel' | 'message'>,
  reply: Reply,
  drawing: Drawing & { changes: Changes },
): Promise<boolean> {
  const change = drawing.changes.begin(message);
  const { flags, components, files } = render(reply, await drawAll(picturesOf(reply), drawing));
  const attachments = files.map(({ name, alt }, id) => ({
    id: String(id),
    filename: name,
    description: alt,
  }));
  try {
    if (!change.isNewest()) return true;
    await client.rest.patch(Routes.channelMessage(channel, message), {
      body: { flags, components, attachments, allowed_mentions: { parse: [] } },
      files: files.map(({ name, bytes }) => ({ name, data: bytes, contentType: 'image/png' })),
    });
    return true;
  } catch (error) {
    if (error instanceof DiscordAPIError && GONE.includes(error.code)) return false;
    throw error;
  }
}
