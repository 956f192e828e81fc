/** Writing to one member alone, outside of any answer. */
import { type Client, DiscordAPIError, RESTJSONErrorCodes } from 'discord.js';
import type { Due } from '../../shared/chat/request.ts';
import { render } from './render.ts';

/** Sends a reminder as a direct message. False where the member takes none from us, or is gone. */
export async function tellAlone(client: Client, { member, reply }: Due): Promise<boolean> {
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
