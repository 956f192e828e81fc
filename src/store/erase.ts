/** Erasing a member: their rows go at once, and nothing of theirs stays but the numbers of their pieces, under no name. */
import { and, eq, type SQL, sql } from 'drizzle-orm';
import type { ClubStore, Erased, Held, HeldIn, MemberStore, Place, Store } from '../../shared/club/store.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import type { CutVersions } from './cut-version.ts';
import type { Database } from './database.ts';
import { TOMBSTONE } from './piece-row.ts';
import { placeholders } from './placeholders.ts';
import { piece } from './schema.ts';
import { isKnown, prepareForget, RANDOM_ID, THEIR_PIECES, TRACES, type Whose } from './traces.ts';
import type { Upkeep } from './upkeep.ts';
import { read, readTogether, write } from './write.ts';

function prepare(db: Database) {
  const { $client: client } = db;
  const columns = placeholders(piece);
  const statement = <Row = unknown>(sql: string) => client.prepare<Whose, Row>(sql);
  return {
    count: statement<{ pieces: number }>(`select count(*) as pieces from piece where ${TRACES.piece}`),
    known: statement<{ known: number }>(`select ${isKnown('@club')} as known`),
    cuts: statement<{ cut: CutKey }>(`select distinct cut from piece where ${TRACES.piece}`),
    // The newest first: it is the one that is looked at.
    cards: statement<Place>(`select channel_id as channel, message_id as message from posted
      where club_id = @club and piece_id in (select id from piece where ${TRACES.piece}) order by rowid desc`),
    correctionsOfPieces: statement(
      `delete from correction where club_id = @club and piece_id in (${THEIR_PIECES})`,
    ),
    // What they mended of somebody else's stays mended.
    correctionsOfOthers: statement(
      `update correction set member_id = ${RANDOM_ID}, interaction_id = ${RANDOM_ID} where ${TRACES.correction}`,
    ),
    // When it was erased would tell which pieces were one member's.
    pieces: db
      .update(piece)
      .set({ ...TOMBSTONE, id: sql.raw(RANDOM_ID) as SQL<string>, removedAt: 0 })
      .where(and(eq(piece.club, columns.club), eq(piece.member, columns.member)))
      .prepare(),
    clubs: client.prepare<{ member: string }, { club: string; pieces: number }>(`
      select c.id as club,
        (select count(*) from piece where ${TRACES.piece.replaceAll('@club', 'c.id')}) as pieces
      from club c where ${isKnown('c.id')} order by c.id`),
  };
}

/** Erases inside of a transaction; null where there is nothing. */
type EraseRows = (whose: Whose, at: number) => { pieces: number; cards: Place[] } | null;

/** What there is to ask and to take in one club, for statements that are prepared once. */
function eraser(db: Database, versions: CutVersions, upkeep: Upkeep) {
  const statements = prepare(db);
  const forget = prepareForget(db);

  const held = (whose: Whose): Held => ({
    pieces: statements.count.get(whose)?.pieces ?? 0,
    anything: statements.known.get(whose)?.known === 1,
  });
  const erase: EraseRows = (whose, at) => {
    const { pieces, anything } = held(whose);
    if (!anything) return null;
    const cards = statements.cards.all(whose);
    const cuts = statements.cuts.all(whose);
    statements.correctionsOfPieces.run(whose);
    statements.correctionsOfOthers.run(whose);
    forget(whose);
    statements.pieces.run(whose);
    for (const { cut } of cuts) versions.raise(whose.club, cut);
    upkeep.erased(at);
    return { pieces, cards };
  };
  return { held, erase, clubs: (member: string) => statements.clubs.all({ member }) };
}

const NOTHING: Erased = { pieces: 0, clubs: 0, cards: [] };

export function erasing(db: Database, versions: CutVersions, upkeep: Upkeep) {
  const { held, erase } = eraser(db, versions, upkeep);
  return (club: string): Pick<ClubStore, 'held' | 'eraseMember'> => ({
    held: (member) => readTogether(db, () => held({ club, member })),
    eraseMember: (member, at) =>
      write(db, () => {
        const erased = erase({ club, member }, at);
        return erased === null ? NOTHING : { ...erased, clubs: 1 };
      }),
  });
}

/** The same in every club of the store, in one transaction. */
export function erasingEverywhere(
  db: Database,
  versions: CutVersions,
  upkeep: Upkeep,
): Pick<Store, 'everywhere'> {
  const { erase, clubs } = eraser(db, versions, upkeep);
  return {
    everywhere: (member): MemberStore => ({
      held: () => read((): HeldIn[] => clubs(member)),
      erase: (at) =>
        write(db, () => {
          const found = clubs(member).map(({ club }) => erase({ club, member }, at));
          const erased = found.filter((one) => one !== null);
          return {
            pieces: erased.reduce((sum, { pieces }) => sum + pieces, 0),
            clubs: erased.length,
            cards: erased.flatMap(({ cards }) => cards),
          };
        }),
    }),
  };
}
