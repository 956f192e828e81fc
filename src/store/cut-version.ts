/** A number per cut that rises with each write to it: what was computed for a number stays right for it. */
import { and, asc, desc, eq, sql } from 'drizzle-orm';
import type { CutKey } from '../../shared/trade/keys.ts';
import type { Database } from './database.ts';
import { cutVersion } from './schema.ts';

/** Both must run inside the transaction whose rows they speak of. */
export interface CutVersions {
  raise(club: string, cut: CutKey): void;
  /** Of one cut, or (null) the sum over all: each only rises, so the sum does. */
  read(club: string, cut: CutKey | null): number;
  /** Most often written to first. */
  cuts(club: string): CutKey[];
}

export function cutVersions(db: Database): CutVersions {
  const club = sql.placeholder('club');
  const cut = sql.placeholder('cut');
  const raise = db
    .insert(cutVersion)
    .values({ club, cut, version: 1 })
    .onConflictDoUpdate({
      target: [cutVersion.club, cutVersion.cut],
      set: { version: sql`${cutVersion.version} + 1` },
    })
    .prepare();
  const total = sql<number>`coalesce(sum(${cutVersion.version}), 0)`;
  const ofAll = db.select({ total }).from(cutVersion).where(eq(cutVersion.club, club)).prepare();
  const ofCut = db
    .select({ total })
    .from(cutVersion)
    .where(and(eq(cutVersion.club, club), eq(cutVersion.cut, cut)))
    .prepare();
  const cuts = db
    .select({ cut: cutVersion.cut })
    .from(cutVersion)
    .where(eq(cutVersion.club, club))
    .orderBy(desc(cutVersion.version), asc(cutVersion.cut))
    .prepare();

  return {
    cuts: (club) => cuts.all({ club }).map(({ cut }) => cut),
    raise: (club, cut) => void raise.run({ club, cut }),
    read: (club, cut) => (cut === null ? ofAll.get({ club }) : ofCut.get({ club, cut }))?.total ?? 0,
  };
}
