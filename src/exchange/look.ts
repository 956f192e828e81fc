/** A table that is first looked at, and kept by a later press: it must be the same then, and be read alike. */
import { createHash, type Hash } from 'node:crypto';
import type { TableSeen } from '../../shared/chat/exchange.ts';
import type { Club } from '../../shared/club/club.ts';
import type { ClubStore } from '../../shared/club/store.ts';
import { MemberError } from '../../shared/errors.ts';
import type { Bytes } from './decode.ts';
import { readTable, type Table, type TableSettings } from './read-table.ts';

/** Settings that a table is read by. */
const READ_BY = ['zone', 'currency', 'locale', 'units', 'gradeCountry'] as const satisfies (keyof Club)[];

async function readHashed(source: Bytes, settings: TableSettings): Promise<{ table: Table; hash: string }> {
  const hash = createHash('sha256');
  const table = await readTable(passing(source, hash), settings);
  hash.update(JSON.stringify([...READ_BY.map((name) => settings.club[name]), settings.ownCuts]));
  return { table, hash: hash.digest('base64url') };
}

async function* passing(source: Bytes, hash: Hash): AsyncGenerator<Uint8Array> {
  for await (const chunk of source) {
    hash.update(chunk);
    yield chunk;
  }
}

/** What would come of a table. @throws MemberError for a file that is none. */
export async function lookAt(store: ClubStore, source: Bytes, settings: TableSettings): Promise<TableSeen> {
  const { table, hash } = await readHashed(source, settings);
  const { pieces, ...read } = table;
  const there = await store.known(pieces.map(({ id }) => id));
  return { ...read, fresh: pieces.length - there, there, hash };
}

/** The table of that hash. @throws MemberError for any other. */
export async function readSeen(source: Bytes, seen: string, settings: TableSettings): Promise<Table> {
  const changed = new MemberError('file-changed', {});
  const { table, hash } = await readHashed(source, settings).catch((problem: unknown) => {
    // It was a table when it was looked at.
    throw problem instanceof MemberError && problem.code.startsWith('csv-') ? changed : problem;
  });
  if (hash !== seen) throw changed;
  return table;
}
