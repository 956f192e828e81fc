/** The shops that a club named. */
import { and, count, desc, eq, isNotNull, sql } from 'drizzle-orm';
import type { ClubStore } from '../../shared/club/store.ts';
import type { CutVersions } from './cut-version.ts';
import type { Database } from './database.ts';
import { piece } from './schema.ts';
import type { Upkeep } from './upkeep.ts';
import { readTogether } from './write.ts';

const MOST_SHOPS = 100;
/** From so many writes on, counting takes as long as a weigh-in may, which offers them. */
const LARGE = 10_000;
/** Of so many pieces a hundredth more hardly changes which shops are named most. */
const MOST_LAG = 1 / 100;

interface Counted {
  version: number;
  /** Erasures that were noted until then: what is erased is gone from here at once. */
  erasures: number;
  shops: string[];
}

/** @param large from how many writes on the shops that were counted last are told for a while */
export function shops(db: Database, versions: CutVersions, upkeep: Upkeep, large = LARGE) {
  const mostUsed = db
    .select({ shop: piece.shop })
    .from(piece)
    .where(and(eq(piece.club, sql.placeholder('club')), isNotNull(piece.shop)))
    .groupBy(piece.shop)
    .orderBy(desc(count()), piece.shop)
    .limit(MOST_SHOPS)
    .prepare();
  const counted = new Map<string, Counted>();

  const read = (club: string): string[] => {
    const version = versions.read(club, null);
    const erasures = upkeep.pending()?.erasures ?? 0;
    const known = counted.get(club);
    const lag = known?.erasures === erasures ? version - known.version : version;
    if (known !== undefined && version >= large && lag <= version * MOST_LAG) return known.shops;
    const found = mostUsed.all({ club }).flatMap(({ shop }) => shop ?? []);
    counted.delete(club);
    if (version >= large) counted.set(club, { version, erasures, shops: found });
    return found;
  };
  return (club: string): Pick<ClubStore, 'shops'> => ({ shops: () => readTogether(db, () => read(club)) });
}
