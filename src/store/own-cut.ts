/** The cuts of a club's own. */
import { and, asc, eq, sql } from 'drizzle-orm';
import type { ClubStore } from '../../shared/club/store.ts';
import { cutOf } from '../../shared/trade/cuts.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import { isOwnCut } from '../../shared/trade/own-cuts.ts';
import type { CutVersions } from './cut-version.ts';
import type { Database } from './database.ts';
import { placeholders } from './placeholders.ts';
import { ownCut, piece } from './schema.ts';
import { read, readTogether, write } from './write.ts';

export function ownCuts(db: Database, versions: CutVersions) {
  const columns = placeholders(ownCut);
  const ofClub = eq(ownCut.club, columns.club);
  const all = db.select({ id: ownCut.id }).from(ownCut).where(ofClub).orderBy(asc(ownCut.id)).prepare();
  const keep = db.insert(ownCut).values(columns).onConflictDoNothing().prepare();
  const remove = db
    .delete(ownCut)
    .where(and(ofClub, eq(ownCut.id, columns.id)))
    .prepare();
  const anyPiece = db
    .select({ one: sql`1` })
    .from(piece)
    .where(and(eq(piece.club, columns.club), eq(piece.cut, sql.placeholder('cut'))))
    .limit(1)
    .prepare();

  type Methods = 'ownCuts' | 'keepOwnCut' | 'removeOwnCut' | 'weighedOwnCuts';
  return (club: string): Pick<ClubStore, Methods> => ({
    ownCuts: () => read(() => all.all({ club }).map(({ id }) => id as CutKey)),
    keepOwnCut: async (key) => {
      const { name, species } = cutOf(key);
      await write(db, () => keep.run({ club, id: key, name, species }));
    },
    removeOwnCut: (key) => write(db, () => remove.run({ club, id: key }).changes > 0),
    // Asked with each line that is read: of every cut that was ever weighed, a look at one piece.
    weighedOwnCuts: () =>
      readTogether(db, () =>
        versions
          .cuts(club)
          .filter(isOwnCut)
          .filter((cut) => anyPiece.get({ club, cut }) !== undefined),
      ),
  });
}
