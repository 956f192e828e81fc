/** Changing a piece that is kept, with a record of what changed; and removing it, with none. */
import { and, eq } from 'drizzle-orm';
import type { Piece, PieceChange } from '../../shared/club/piece.ts';
import type { ClubStore, CorrectionRecord } from '../../shared/club/store.ts';
import type { CutVersions } from './cut-version.ts';
import type { Database } from './database.ts';
import { pieceOf, rowOf, TOMBSTONE } from './piece-row.ts';
import { placeholders, settings } from './placeholders.ts';
import { correction, piece, removedPiece } from './schema.ts';
import { read, readTogether, write } from './write.ts';

/** All but the key, which stays. */
const { club: _club, id: _id, seq: _seq, ...changing } = settings(piece);
const key = placeholders(piece);
const isPiece = and(eq(piece.club, key.club), eq(piece.id, key.id));

function prepare(db: Database) {
  const columns = placeholders(correction);
  const ofPiece = and(eq(correction.club, columns.club), eq(correction.piece, columns.piece));
  return {
    find: db.select().from(piece).where(isPiece).prepare(),
    update: db.update(piece).set(changing).where(isPiece).returning().prepare(),
    known: db
      .select({ at: correction.at })
      .from(correction)
      .where(and(ofPiece, eq(correction.interaction, columns.interaction)))
      .prepare(),
    changedBy: db
      .select({ piece: correction.piece })
      .from(correction)
      .where(and(eq(correction.club, columns.club), eq(correction.interaction, columns.interaction)))
      .limit(1)
      .prepare(),
    keep: db.insert(correction).values(columns).prepare(),
    ofPiece: db
      .select({
        member: correction.member,
        at: correction.at,
        why: correction.why,
        before: correction.before,
        after: correction.after,
      })
      .from(correction)
      .where(ofPiece)
      .orderBy(correction.at)
      .prepare(),
    forget: db.delete(correction).where(ofPiece).prepare(),
    keepWhose: db.insert(removedPiece).values(placeholders(removedPiece)).onConflictDoNothing().prepare(),
  };
}

/** The fields that `change` names and that it may change. */
function part(from: Piece, change: PieceChange): Record<string, unknown> {
  const fixed = new Set(['id', 'seq', 'member', 'postedAt', 'revision']);
  return Object.fromEntries(Object.entries(from).filter(([name]) => name in change && !fixed.has(name)));
}

export function corrections(db: Database, versions: CutVersions) {
  const statements = prepare(db);

  return (club: string): Pick<ClubStore, 'correct' | 'changedBy' | 'corrections' | 'remove'> => ({
    correct: (id, by, change) =>
      write(db, () => {
        const before = pieceOf(statements.find.get({ club, id }));
        if (!before) return null;
        if (statements.known.get({ club, piece: id, interaction: by.interaction })) {
          return { piece: before, fresh: false };
        }
        const wanted = change(before);
        const { member, postedAt, revision } = before;
        const next = { ...before, ...wanted, id, seq: before.seq, member, postedAt, revision: revision + 1 };
        const after = pieceOf(statements.update.get(rowOf(club, next)));
        if (!after) throw new Error(`piece ${before.seq} vanished while it was corrected`);
        statements.keep.run({
          club,
          piece: id,
          ...by,
          why: by.why ?? null,
          before: part(before, wanted),
          after: part(after, wanted),
        });
        versions.raise(club, before.cut, before.seq);
        if (after.cut !== before.cut) versions.raise(club, after.cut, after.seq);
        return { piece: after, fresh: true };
      }),
    changedBy: (interaction) =>
      readTogether(db, () => {
        const changed = statements.changedBy.get({ club, interaction });
        return changed ? pieceOf(statements.find.get({ club, id: changed.piece })) : null;
      }),
    corrections: (id) => read(() => statements.ofPiece.all({ club, piece: id }) as CorrectionRecord[]),
    remove: (id, at) =>
      write(db, () => {
        const before = pieceOf(statements.find.get({ club, id }));
        if (!before) return false;
        statements.update.run({ ...TOMBSTONE, club, id, removedAt: at });
        statements.forget.run({ club, piece: id });
        statements.keepWhose.run({ club, piece: id, member: before.member });
        versions.raise(club, before.cut, before.seq);
        return true;
      }),
  });
}
