/** What was found lately, so that a question asked again costs one look at the version. */

/** Each holds a picture's worth of numbers, some 20 kB. */
const MOST_KEPT = 500;

export interface Memory<Value> {
  /** What was kept last, and for which version. */
  recall(key: string): { version: number; value: Value } | undefined;
  keep(key: string, version: number, value: Value): void;
}

export function openMemory<Value>(most = MOST_KEPT): Memory<Value> {
  const kept = new Map<string, { version: number; value: Value }>();
  const touch = (key: string, entry: { version: number; value: Value }) => {
    // Set anew: a Map keeps the order of setting, so its first key is the one unused for longest.
    kept.delete(key);
    kept.set(key, entry);
  };
  return {
    recall: (key) => {
      const entry = kept.get(key);
      if (entry !== undefined) touch(key, entry);
      return entry;
    },
    keep: (key, version, value) => {
      touch(key, { version, value });
      for (const oldest of kept.keys()) {
        if (kept.size <= most) break;
        kept.delete(oldest);
      }
    },
  };
}
