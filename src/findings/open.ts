/** Findings for the desk: kept while nothing changed, and computed on another thread where that takes long. */
import type { Store } from '../../shared/club/store.ts';
import type { Asked, Find, FindingName, Found } from '../../shared/findings/index.ts';
import { type Computed, compute } from './compute.ts';
import { type Elsewhere, openElsewhere } from './elsewhere.ts';
import { openMemory } from './memory.ts';

export interface Findings {
  /** Of one club. */
  of(club: string): Find;
  close(): Promise<void>;
}

/**
 * A cut was written to at least as often as it has pieces. From so many on, reading and computing takes over 50
 * milliseconds, in which nobody else would be answered.
 */
const LARGE = 3000;
/**
 * Of so many pieces a hundredth more changes no figure that stands beside a single one: a weigh-in there does not wait
 * for them. They are found anew once they lag by half of that.
 */
const MAY_LAG: ReadonlySet<FindingName> = new Set(['beside']);
const MOST_LAG = 1 / 100;

/**
 * @param database the file that another thread may read; null where there is none, as for one in memory
 * @param large from how many writes to a cut on it is computed there
 */
export function openFindings(store: Store, database: string | null, large = LARGE): Findings {
  const memory = openMemory<Computed['found']>();
  const onTheirWay = new Map<string, Promise<Computed>>();
  let elsewhere: Elsewhere | null = null;

  const computed = (club: string, name: FindingName, asked: Asked<FindingName>, version: number) => {
    if (database === null || version < large) return compute(store.club(club), name, asked);
    elsewhere ??= openElsewhere(database);
    return elsewhere.compute(club, name, asked);
  };

  const renew = async (key: string, version: number, work: () => Promise<Computed>) => {
    // Whoever asks the same while it is computed waits for the same result.
    const asking = `${version} ${key}`;
    const coming = onTheirWay.get(asking) ?? work().finally(() => onTheirWay.delete(asking));
    onTheirWay.set(asking, coming);
    const { version: read, found } = await coming;
    memory.keep(key, read, found);
    return found;
  };

  const find = async (club: string, name: FindingName, asked: Asked<FindingName>) => {
    const version = await store.club(club).version(asked.cut);
    const key = JSON.stringify([club, name, asked]);
    const work = () => computed(club, name, asked, version);
    const kept = memory.recall(key);
    if (kept?.version === version) return kept.value;
    const lag = kept === undefined ? 1 : (version - kept.version) / version;
    if (kept === undefined || lag > MOST_LAG || version < large || !MAY_LAG.has(name))
      return renew(key, version, work);
    // A failure is told to whoever has to wait for it.
    if (lag > MOST_LAG / 2) renew(key, version, work).catch(() => {});
    return kept.value;
  };

  return {
    of:
      (club) =>
      <Name extends FindingName>(name: Name, asked: Asked<Name>) =>
        find(club, name, asked) as Promise<Found<Name>>,
    close: async () => elsewhere?.close(),
  };
}
