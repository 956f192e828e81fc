/** A store as a bot of many clubs has after three years, written straight into the file: from a fixed seed. */
import type Sqlite from 'better-sqlite3';
import { connect } from '../../src/store/database.ts';
import { openStore } from '../../src/store/open.ts';
import { type Chance, chanceFrom } from '../calibration/random.ts';
import type { BenchClub } from './clubs.ts';
import { drawPiece } from './piece-drawn.ts';

const DAY = 86_400_000;
const DAYS = 3 * 365;
/** The last day that is in it. */
export const LAST_DAY = Date.UTC(2026, 6, 4);
const FIRST_PIECE = 1_300_000_000_000_000_000n;
const MOST_CHANGES = 500;
const HIDDEN = 0.02;

/** Only while it is made: the bot opens the file as it always does. */
const IN_A_HURRY = ['journal_mode = OFF', 'synchronous = OFF', 'cache_size = -1000000'];

const INSERT_PIECE = `
  insert into piece (club_id, id, seq, member_id, posted_at, day, cut, grade, style, bone, wrap, shop, pieces,
    bought_ng, trim_ng, cooked_ng, scraps_ng, saved, price_amount, price_basis, price_currency, price_text,
    pumped, approximate, typed, confirmed_at, revision)
  values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 1, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0, ?, ?, ?, 0)`;

export async function writeLargeStore(url: string, clubs: readonly BenchClub[]): Promise<void> {
  await (await openStore(url, { migrate: true })).close();
  const { $client: client } = connect(url);
  for (const pragma of IN_A_HURRY) client.pragma(pragma);
  const chance = chanceFrom([7, 11, 13, 17]);
  client.transaction(() => {
    const indexes = withoutIndexes(client);
    writeClubs(client, clubs, chance);
    writePieces(client, clubs, chance);
    for (const sql of indexes) client.exec(sql);
    writeVersions(client);
  })();
  client.pragma('journal_mode = WAL');
  client.close();
}

/** Made after the rows they are sorted once, which takes a third of the time. @returns what makes them */
function withoutIndexes(client: Sqlite.Database): string[] {
  const ofPieces = "from sqlite_master where type = 'index' and tbl_name = 'piece' and sql is not null";
  const indexes = client.prepare<[], { name: string; sql: string }>(`select name, sql ${ofPieces}`).all();
  for (const { name } of indexes) client.exec(`drop index ${name}`);
  return indexes.map(({ sql }) => sql);
}

function writeClubs(client: Sqlite.Database, clubs: readonly BenchClub[], chance: Chance): void {
  const club = client.prepare(
    `insert into club (id, zone, currency, locale, units, grade_country, season_start, welcomed_at)
     values (?, 'America/Chicago', 'USD', 'en-US', 'lb', 'US', 1, 0)`,
  );
  const member = client.prepare(
    "insert into member (club_id, id, units, presets, hidden) values (?, ?, 'lb', ?, ?)",
  );
  for (const { id, members, cuts } of clubs) {
    club.run(id);
    const presets = JSON.stringify({ cut: cuts[0]?.key });
    for (const one of members) member.run(id, one, presets, Number(chance.even() < HIDDEN));
  }
}

/** All clubs weigh in at the same time, so that in the file no club's pieces stand together. */
function writePieces(client: Sqlite.Database, clubs: readonly BenchClub[], chance: Chance): void {
  const order = shuffled(clubs, chance);
  const counts = new Int32Array(clubs.length);
  const insert = client.prepare(INSERT_PIECE);
  for (const [at, place] of order.entries()) {
    const club = clubs[place];
    if (club === undefined) continue;
    counts[place] = (counts[place] ?? 0) + 1;
    const postedAt = Math.round(LAST_DAY - DAYS * DAY * (1 - at / order.length));
    const one = drawPiece(club, chance);
    const priced = one.price !== null;
    insert.run(
      ...[club.id, String(FIRST_PIECE + BigInt(at) * 4_194_304n), counts[place], one.member, postedAt],
      ...[new Date(postedAt).toISOString().slice(0, 10), one.cut, one.grade, one.style, one.bone, one.wrap],
      ...[one.shop, one.bought, one.trim, one.cooked, one.scraps, one.saved],
      ...[one.price, priced ? 'lb' : null, priced ? 'USD' : null, one.priceText],
      ...[one.approximate, one.typed, one.confirmed ? postedAt : null],
    );
  }
}

/** Each club's place, as often as it has pieces. */
function shuffled(clubs: readonly BenchClub[], chance: Chance): Uint16Array {
  const order = new Uint16Array(clubs.reduce((sum, { pieces }) => sum + pieces, 0));
  let at = 0;
  for (const [place, { pieces }] of clubs.entries()) {
    order.fill(place, at, at + pieces);
    at += pieces;
  }
  for (let last = order.length - 1; last > 0; last -= 1) {
    const other = Math.floor((last + 1) * chance.even());
    [order[last], order[other]] = [order[other] ?? 0, order[last] ?? 0];
  }
  return order;
}

/** As if each piece had been weighed in once. */
function writeVersions(client: Sqlite.Database): void {
  client.exec(`
    insert into cut_version (club_id, cut, version) select club_id, cut, count(*) from piece group by club_id, cut;
    insert into cut_change (club_id, cut, version, seq)
      select club_id, cut, place, seq from (
        select club_id, cut, seq, row_number() over one as place, count(*) over (partition by club_id, cut) as pieces
        from piece window one as (partition by club_id, cut order by seq))
      where place > pieces - ${MOST_CHANGES}`);
}
