/** A store with one very large club in it, written straight into the file: a seeded generator. */
import { connect } from '../../src/store/database.ts';
import { openStore } from '../../src/store/open.ts';
import { sampleClub } from '../store/samples.ts';

const OUNCE_NG = 28_349_523_125;
const POUND_NG = 16 * OUNCE_NG;

export interface Size {
  pieces: number;
  members: number;
}

/** Numbers from 0 up to 1, the same ones each time (a linear congruential generator: Numerical Recipes). */
export function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Whole packer briskets of 13.5 lb or so that lose a quarter; 3 in 100 with a slip of units or of the decimal point. */
export async function writeLargeClub(url: string, club: string, { pieces, members }: Size): Promise<void> {
  const store = await openStore(url, { migrate: true });
  await store.club(club).found(sampleClub(club));
  await store.close();
  const { $client: client } = connect(url);
  const random = numbers(7);
  const bell = () => random() + random() + random() + random() + random() + random() - 3;
  const pick = (values: readonly string[]) => values[Math.floor(random() * values.length)];
  const insert = client.prepare(`
    insert into piece (club_id, id, seq, member_id, posted_at, day, cut, grade, style, pieces, bought_ng, trim_ng,
      saved, pumped, approximate, typed, revision)
    values (?, ?, ?, ?, ?, '2026-07-04', 'beef/brisket-whole', ?, ?, 1, ?, ?, '[]', 0, 0, '{}', 0)`);
  client.transaction(() => {
    for (let seq = 1; seq <= pieces; seq++) {
      const bought = 13.5 + 4 * bell();
      const trim = bought / (1 + Math.exp(1.1 - 0.3 * bell()));
      const typed = random() < 0.03 ? bought * (random() < 0.5 ? 2.2 : 10) : bought;
      insert.run(
        club,
        `piece-${seq}`,
        seq,
        // A few post much, most a little.
        `member-${Math.floor(members * random() ** 1.5)}`,
        Date.UTC(2026, 6, 4),
        pick(['usda/select', 'usda/choice', 'usda/prime']),
        pick(['brisket/thick', 'brisket/quarter', 'brisket/thin']),
        Math.round(typed * POUND_NG),
        Math.round(trim * POUND_NG),
      );
    }
    client
      .prepare("insert into cut_version (club_id, cut, version) values (?, 'beef/brisket-whole', ?)")
      .run(club, pieces);
  })();
  client.close();
}
