/** What the upkeep of the whole file remembers: that something was erased, and where the versions of a new club begin. */
import type { Database } from './database.ts';
import { write } from './write.ts';

/** Something was erased that may still stand in free pages, the log or a backup. */
export interface Pending {
  /** When the first of it was erased, UTC milliseconds. */
  since: number;
  /** How often something was erased: if it rose meanwhile there is more to do. */
  erasures: number;
}

type Named = { name: 'erased-since' | 'erasures' | 'first-version' };

const prepare = ({ $client: client }: Database) => ({
  value: client.prepare<Named, { value: number }>('select value from upkeep where name = @name'),
  first: client.prepare<Named & { value: number }>(
    'insert into upkeep (name, value) values (@name, @value) on conflict do nothing',
  ),
  raise: client.prepare<Named>(
    'insert into upkeep (name, value) values (@name, 1) on conflict do update set value = value + 1',
  ),
  atLeast: client.prepare<Named & { value: number }>(
    'insert into upkeep (name, value) values (@name, @value) on conflict do update set value = max(value, excluded.value)',
  ),
  clear: client.prepare("delete from upkeep where name in ('erased-since', 'erasures')"),
});

/** All but `clear` must run inside of the transaction whose rows they speak of. */
export function upkeep(db: Database) {
  const statements = prepare(db);
  const pending = (): Pending | null => {
    const since = statements.value.get({ name: 'erased-since' })?.value;
    return since === undefined
      ? null
      : { since, erasures: statements.value.get({ name: 'erasures' })?.value ?? 0 };
  };
  return {
    pending,
    /** Notes an erasure. */
    erased: (at: number): void => {
      statements.first.run({ name: 'erased-since', value: at });
      statements.raise.run({ name: 'erasures' });
    },
    /** Has the versions of cuts that are new begin above `version`: what was computed for an erased club is right for none. */
    beginVersionsAbove: (version: number): void => {
      statements.atLeast.run({ name: 'first-version', value: version });
    },
    /** Forgets what was pending, unless there is more by now. */
    clear: (done: Pending): Promise<void> =>
      write(db, () => {
        if (pending()?.erasures === done.erasures) statements.clear.run();
      }),
  };
}

export type Upkeep = ReturnType<typeof upkeep>;
