/**
 * Leaving: the pieces stay and count on, all under one random id. What could tell whose they were goes: ids of the
 * platform, moments, free words, and where the cards were posted.
 */
import { randomBytes } from 'node:crypto';
import { LEFT } from '../../shared/club/member.ts';
import type { ClubStore, Place } from '../../shared/club/store.ts';
import { DAY_MS } from '../../shared/measure/time.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import type { CutVersions } from './cut-version.ts';
import type { Database } from './database.ts';
import { isKnown, prepareForget, RANDOM_ID, TRACES, type Whose } from './traces.ts';
import type { Upkeep } from './upkeep.ts';
import { write } from './write.ts';

/** A moment finds its message in the channel; its day is in the piece anyway. */
const dayOf = (column: string): string => `${column} = ${column} - ${column} % ${DAY_MS}`;

/** Fields of a correction that hold free words. */
const FREE_WORDS = ['note', 'shop', 'saved', 'typed', 'setAsideWhy'].map((name) => `'$.${name}'`).join(', ');
const wordless = (column: string): string => `${column} = json_remove(${column}, ${FREE_WORDS})`;

type Leaving = Whose & { alias: string };
type Old = { id: string; next: string };

function prepare({ $client: client }: Database) {
  const statement = <Row = unknown>(sql: string) => client.prepare<Whose, Row>(sql);
  return {
    known: statement<{ known: number }>(`select ${isKnown('@club')} as known`),
    cuts: statement<{ cut: CutKey; pieces: number }>(
      `select cut, count(*) as pieces from piece where ${TRACES.piece} group by cut`,
    ),
    cards: statement<Place>(`select channel_id as channel, message_id as message from posted
      where club_id = @club and piece_id in (select id from piece where ${TRACES.piece}) order by rowid desc`),
    ids: statement<Old>(`select id, ${RANDOM_ID} as next from piece where ${TRACES.piece}`),
    // A shop that others name too says nothing about who went there.
    shops: statement(`update piece set shop = null where ${TRACES.piece} and shop is not null and not exists
      (select 1 from piece o where o.club_id = @club and o.shop = piece.shop and o.member_id <> @member)`),
    ofPiece: client.prepare<Old & { club: string }>(
      `update correction set piece_id = @next, interaction_id = ${RANDOM_ID}, why = null, ${dayOf('at')},
         ${wordless('before')}, ${wordless('after')} where club_id = @club and piece_id = @id`,
    ),
    renamed: client.prepare<Old & { club: string }>(
      'update piece set id = @next where club_id = @club and id = @id',
    ),
    // The trimmings that were saved keep their weight and worth, under a letter each.
    pieces: client.prepare<Leaving>(`update piece set member_id = @alias, note = null, typed = '{}',
      set_aside_why = null, ${dayOf('posted_at')}, ${dayOf('confirmed_at')}, ${dayOf('set_aside_at')},
      saved = (select json_group_array(json_set(value, '$.name', char(97 + key))) from json_each(saved))
      where ${TRACES.piece}`),
    corrections: client.prepare<Leaving>(
      `update correction set member_id = @alias, interaction_id = ${RANDOM_ID} where ${TRACES.correction}`,
    ),
    hide: client.prepare<Leaving>(
      "insert into member (club_id, id, presets, hidden) values (@club, @alias, '{}', 1)",
    ),
  };
}

export function leaving(db: Database, versions: CutVersions, upkeep: Upkeep) {
  const statements = prepare(db);
  const forget = prepareForget(db);

  return (club: string): Pick<ClubStore, 'leave'> => ({
    leave: (member, at) =>
      write(db, () => {
        const whose = { club, member };
        if (statements.known.get(whose)?.known !== 1) return { pieces: 0, clubs: 0, cards: [] };
        // A piece and its corrections change their id one after the other.
        db.$client.pragma('defer_foreign_keys = ON');
        const alias = `${LEFT}${randomBytes(8).toString('hex')}`;
        const cuts = statements.cuts.all(whose);
        const cards = statements.cards.all(whose);
        forget(whose);
        statements.shops.run(whose);
        for (const old of statements.ids.all(whose)) {
          statements.ofPiece.run({ club, ...old });
          statements.renamed.run({ club, ...old });
        }
        statements.pieces.run({ ...whose, alias });
        statements.corrections.run({ ...whose, alias });
        // Nobody can be asked any more whether they want to be shown.
        if (cuts.length > 0) statements.hide.run({ ...whose, alias });
        for (const { cut } of cuts) versions.raise(club, cut);
        upkeep.erased(at);
        return { pieces: cuts.reduce((sum, { pieces }) => sum + pieces, 0), clubs: 1, cards };
      }),
  });
}
