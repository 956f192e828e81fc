/** What whoever runs the bot can do about an error, for the log. */

const NO_ROOM = 'the disk is full: make room; the bot goes on by itself then';
const NOT_WRITABLE =
  'this file or its folder can’t be written: look at its owner and rights, and at its disk';
const DAMAGED = 'the database is damaged: stop the bot and restore a backup, as README says';
const NETWORK = 'look at the network; the bot tries again by itself';

/** By the start of an error's code; of two that fit, the first. */
const ADVICE: readonly (readonly [string, string])[] = [
  ['SQLITE_FULL', NO_ROOM],
  ['ENOSPC', NO_ROOM],
  ['EDQUOT', NO_ROOM],
  ['SQLITE_READONLY', NOT_WRITABLE],
  ['SQLITE_CANTOPEN', NOT_WRITABLE],
  ['SQLITE_PERM', NOT_WRITABLE],
  ['EACCES', NOT_WRITABLE],
  ['EPERM', NOT_WRITABLE],
  ['EROFS', NOT_WRITABLE],
  ['ENOTDIR', 'a file stands where a folder should be: move it away, or set another folder'],
  ['EEXIST', 'a file stands where a folder should be: move it away, or set another folder'],
  ['SQLITE_CORRUPT', DAMAGED],
  ['SQLITE_NOTADB', DAMAGED],
  ['SQLITE_IOERR', 'the disk failed: look at it, then at the database with npm run doctor'],
  ['SQLITE_BUSY', 'another program holds the database: end it, and let one bot alone use the file'],
  ['ECONN', NETWORK],
  ['ENOTFOUND', NETWORK],
  ['EAI_AGAIN', NETWORK],
  ['ETIMEDOUT', NETWORK],
  ['UND_ERR', NETWORK],
];
const PLATFORM_FAILS = 'the platform fails: nothing is to be done here but to wait';

interface Told {
  code?: unknown;
  status?: unknown;
  cause?: unknown;
}

/**
 * A line for the host; undefined where nothing but a look at the error helps.
 *
 * @example adviceOn(Object.assign(new Error(), { code: 'ENOSPC' })) // 'the disk is full: make room; …'
 */
export function adviceOn(error: unknown): string | undefined {
  if (!(error instanceof Error)) return undefined;
  const { code, status, cause } = error as Told;
  const found = ADVICE.find(([start]) => String(code).startsWith(start))?.[1];
  if (found !== undefined) return found;
  if (typeof status === 'number' && status >= 500) return PLATFORM_FAILS;
  return cause === error ? undefined : adviceOn(cause);
}
