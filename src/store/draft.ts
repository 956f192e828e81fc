/** Commands held back by a question. */
import { and, eq, gt, lte, sql } from 'drizzle-orm';
import type { ClubStore, Store } from '../../shared/club/store.ts';
import type { Database } from './database.ts';
import { inserted, placeholders } from './placeholders.ts';
import { draft } from './schema.ts';
import { read, write } from './write.ts';

export function drafts(db: Database) {
  const columns = placeholders(draft);
  const alive = db
    .select({
      id: draft.id,
      member: draft.member,
      command: draft.command,
      options: draft.options,
      confirmed: draft.confirmed,
      readings: draft.readings,
      interaction: draft.interaction,
      expiresAt: draft.expiresAt,
    })
    .from(draft)
    .where(
      and(
        eq(draft.club, columns.club),
        eq(draft.id, columns.id),
        gt(draft.expiresAt, sql.placeholder('now')),
      ),
    )
    .prepare();
  const keep = db
    .insert(draft)
    .values(columns)
    .onConflictDoUpdate({ target: [draft.club, draft.id], set: inserted(draft) })
    .prepare();

  return (club: string): Pick<ClubStore, 'draft' | 'keepDraft'> => ({
    draft: (id, now) => read(() => alive.get({ club, id, now }) ?? null),
    keepDraft: async (held) => {
      await write(db, () => keep.run({ ...held, club }));
    },
  });
}

export function forgetDrafts(db: Database): Pick<Store, 'forgetDrafts'> {
  return {
    forgetDrafts: async (now) => {
      await write(db, () => db.delete(draft).where(lte(draft.expiresAt, now)).run());
    },
  };
}
