/** Bringing a table's pieces into a club: all or nothing, unless the good rows alone are wanted. */
import type { ClubStore } from '../../shared/club/store.ts';
import { knownOwnCuts } from '../own-cuts.ts';
import type { Bytes } from './decode.ts';
import { readTable, type Table, type TableSettings } from './read-table.ts';

export interface Imported extends Omit<Table, 'pieces'> {
  /** Whether the pieces were kept: not where a row was bad, unless the good ones alone were wanted. */
  kept: boolean;
  added: number;
  /** Those that the club had already. */
  there: number;
}

/**
 * Reads a table and adds its pieces.
 * @throws MemberError for a file that is no table of pieces.
 */
export async function importTable(
  store: ClubStore,
  source: Bytes,
  { keepGood, ...settings }: TableSettings & { keepGood: boolean },
): Promise<Imported> {
  const ownCuts = await knownOwnCuts(store);
  const { pieces, ...table } = await readTable(source, { ownCuts, ...settings });
  const kept = table.badCount === 0 || keepGood;
  const added = kept ? await store.addAll(pieces, settings.now) : { added: 0, there: 0 };
  return { ...table, kept, ...added };
}
