/** The cuts of a club's own. */
import { and, asc, eq } from 'drizzle-orm';
import type { ClubStore } from '../../shared/club/store.ts';
import { cutOf } from '../../shared/trade/cuts.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import type { Database } from './database.ts';
import { placeholders } from './placeholders.ts';
import { ownCut } from './schema.ts';
import { read, write } from './write.ts';

export function ownCuts(db: Database) {
  const columns = placeholders(ownCut);
  const ofClub = eq(ownCut.club, columns.club);
  const all = db.select({ id: ownCut.id }).from(ownCut).where(ofClub).orderBy(asc(ownCut.id)).prepare();
  const keep = db.insert(ownCut).values(columns).onConflictDoNothing().prepare();
  const remove = db
    .delete(ownCut)
    .where(and(ofClub, eq(ownCut.id, columns.id)))
    .prepare();

  return (club: string): Pick<ClubStore, 'ownCuts' | 'keepOwnCut' | 'removeOwnCut'> => ({
    ownCuts: () => read(() => all.all({ club }).map(({ id }) => id as CutKey)),
    keepOwnCut: async (key) => {
      const { name, species } = cutOf(key);
      await write(db, () => keep.run({ club, id: key, name, species, least: null, most: null }));
    },
    removeOwnCut: (key) => write(db, () => remove.run({ club, id: key }).changes > 0),
  });
}
