/** The columns that were asked for lately, so that a question asked again costs one look at the version. */
import type { Columns } from '../../shared/club/columns.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import type { Averaged } from '../../shared/yield/measure.ts';

const MOST_ENTRIES = 200;
/** Some 80 bytes a row. Of a club of 250,000 pieces, what came off and what a cost is told by are half of them. */
const MOST_ROWS = 1_000_000;

/** What is kept for this version, or else what `make` makes, of what is kept for an earlier one if there is such. */
export type Recent = (
  asked: readonly [club: string, cut: CutKey, measure: Averaged, injected: boolean],
  version: number,
  make: (before: Columns | undefined) => Columns,
) => Columns;

export function recentColumns(mostEntries = MOST_ENTRIES, mostRows = MOST_ROWS): Recent {
  const kept = new Map<string, Columns>();
  let rows = 0;

  const drop = (key: string): void => {
    rows -= kept.get(key)?.count ?? 0;
    kept.delete(key);
  };

  return (asked, version, make) => {
    const key = JSON.stringify(asked);
    const before = kept.get(key);
    const columns = before?.version === version ? before : make(before);
    // Set anew in any case: a Map keeps the order of setting, so its first key is the one unused for longest.
    drop(key);
    kept.set(key, columns);
    rows += columns.count;
    for (const oldest of kept.keys()) {
      if (kept.size <= mostEntries && rows <= mostRows) break;
      drop(oldest);
    }
    return columns;
  };
}
