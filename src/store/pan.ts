/** The pans of a member. */
import { and, asc, eq } from 'drizzle-orm';
import type { ClubStore } from '../../shared/club/store.ts';
import type { Database } from './database.ts';
import { inserted, placeholders } from './placeholders.ts';
import { pan } from './schema.ts';
import { read, write } from './write.ts';

const keyOf = (name: string): string => name.normalize('NFC').toLowerCase();

export function pans(db: Database) {
  const columns = placeholders(pan);
  const ofMember = and(eq(pan.club, columns.club), eq(pan.member, columns.member));
  const all = db
    .select({ name: pan.name, weight: pan.weight })
    .from(pan)
    .where(ofMember)
    .orderBy(asc(pan.key))
    .prepare();
  const keep = db
    .insert(pan)
    .values(columns)
    .onConflictDoUpdate({ target: [pan.club, pan.member, pan.key], set: inserted(pan) })
    .prepare();
  const remove = db
    .delete(pan)
    .where(and(ofMember, eq(pan.key, columns.key)))
    .prepare();

  return (club: string): Pick<ClubStore, 'pans' | 'keepPan' | 'removePan'> => ({
    pans: (member) => read(() => all.all({ club, member })),
    keepPan: async (member, { name, weight }) => {
      await write(db, () => keep.run({ club, member, key: keyOf(name), name, weight }));
    },
    removePan: (member, name) => write(db, () => remove.run({ club, member, key: keyOf(name) }).changes > 0),
  });
}
