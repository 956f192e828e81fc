/**
 * Keeping many pieces at once. They are staged in short transactions, with room for everybody else between them, and
 * then moved in one: a stop on the way leaves nothing but staged rows, which nobody sees and the next one clears.
 */
import { randomUUID } from 'node:crypto';
import { setImmediate as others } from 'node:timers/promises';
import { getTableColumns } from 'drizzle-orm';
import type { ImportedPiece } from '../../shared/club/piece.ts';
import type { Added, ClubStore } from '../../shared/club/store.ts';
import { HOUR_MS } from '../../shared/measure/time.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import type { CutVersions } from './cut-version.ts';
import type { Database } from './database.ts';
import { rowOf } from './piece-row.ts';
import { placeholders } from './placeholders.ts';
import { staged } from './schema.ts';
import { read, write } from './write.ts';

/** Few enough that each transaction takes some milliseconds. */
const STAGED_TOGETHER = 100;
const CLEARED_TOGETHER = 500;
const ASKED_TOGETHER = 500;
/** What an import that stopped half-way left behind. */
const ABANDONED_MS = 6 * HOUR_MS;

type Batch = { club: string; batch: string };

function prepare(db: Database) {
  const { $client: client } = db;
  const { club: _club, batch: _batch, position: _position, at: _at, ...moved } = getTableColumns(staged);
  const names = Object.values(moved).map(({ name }) => `"${name}"`);
  return {
    stage: db.insert(staged).values(placeholders(staged)).prepare(),
    // Numbered in the statement that inserts, as a single piece is.
    move: client.prepare<Batch>(`
      insert into piece (club_id, seq, revision, ${names.join(', ')})
      select s.club_id,
        (select coalesce(max(seq), 0) from piece where club_id = @club) + row_number() over (order by s.position),
        0, ${names.map((name) => `s.${name}`).join(', ')}
      from staged s where s.club_id = @club and s.batch = @batch
        and not exists (select 1 from piece p where p.club_id = s.club_id and p.id = s.id)
      order by s.position
      on conflict (club_id, id) do nothing`),
    clear: client.prepare<Batch & { most: number }>(
      'delete from staged where rowid in (select rowid from staged where club_id = @club and batch = @batch limit @most)',
    ),
    known: client.prepare<{ club: string; id: string }>(
      'select 1 from piece where club_id = @club and id = @id',
    ),
    abandoned: client.prepare<{ before: number }, Batch>(
      'select distinct club_id as club, batch from staged where at < @before',
    ),
  };
}

/** The columns of a staged piece. */
function stagedRow(club: string, piece: ImportedPiece) {
  const {
    seq: _seq,
    revision: _revision,
    removedAt: _removedAt,
    ...row
  } = rowOf(club, {
    ...piece,
    seq: 0,
    revision: 0,
  });
  return row;
}

/** Each id once, as it came first. */
function withoutTwins(pieces: readonly ImportedPiece[]): readonly ImportedPiece[] {
  const seen = new Set<string>();
  return pieces.filter(({ id }) => !seen.has(id) && seen.add(id));
}

export function addAll(db: Database, versions: CutVersions) {
  const statements = prepare(db);

  const clear = async (batch: Batch): Promise<void> => {
    for (let cleared = CLEARED_TOGETHER; cleared === CLEARED_TOGETHER; await others()) {
      cleared = await write(db, () => statements.clear.run({ ...batch, most: CLEARED_TOGETHER }).changes);
    }
  };
  const stage = async (batch: Batch, pieces: readonly ImportedPiece[], at: number): Promise<void> => {
    for (let start = 0; start < pieces.length; start += STAGED_TOGETHER) {
      const some = pieces.slice(start, start + STAGED_TOGETHER);
      await write(db, () => {
        for (const [index, one] of some.entries()) {
          statements.stage.run({ ...stagedRow(batch.club, one), ...batch, at, position: start + index });
        }
      });
      await others();
    }
  };
  const move = (batch: Batch, cuts: ReadonlySet<CutKey>): Promise<number> =>
    write(db, () => {
      const { changes } = statements.move.run(batch);
      if (changes > 0) for (const cut of cuts) versions.raise(batch.club, cut);
      return changes;
    });

  return (club: string): Pick<ClubStore, 'addAll' | 'known'> => ({
    known: async (ids) => {
      let count = 0;
      const all = [...new Set(ids)];
      for (let start = 0; start < all.length; start += ASKED_TOGETHER) {
        const some = all.slice(start, start + ASKED_TOGETHER);
        count += await read(
          () => some.filter((id) => statements.known.get({ club, id }) !== undefined).length,
        );
        await others();
      }
      return count;
    },
    addAll: async (pieces, at): Promise<Added> => {
      for (const batch of statements.abandoned.all({ before: at - ABANDONED_MS })) await clear(batch);
      const batch = { club, batch: randomUUID() };
      try {
        await stage(batch, withoutTwins(pieces), at);
        const added = await move(batch, new Set(pieces.map(({ cut }) => cut)));
        return { added, there: pieces.length - added };
      } finally {
        await clear(batch);
      }
    },
  });
}
