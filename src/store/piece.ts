/** Keeping pieces, and finding them again. */
import { and, asc, between, count, desc, eq, gt, isNotNull, isNull, max, or, sql } from 'drizzle-orm';
import type { Piece } from '../../shared/club/piece.ts';
import type { ClubStore } from '../../shared/club/store.ts';
import type { CutVersions } from './cut-version.ts';
import type { Database } from './database.ts';
import { pieceOf, rowOf } from './piece-row.ts';
import { placeholders } from './placeholders.ts';
import { piece } from './schema.ts';
import { read, write } from './write.ts';

const OPEN_LIMIT = 25;
/** Days before and after all others, as text. */
const FIRST_DAY = '0000-01-01';
const LAST_DAY = '9999-12-31';

const columns = placeholders(piece);
const inClub = eq(piece.club, columns.club);

function prepareReads(db: Database) {
  const limit = sql.placeholder('limit');
  const unserved = and(isNull(piece.served), or(isNull(piece.cooked), isNull(piece.scraps)));
  const ofMember = and(inClub, eq(piece.member, columns.member), isNull(piece.removedAt));
  const newest = desc(piece.seq);
  return {
    byId: db
      .select()
      .from(piece)
      .where(and(inClub, eq(piece.id, columns.id)))
      .prepare(),
    bySeq: db
      .select()
      .from(piece)
      .where(and(inClub, eq(piece.seq, columns.seq)))
      .prepare(),
    open: db.select().from(piece).where(and(ofMember, unserved)).orderBy(newest).limit(limit).prepare(),
    newest: db.select().from(piece).where(ofMember).orderBy(newest).limit(limit).prepare(),
    setAside: db
      .select()
      .from(piece)
      .where(and(inClub, isNotNull(piece.setAsideAt), isNull(piece.removedAt)))
      .orderBy(newest)
      .limit(limit)
      .prepare(),
    following: db
      .select()
      .from(piece)
      .where(and(inClub, gt(piece.seq, columns.seq), isNull(piece.removedAt)))
      .orderBy(asc(piece.seq))
      .limit(limit)
      .prepare(),
    followingOf: db
      .select()
      .from(piece)
      .where(and(ofMember, gt(piece.seq, columns.seq)))
      .orderBy(asc(piece.seq))
      .limit(limit)
      .prepare(),
    ofMember: db
      .select()
      .from(piece)
      .where(
        and(
          ofMember,
          isNull(piece.setAsideAt),
          between(piece.day, sql.placeholder('from'), sql.placeholder('to')),
        ),
      )
      .orderBy(asc(piece.seq))
      .prepare(),
    cutsOf: db
      .select({ cut: piece.cut })
      .from(piece)
      .where(and(ofMember, isNull(piece.setAsideAt)))
      // The sign keeps SQLite from going through all of the club's cuts, which an index has in order.
      .groupBy(sql`+${piece.cut}`)
      .orderBy(desc(count()), desc(max(piece.seq)))
      .prepare(),
  };
}

/** The number comes from the statement that inserts: none is lost, none is given twice, also after a removal. */
function prepareInsert(db: Database) {
  const seq = sql`(select coalesce(max(seq), 0) + 1 from piece where club_id = ${columns.club})`;
  return db
    .insert(piece)
    .values({ ...columns, seq })
    .onConflictDoNothing({ target: [piece.club, piece.id] })
    .returning()
    .prepare();
}

export function pieces(db: Database, versions: CutVersions) {
  const reads = prepareReads(db);
  const insert = prepareInsert(db);
  const present = (rows: Parameters<typeof pieceOf>[0][]): Piece[] =>
    rows.map(pieceOf).filter((found) => found !== null);

  type Methods = 'start' | 'piece' | 'open' | 'newest' | 'setAside' | 'following' | 'ofMember' | 'cutsOf';
  return (club: string): Pick<ClubStore, Methods> => ({
    start: (started) =>
      write(db, () => {
        const whole = { ...started, revision: 0, confirmedAt: null, setAsideAt: null, setAsideWhy: null };
        const inserted = pieceOf(insert.get(rowOf(club, { ...whole, seq: 0 })));
        if (inserted) {
          versions.raise(club, inserted.cut, inserted.seq);
          return { piece: inserted, fresh: true };
        }
        const there = pieceOf(reads.byId.get({ club, id: started.id }));
        return there && { piece: there, fresh: false };
      }),
    piece: (reference) =>
      read(() =>
        pieceOf(
          'id' in reference
            ? reads.byId.get({ club, ...reference })
            : reads.bySeq.get({ club, ...reference }),
        ),
      ),
    open: (member) => read(() => present(reads.open.all({ club, member, limit: OPEN_LIMIT }))),
    newest: (member, limit) => read(() => present(reads.newest.all({ club, member, limit }))),
    setAside: (limit) => read(() => present(reads.setAside.all({ club, limit }))),
    following: (seq, limit, member) =>
      read(() =>
        present(
          member === undefined
            ? reads.following.all({ club, seq, limit })
            : reads.followingOf.all({ club, member, seq, limit }),
        ),
      ),
    ofMember: (member, from, to) =>
      read(() => present(reads.ofMember.all({ club, member, from: from ?? FIRST_DAY, to: to ?? LAST_DAY }))),
    cutsOf: (member) =>
      read(() => reads.cutsOf.all({ club, member }).flatMap(({ cut }) => (cut === null ? [] : [cut]))),
  });
}
