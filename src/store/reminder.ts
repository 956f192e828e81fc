/** Reminders: kept until they are due, and taken once. */
import { lte } from 'drizzle-orm';
import type { ClubStore, Store } from '../../shared/club/store.ts';
import type { Database } from './database.ts';
import { inserted, placeholders } from './placeholders.ts';
import { reminder } from './schema.ts';
import { write } from './write.ts';

export function reminders(db: Database) {
  const columns = placeholders(reminder);
  const keep = db
    .insert(reminder)
    .values(columns)
    .onConflictDoUpdate({ target: [reminder.club, reminder.piece, reminder.member], set: inserted(reminder) })
    .prepare();

  return (club: string): Pick<ClubStore, 'remind'> => ({
    remind: async (wanted) => {
      await write(db, () => keep.run({ ...wanted, club }));
    },
  });
}

export function dueReminders(db: Database): Pick<Store, 'dueReminders'> {
  return {
    // One statement takes and deletes, so that no other process can take the same.
    dueReminders: (now) =>
      write(db, () => db.delete(reminder).where(lte(reminder.dueAt, now)).returning().all()),
  };
}
