/** Which clubs the bot is in: noted when it joins, is removed, or finds on logging in that it was removed meanwhile. */
import {
  type Client,
  DiscordAPIError,
  Events,
  GatewayDispatchEvents,
  type GatewayGuildCreateDispatchData,
  type GatewayReadyDispatchData,
  RESTJSONErrorCodes,
  Routes,
  ShardClientUtil,
} from 'discord.js';
import type { Store } from '../../shared/club/store.ts';
import type { Log } from '../log.ts';

/** A server's number; clubs of a rehearsal are named otherwise, and are never gone. */
const SERVER = /^\d{15,21}$/;

export interface ClubWatch {
  /** Resolves when all that was seen so far is noted. */
  noted(): Promise<void>;
}

/** Does one work after the other. One that fails is written down, and the next one done. */
function openNotes(log: Log) {
  let notes = Promise.resolve();
  return {
    note: (facts: object, text: string, work: () => Promise<void>): void => {
      notes = notes.then(async () => {
        try {
          await work();
          log.info(facts, text);
        } catch (error) {
          log.error({ ...facts, err: error }, `could not note: ${text}`);
        }
      });
    },
    noted: async (): Promise<void> => {
      for (let last: Promise<void> | null = null; last !== notes; ) {
        last = notes;
        await last;
      }
    },
  };
}

/** Notes comings and goings from now on, one after the other. An outage is neither. */
export function watchClubs(
  client: Client,
  { store, now, log }: { store: Pick<Store, 'clubs' | 'left' | 'returned'>; now: () => number; log: Log },
): ClubWatch {
  const { note, noted } = openNotes(log);
  /** Known to be there. A list can lack a club in an outage: when the club is told of after all, it is back. */
  const listed = new Set<string>();
  const left = (club: string) => note({ club }, 'left a club', () => store.left(club, now()));
  const returned = (club: string) => note({ club }, 'is in a club', () => store.returned(club));

  // The platform's own list, at each log-in: the library's cache still holds who left while we were away.
  client.ws.on(GatewayDispatchEvents.Ready, (ready: GatewayReadyDispatchData, shard) => {
    const there = ready.guilds.map(({ id }) => id);
    const shards = ready.shard?.[1] ?? 1;
    const ours = (club: string) =>
      SERVER.test(club) && ShardClientUtil.shardIdForGuildId(club, shards) === shard;
    for (const club of [...listed].filter(ours)) listed.delete(club);
    for (const club of there) listed.add(club);
    note({ clubs: there.length }, 'compared the clubs with the store', async () => {
      const known = await store.clubs();
      // Here and now: told of later, it would be after one that was told of after all.
      for (const club of known.filter(ours).filter((id) => !listed.has(id))) {
        await store.left(club, now());
        log.info({ club }, 'left a club');
      }
      for (const club of there.filter((id) => !known.includes(id))) await store.returned(club);
    });
  });
  // Not the library's event: it says nothing of a club that its cache still holds, as after a list that lacked it.
  client.ws.on(GatewayDispatchEvents.GuildCreate, ({ id, unavailable }: GatewayGuildCreateDispatchData) => {
    if (unavailable || listed.has(id)) return;
    listed.add(id);
    returned(id);
  });
  // An outage is another event: the library keeps the two apart by the platform's mark.
  client.on(Events.GuildDelete, ({ id }) => {
    listed.delete(id);
    left(id);
  });

  return { noted };
}

/** The platform's word that the bot is in no such server. */
const GONE: readonly (string | number)[] = [
  RESTJSONErrorCodes.UnknownGuild,
  RESTJSONErrorCodes.MissingAccess,
];

/** Asks the platform whether the bot is in a club. Throws where it gives no answer, as in an outage: then nobody knows. */
export async function isInClub(client: Client, club: string): Promise<boolean> {
  try {
    await client.rest.get(Routes.guild(club));
    return true;
  } catch (error) {
    if (error instanceof DiscordAPIError && GONE.includes(error.code)) return false;
    throw error;
  }
}
