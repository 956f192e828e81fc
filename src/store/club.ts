/** The clubs, and their settings. */
import { and, asc, eq, isNotNull, isNull, sql } from 'drizzle-orm';
import type { Club } from '../../shared/club/club.ts';
import type { ClubStore, Store } from '../../shared/club/store.ts';
import type { Database } from './database.ts';
import { placeholders } from './placeholders.ts';
import { club } from './schema.ts';
import { read, write } from './write.ts';

/** Leaving is no setting of the club's: its members do not see it. */
const { leftAt: _leftAt, ...columns } = placeholders(club);
const settings = {
  id: club.id,
  zone: club.zone,
  currency: club.currency,
  locale: club.locale,
  units: club.units,
  gradeCountry: club.gradeCountry,
  margin: club.margin,
  scaleError: club.scaleError,
  seasonStart: club.seasonStart,
  welcomedAt: club.welcomedAt,
};

export function clubSettings(db: Database) {
  const byId = db
    .select(settings)
    .from(club)
    .where(eq(club.id, sql.placeholder('id')))
    .prepare();
  const insert = db.insert(club).values(columns).onConflictDoNothing().prepare();
  const kept = (id: string): Club => {
    const row = byId.get({ id });
    if (!row) throw new Error(`club ${id} was never founded`);
    return row;
  };

  return (id: string): Pick<ClubStore, 'settings' | 'found' | 'change' | 'welcome'> => ({
    settings: () => read(() => byId.get({ id }) ?? null),
    found: (settings) =>
      write(db, () => {
        insert.run({ ...settings, id });
        return kept(id);
      }),
    change: (settings) =>
      write(db, () => {
        const { id: _id, ...next } = { ...kept(id), ...settings };
        db.update(club).set(next).where(eq(club.id, id)).run();
        return kept(id);
      }),
    welcome: (at) =>
      write(db, () => {
        const unwelcomed = and(eq(club.id, id), isNull(club.welcomedAt));
        return db.update(club).set({ welcomedAt: at }).where(unwelcomed).run().changes === 1;
      }),
  });
}

export function clubList(db: Database): Pick<Store, 'clubs' | 'left' | 'returned'> {
  const there = db
    .select({ id: club.id })
    .from(club)
    .where(isNull(club.leftAt))
    .orderBy(asc(club.id))
    .prepare();
  const gone = db
    .select({ id: club.id })
    .from(club)
    .where(and(eq(club.id, sql.placeholder('id')), isNotNull(club.leftAt)))
    .prepare();
  const markLeft = async (id: string, at: number | null) => {
    await write(db, () => db.update(club).set({ leftAt: at }).where(eq(club.id, id)).run());
  };
  return {
    clubs: () => read(() => there.all().map(({ id }) => id)),
    left: (id, at) => markLeft(id, at),
    // Asked of every club at each log-in: most never left, and reading waits for nobody.
    returned: async (id) => {
      if (await read(() => gone.get({ id }))) await markLeft(id, null);
    },
  };
}
