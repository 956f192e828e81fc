/** Writing to one member alone, outside of any answer. */
import { type Client, DiscordAPIError, RESTJSONErrorCodes } from 'discord.js';
import type { Notice } from '../../shared/chat/reply.ts';
import { render } from './render.ts';

/** Sends it as a direct message. False where the member takes none from us, or is gone. */
export async function tellAlone(client: Client, { member, reply }: Notice): Promise<boolean> {
  try {
    const { flags, components } = render(reply);
    await client.users.send(member, { flags, components, allowedMentions: { parse: [] } });
    return true;
  } catch (error) {
    if (error instanceof DiscordAPIError && UNREACHABLE.includes(error.code)) return false;
    throw error;
  }
}

const UNREACHABLE: readonly (string | number)[] = [
  RESTJSONErrorCodes.CannotSendMessagesToThisUser,
  RESTJSONErrorCodes.UnknownUser,
];
