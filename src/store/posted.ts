/** Where the cards of a piece were posted. */
import { and, eq, sql } from 'drizzle-orm';
import type { ClubStore } from '../../shared/club/store.ts';
import type { Database } from './database.ts';
import { placeholders } from './placeholders.ts';
import { posted } from './schema.ts';
import { read, write } from './write.ts';

export function postedCards(db: Database) {
  const columns = placeholders(posted);
  const ofPiece = db
    .select({ piece: posted.piece, channel: posted.channel, message: posted.message })
    .from(posted)
    .where(and(eq(posted.club, columns.club), eq(posted.piece, columns.piece)))
    .orderBy(sql`rowid`)
    .prepare();
  const keep = db.insert(posted).values(columns).onConflictDoNothing().prepare();

  return (club: string): Pick<ClubStore, 'keepPosted' | 'posted'> => ({
    keepPosted: async (card) => {
      await write(db, () => keep.run({ ...card, club }));
    },
    posted: (piece) => read(() => ofPiece.all({ club, piece })),
  });
}
