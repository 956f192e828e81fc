/** Fetching a file that a member attached: from the platform alone, for a while, and no more of it than is read. */
import { MemberError } from '../../shared/errors.ts';
import { CHAT_LIMITS, refuseLarge } from '../exchange/limits.ts';
import type { Attachment } from '../exchange/open.ts';

/** Where the platform keeps what members attach. */
const HOSTS: readonly string[] = ['cdn.discordapp.com', 'media.discordapp.net'];
/** What the platform answers where a file is gone, or its address is too old. */
const GONE: readonly number[] = [403, 404, 410];
const WITHIN_MS = 20_000;

export interface FetchOptions {
  /** Where the platform answers: files are taken from there too. */
  apiUrl: string;
  /** Milliseconds until the last byte must be there. */
  withinMs?: number | undefined;
}

/** Fetches by address. What it gives throws a MemberError where the file can't be had, or is said to be too large. */
export const attachments = ({ apiUrl, withinMs = WITHIN_MS }: FetchOptions): Attachment =>
  async function* attachment(url) {
    if (!isPlatforms(url, apiUrl)) throw new MemberError('file-gone', {});
    const controller = new AbortController();
    const late = setTimeout(() => controller.abort(), withinMs);
    try {
      const response = await fetch(url, { redirect: 'error', signal: controller.signal });
      yield* bodyOf(response);
    } catch (problem) {
      if (problem instanceof MemberError) throw problem;
      throw new MemberError('file-unreachable', {});
    } finally {
      clearTimeout(late);
      // Whoever reads may have seen enough: the rest is not fetched.
      controller.abort();
    }
  };

function isPlatforms(url: string, apiUrl: string): boolean {
  if (!URL.canParse(url)) return false;
  const { protocol, hostname, port, origin } = new URL(url);
  return (
    (protocol === 'https:' && port === '' && HOSTS.includes(hostname)) || origin === new URL(apiUrl).origin
  );
}

async function* bodyOf(response: Response): AsyncGenerator<Uint8Array> {
  const { ok, status, headers, body } = response;
  if (GONE.includes(status)) throw new MemberError('file-gone', {});
  if (!ok || body === null) throw new MemberError('file-unreachable', {});
  refuseLarge(Number(headers.get('content-length') ?? 0), CHAT_LIMITS);
  yield* body;
}
