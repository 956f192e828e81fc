/** The database that `DATABASE_URL` names; what is wrong with it is told as that setting's fault. */
import type { Store } from '../../shared/club/store.ts';
import { EnvironmentError } from '../environment.ts';
import { messageOf } from '../problem.ts';
import { migrateStore, openStore } from './open.ts';

/** Brings it up to this program's schema, with a copy of what it was in `backupDir`. */
export const migrateNamed = (database: string, backupDir: string): Promise<unknown> =>
  blaming(database, () => migrateStore(database, { backupDir }));

export const openNamed = (database: string): Promise<Store> => blaming(database, () => openStore(database));

async function blaming<T>(database: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (problem) {
    const why = messageOf(problem);
    throw new EnvironmentError(`DATABASE_URL: ${database} can't be used: ${why}`, { cause: problem });
  }
}
