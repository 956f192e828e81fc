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

  const find = async (club: string, name: FindingName, asked: Asked<FindingName>) => {
    const version = await store.club(club).version(asked.cut);
    const key = JSON.stringify([club, name, asked]);
    const kept = memory.recall(key, version);
    if (kept !== undefined) return kept;
    // Whoever asks the same while it is computed waits for the same result.
    const asking = `${version} ${key}`;
    const coming =
      onTheirWay.get(asking) ?? computed(club, name, asked, version).finally(() => onTheirWay.delete(asking));
    onTheirWay.set(asking, coming);
    const { version: read, found } = await coming;
    memory.keep(key, read, found);
    return found;
  };

  return {
    of:
      (club) =>
      <Name extends FindingName>(name: Name, asked: Asked<Name>) =>
        find(club, name, asked) as Promise<Found<Name>>,
    close: async () => elsewhere?.close(),
  };
}
