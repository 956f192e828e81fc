/** Erasing a whole club, in short transactions with room for everybody else between them. */
import { setImmediate as others } from 'node:timers/promises';
import { getTableColumns, getTableName } from 'drizzle-orm';
import { SQLiteTable } from 'drizzle-orm/sqlite-core';
import { PURGED_AFTER_DAYS } from '../../shared/club/retention.ts';
import type { ClubStore, Place, Store } from '../../shared/club/store.ts';
import { DAY_MS } from '../../shared/measure/time.ts';
import type { CutVersions } from './cut-version.ts';
import type { Database } from './database.ts';
import * as schema from './schema.ts';
import type { Upkeep } from './upkeep.ts';
import { read, readTogether, write } from './write.ts';

/** Few enough that each transaction takes some twenty milliseconds. */
const DELETED_TOGETHER = 500;

type Of = { club: string };

/** Every table with rows of clubs. */
const OF_CLUBS = Object.values(schema).flatMap((table) =>
  table instanceof SQLiteTable && 'club' in getTableColumns(table) ? [getTableName(table)] : [],
);

const prepare = ({ $client: client }: Database) => ({
  there: client.prepare<Of, { id: string }>('select id from club where id = @club'),
  // A removed piece has no cut. An index tells which have one: of 100,000 that takes a fiftieth of a look at each.
  count: client.prepare<Of, { pieces: number }>(
    'select count(*) as pieces from piece where club_id = @club and cut is not null',
  ),
  // One that was only just founded, for whoever asks, has a row of guesses and nothing more.
  anything: client.prepare<Of, { anything: number }>(`select exists (
      select 1 from club where id = @club and (welcomed_at is not null or left_at is not null)
    ) ${OF_CLUBS.map((table) => `or exists (select 1 from ${table} where club_id = @club)`).join(' ')} as anything`),
  cards: client.prepare<Of, Place>(
    'select channel_id as channel, message_id as message from posted where club_id = @club order by rowid desc',
  ),
  some: client.prepare<Of & { most: number }>(
    'delete from piece where rowid in (select rowid from piece where club_id = @club order by seq limit @most)',
  ),
  club: client.prepare<Of>('delete from club where id = @club'),
  overdue: client.prepare<
    { now: number; days: number },
    { id: string }
  >(`select id from club where left_at is not null
    and left_at + @days * ${DAY_MS} <= @now order by id`),
});

export function erasingClub(db: Database, versions: CutVersions, upkeep: Upkeep) {
  const statements = prepare(db);
  return (club: string): Pick<ClubStore, 'heldInAll' | 'eraseClub'> => {
    const pieces = () => statements.count.get({ club })?.pieces ?? 0;
    return {
      heldInAll: () =>
        readTogether(db, () => ({
          pieces: pieces(),
          anything: statements.anything.get({ club })?.anything === 1,
        })),
      eraseClub: async (at) => {
        const found = await write(db, () => {
          if (statements.there.get({ club }) === undefined) return null;
          upkeep.erased(at);
          // Before the first piece goes, so that a stop on the way leaves no figure of a half.
          for (const cut of versions.cuts(club)) versions.raise(club, cut);
          return { pieces: pieces(), clubs: 1, cards: statements.cards.all({ club }) };
        });
        if (found === null) return { pieces: 0, clubs: 0, cards: [] };
        for (let deleted = DELETED_TOGETHER; deleted === DELETED_TOGETHER; await others()) {
          deleted = await write(db, () => {
            for (const cut of versions.cuts(club)) versions.raise(club, cut);
            return statements.some.run({ club, most: DELETED_TOGETHER }).changes;
          });
        }
        await write(db, () => {
          // One is left out: to what was kept of the last one, no change of a new club follows on.
          upkeep.beginVersionsAbove(versions.read(club, null) + 1);
          statements.club.run({ club });
        });
        return found;
      },
    };
  };
}

export const overdueClubs = (db: Database): Pick<Store, 'overdue'> => {
  const statements = prepare(db);
  return {
    overdue: (now, days = PURGED_AFTER_DAYS) =>
      read(() => statements.overdue.all({ now, days }).map(({ id }) => id)),
  };
};
