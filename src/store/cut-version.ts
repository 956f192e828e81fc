/** A number per cut that rises with each write to it: what was computed for a number stays right for it. */
import { and, asc, eq, gt, lte, sql } from 'drizzle-orm';
import type { CutKey } from '../../shared/trade/keys.ts';
import type { Database } from './database.ts';
import { cutChange, cutVersion } from './schema.ts';

/** More changes than this are read anew as fast. */
const CHANGES_KEPT = 500;
const ANY_PIECE = 0;

/** All must run inside the transaction whose rows they speak of. */
export interface CutVersions {
  /** `seq`: the one piece that was written; without it, any number of them. */
  raise(club: string, cut: CutKey, seq?: number): void;
  /** The pieces written after this version, each once; null where that is not known any more, or too many. */
  changed(club: string, cut: CutKey, since: number): number[] | null;
  /** Of one cut, or (null) the sum over all: each only rises, so the sum does. */
  read(club: string, cut: CutKey | null): number;
  /** Every cut that was ever weighed, in the order of their keys. */
  cuts(club: string): CutKey[];
}

const club = sql.placeholder('club');
const cut = sql.placeholder('cut');

function prepareVersions(db: Database) {
  const total = sql<number>`coalesce(sum(${cutVersion.version}), 0)`;
  const ofClub = eq(cutVersion.club, club);
  const raise = db
    .insert(cutVersion)
    .values({
      club,
      cut,
      version: sql`(select coalesce(max(value), 0) + 1 from upkeep where name = 'first-version')`,
    })
    .onConflictDoUpdate({
      target: [cutVersion.club, cutVersion.cut],
      set: { version: sql`${cutVersion.version} + 1` },
    })
    .returning({ version: cutVersion.version })
    .prepare();
  const ofAll = db.select({ total }).from(cutVersion).where(ofClub).prepare();
  const ofCut = db
    .select({ total })
    .from(cutVersion)
    .where(and(ofClub, eq(cutVersion.cut, cut)))
    .prepare();
  const cuts = db
    .select({ cut: cutVersion.cut })
    .from(cutVersion)
    .where(ofClub)
    .orderBy(asc(cutVersion.cut))
    .prepare();
  return { raise, ofAll, ofCut, cuts };
}

function prepareChanges(db: Database) {
  const ofCut = and(eq(cutChange.club, club), eq(cutChange.cut, cut));
  const version = sql.placeholder('version');
  const note = db
    .insert(cutChange)
    .values({ club, cut, version, seq: sql.placeholder('seq') })
    .prepare();
  const forget = db
    .delete(cutChange)
    .where(and(ofCut, lte(cutChange.version, version)))
    .prepare();
  const since = db
    .select({ version: cutChange.version, seq: cutChange.seq })
    .from(cutChange)
    .where(and(ofCut, gt(cutChange.version, version)))
    .prepare();
  return { note, forget, since };
}

export function cutVersions(db: Database): CutVersions {
  const { raise, ofAll, ofCut, cuts } = prepareVersions(db);
  const { note, forget, since } = prepareChanges(db);
  return {
    cuts: (club) => cuts.all({ club }).map(({ cut }) => cut),
    raise: (club, cut, seq = ANY_PIECE) => {
      const { version } = raise.get({ club, cut });
      note.run({ club, cut, version, seq });
      forget.run({ club, cut, version: version - CHANGES_KEPT });
    },
    changed: (club, cut, version) => {
      const changes = since.all({ club, cut, version });
      const latest = ofCut.get({ club, cut })?.total ?? 0;
      const known = changes.length === latest - version && changes.every(({ seq }) => seq !== ANY_PIECE);
      return known ? [...new Set(changes.map(({ seq }) => seq))] : null;
    },
    read: (club, cut) => (cut === null ? ofAll.get({ club }) : ofCut.get({ club, cut }))?.total ?? 0,
  };
}
