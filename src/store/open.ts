/** Opening the store that `DATABASE_URL` names. */
import { setImmediate as endOfTurn } from 'node:timers/promises';
import type { ClubStore, Store } from '../../shared/club/store.ts';
import { addAll } from './add-all.ts';
import { clubList, clubSettings } from './club.ts';
import { columns } from './columns.ts';
import { corrections } from './correction.ts';
import { type CutVersions, cutVersions } from './cut-version.ts';
import { connect, type Database, databaseFile, MEMORY, refuseToWait } from './database.ts';
import { drafts, forgetDrafts } from './draft.ts';
import { erasing, erasingEverywhere } from './erase.ts';
import { erasingClub, overdueClubs } from './erase-club.ts';
import { leaving } from './leave.ts';
import { members } from './member.ts';
import { checkSchema, migrate } from './migrate.ts';
import { ownCuts } from './own-cut.ts';
import { pans } from './pan.ts';
import { pieces } from './piece.ts';
import { postedCards } from './posted.ts';
import { dueReminders, reminders } from './reminder.ts';
import { shops } from './shops.ts';
import { type Upkeep, upkeep } from './upkeep.ts';

export { migrateStore } from './migrate.ts';

export interface StoreOptions {
  /** For tests and rehearsals: migrates first. A database in memory is always migrated. */
  migrate?: boolean;
}

/** The URL, where another thread can open the same rows; null for a database in memory. */
export const sharedFile = (url: string): string | null => (databaseFile(url) === MEMORY ? null : url);

/** Opens the store. Throws one line where its schema is older or newer than this program. */
export async function openStore(url: string, options: StoreOptions = {}): Promise<Store> {
  const db = connect(url);
  if (options.migrate || databaseFile(url) === MEMORY) migrate(db);
  checkSchema(db);
  refuseToWait(db);

  const versions = cutVersions(db);
  const kept = upkeep(db);

  return {
    club: bindClubs(db, versions, kept),
    ...clubList(db),
    ...overdueClubs(db),
    ...erasingEverywhere(db, versions, kept),
    ...forgetDrafts(db),
    ...dueReminders(db),
    close: async () => {
      // What is written in this turn of the loop is committed at its end.
      await endOfTurn();
      db.$client.close();
    },
  };
}

/** Each table prepares its statements once, for all clubs. */
function bindClubs(db: Database, versions: CutVersions, kept: Upkeep): (id: string) => ClubStore {
  const ofSettings = clubSettings(db);
  const ofMembers = members(db);
  const ofPans = pans(db);
  const ofOwnCuts = ownCuts(db, versions);
  const ofPieces = pieces(db, versions);
  const ofShops = shops(db, versions, kept);
  const ofAdding = addAll(db, versions);
  const ofCorrections = corrections(db, versions);
  const ofColumns = columns(db, versions);
  const ofDrafts = drafts(db);
  const ofPosted = postedCards(db);
  const ofReminders = reminders(db);
  const ofLeaving = leaving(db, versions, kept);
  const ofErasing = erasing(db, versions, kept);
  const ofErasingClub = erasingClub(db, versions, kept);

  return (id) => ({
    id,
    ...ofSettings(id),
    ...ofMembers(id),
    ...ofPans(id),
    ...ofOwnCuts(id),
    ...ofPieces(id),
    ...ofShops(id),
    ...ofAdding(id),
    ...ofCorrections(id),
    ...ofColumns(id),
    ...ofDrafts(id),
    ...ofPosted(id),
    ...ofReminders(id),
    ...ofLeaving(id),
    ...ofErasing(id),
    ...ofErasingClub(id),
  });
}
