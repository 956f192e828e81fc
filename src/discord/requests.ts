/** The library's requests, with what it leaves out: a connection that broke is tried again, and being held back is told. */
import { DefaultRestOptions, type RESTOptions } from 'discord.js';
import type { Log } from '../log.ts';

type MakeRequest = RESTOptions['makeRequest'];

const HELD_BACK = 429;
/** A connection that the other side closed, just as it was used again. */
const BROKEN = 'UND_ERR_SOCKET';

const isBroken = (error: unknown): error is Error =>
  error instanceof Error && [error, error.cause].some((one) => (one as { code?: unknown })?.code === BROKEN);

/** No address is written down: those of answers hold a key to them. */
export const requesting =
  (log: Log): MakeRequest =>
  async (url, init) => {
    try {
      const response = await DefaultRestOptions.makeRequest(url, init);
      const { status, headers } = response;
      if (status === HELD_BACK)
        log.warn(
          { scope: headers.get('x-ratelimit-scope'), seconds: headers.get('retry-after') },
          'held back by the platform',
        );
      return response;
    } catch (error) {
      // Told in the words that the library tries again for.
      throw isBroken(error) ? Object.assign(error, { code: 'ECONNRESET' }) : error;
    }
  };
