import { expect, test } from 'vitest';
import type { CutKey } from '../../shared/trade/keys.ts';
import { PORTION } from '../../src/store/columns.ts';
import { connect } from '../../src/store/database.ts';
import { openStore } from '../../src/store/open.ts';
import { benchClubs } from '../bench/clubs.ts';
import { writeLargeStore } from '../bench/large-store.ts';
import { makeFolder } from './folder.ts';

/** Nine of ten are one club's, most of these of one cut. */
const PIECES = 20_000;

test('a large cut is read whole and in posting order', async () => {
  const folder = makeFolder();
  const url = folder.url('large.db');
  const clubs = benchClubs({ pieces: PIECES, clubs: 2 });
  await writeLargeStore(url, clubs);
  const store = await openStore(url);
  const { $client: client } = connect(url);
  const [, club] = clubs;
  if (club === undefined) throw new Error('a store has clubs');
  const numbers = client
    .prepare<[string, string], number>(
      `select seq from piece where club_id = ? and cut = ? and trim_ng is not null
       and removed_at is null and set_aside_at is null order by seq`,
    )
    .pluck();
  try {
    const counts = [];
    for (const { key } of club.cuts) {
      const { seq, count } = await store.club(club.id).columns(key as CutKey, 'trim');
      expect([...seq]).toEqual(numbers.all(club.id, key));
      counts.push(count);
    }
    expect(Math.max(...counts)).toBeGreaterThan(PORTION);
  } finally {
    client.close();
    await store.close();
    folder.discard();
  }
});
