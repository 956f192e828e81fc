/** Where a member leaves traces in a club: every table with a member's id or an interaction's, and how it is told. */
import type { Database } from './database.ts';

/** A member of a club, as statements name them. */
export type Whose = { club: string; member: string };

/** Each finds the member's rows of its table. `piece_id` of a removed piece is known by `removed_piece` alone. */
export const TRACES = {
  member: 'club_id = @club and id = @member',
  pan: 'club_id = @club and member_id = @member',
  piece: 'club_id = @club and member_id = @member',
  removed_piece: 'club_id = @club and member_id = @member',
  staged: 'club_id = @club and member_id = @member',
  correction: 'club_id = @club and member_id = @member',
  draft: 'club_id = @club and member_id = @member',
  reminder: 'club_id = @club and member_id = @member',
} as const;

/** The ids of all pieces that were ever theirs. */
export const THEIR_PIECES = `
  select id from piece where ${TRACES.piece} union all select piece_id from removed_piece where ${TRACES.removed_piece}`;

/** An id that nobody can tell anything from, another one for each row. */
export const RANDOM_ID = 'lower(hex(randomblob(16)))';

/** True for a club where anything of theirs is kept. */
export const isKnown = (club: string): string =>
  Object.entries(TRACES)
    .map(([table, theirs]) => `exists (select 1 from ${table} where ${theirs.replaceAll('@club', club)})`)
    .join(' or ');

/** Whether a JSON text names them: as an option of a member, or in a line. */
const names = (column: string): string =>
  `instr(${column}, '"' || @member || '"') + instr(${column}, '@' || @member) + instr(${column}, '@!' || @member)`;

/** Rows that go whole with their member, whichever way they go. */
export function prepareForget({ $client: client }: Database): (whose: Whose) => void {
  const statements = [
    `delete from reminder where club_id = @club and piece_id in (${THEIR_PIECES})`,
    `delete from posted where club_id = @club and piece_id in (${THEIR_PIECES})`,
    ...(['member', 'pan', 'staged', 'draft', 'reminder'] as const).map(
      (table) => `delete from ${table} where ${TRACES[table]}`,
    ),
    // Another member's line that waits for an answer may name them.
    `delete from draft where club_id = @club and ${names('options')} + ${names('readings')} > 0`,
    // Nothing is left of a removed piece but its id and its number: the number stays.
    `update piece set id = ${RANDOM_ID}, removed_at = 0 where club_id = @club and id in
       (select piece_id from removed_piece where ${TRACES.removed_piece})`,
    `delete from removed_piece where ${TRACES.removed_piece}`,
  ].map((sql) => client.prepare<Whose>(sql));
  return (whose) => statements.forEach((statement) => void statement.run(whose));
}
