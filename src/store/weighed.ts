/** Who weighed in how many pieces. */
import { and, between, count, eq, isNull, type SQL, sql } from 'drizzle-orm';
import type { ClubStore } from '../../shared/club/store.ts';
import type { Database } from './database.ts';
import { placeholders } from './placeholders.ts';
import { piece } from './schema.ts';
import { read } from './write.ts';

/** Days before and after all others, as text. */
const FIRST_DAY = '0000-01-01';
const LAST_DAY = '9999-12-31';

const columns = placeholders(piece);

/** A removed piece has no member, and no day. */
const prepare = (db: Database, ...more: SQL[]) =>
  db
    .select({ member: sql<string>`${piece.member}`, pieces: count() })
    .from(piece)
    .where(
      and(
        eq(piece.club, columns.club),
        isNull(piece.removedAt),
        isNull(piece.setAsideAt),
        eq(piece.approximate, false),
        between(piece.day, sql.placeholder('from'), sql.placeholder('to')),
        ...more,
      ),
    )
    .groupBy(piece.member)
    .orderBy(piece.member)
    .prepare();

export function weighed(db: Database) {
  const ofAll = prepare(db);
  const ofCut = prepare(db, eq(piece.cut, columns.cut));
  return (club: string): Pick<ClubStore, 'weighed'> => ({
    weighed: (cut, from, to) => {
      const days = { club, from: from ?? FIRST_DAY, to: to ?? LAST_DAY };
      return read(() => (cut === null ? ofAll.all(days) : ofCut.all({ ...days, cut })));
    },
  });
}
