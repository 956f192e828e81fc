/** Import and export for who is served in a chat: little at a time, and in turns. */
import type { Exchange } from '../../shared/chat/exchange.ts';
import type { Club } from '../../shared/club/club.ts';
import type { ClubStore } from '../../shared/club/store.ts';
import { MemberError } from '../../shared/errors.ts';
import { knownOwnCuts } from '../own-cuts.ts';
import { CHAT_LIMITS, refuseLarge } from './limits.ts';
import { turns } from './turns.ts';

/** The bytes of a file that was sent, by its address. @throws MemberError on the way where it can't be had. */
export type Attachment = (url: string) => AsyncIterable<Uint8Array>;

export interface ExchangeParts {
  attachment: Attachment;
  /** Whether the platform can have such a member. */
  isMember: (id: string) => boolean;
}

/** Who asks, and where. */
export interface Asker {
  store: ClubStore;
  club: Club;
  member: string;
  /** UTC milliseconds. */
  now: number;
}

export type OpenExchange = (asker: Asker) => Exchange;

/** Loaded with the first file: a club sends one in its life. */
const reader = () => import('./look.ts');
const writer = () => import('./write-file.ts');

/** Each may hold a file of the most rows in memory. */
const AT_ONCE = 2;

export function openExchange({ attachment, isMember }: ExchangeParts): OpenExchange {
  const [reading, writing] = [turns(AT_ONCE), turns(AT_ONCE)];
  /** Clubs whose file is on its way: one that sends many would keep the others from theirs. */
  const busy = new Set<string>();
  const readAlone = async <T>(club: string, work: () => Promise<T>): Promise<T> => {
    if (busy.has(club)) throw new MemberError('import-busy', {});
    busy.add(club);
    try {
      return await reading(work);
    } finally {
      busy.delete(club);
    }
  };

  return ({ store, club, member, now }) => {
    const settings = async (at: number) => {
      const ownCuts = await knownOwnCuts(store);
      return { club, now: at, member, isMember, ownCuts, limits: CHAT_LIMITS };
    };
    return {
      look: async ({ url, size }) => {
        refuseLarge(size, CHAT_LIMITS);
        return readAlone(store.id, async () => {
          const { lookAt } = await reader();
          return lookAt(store, attachment(url), await settings(now));
        });
      },
      keep: ({ url, hash, at }) =>
        readAlone(store.id, async () => {
          const { readSeen } = await reader();
          const { pieces, ...read } = await readSeen(attachment(url), hash, await settings(at));
          return { ...read, ...(await store.addAll(pieces, now)) };
        }),
      write: (format, of) =>
        writing(async () => {
          const { writeFile } = await writer();
          return writeFile(store, { format, member: of, club, now });
        }),
    };
  };
}
