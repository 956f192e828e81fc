/** Clubs that may be: ordinary ones, and the corners in which formulas divide by 0. */
import fc from 'fast-check';
import { at } from '../../../shared/statistics/matrix.ts';
import { type Codes, type Rows, rowsAt } from '../../../shared/statistics/rows.ts';
import { codesAt } from '../../oracles/clubs.ts';

export interface AnyClub {
  rows: Rows;
  grade: Codes;
}

interface Piece {
  base: number;
  share: number;
  member: number;
  grade: number;
}

const GRADES = 3;

export const clubOf = (pieces: readonly Piece[]): AnyClub => ({
  rows: {
    count: pieces.length,
    base: pieces.map(({ base }) => base),
    loss: pieces.map(({ base, share }) => base * share),
    member: pieces.map(({ member }) => member),
  },
  grade: { codes: pieces.map(({ grade }) => grade), levels: GRADES },
});

const weights = fc.oneof(
  fc.integer({ min: 800, max: 2400 }).map((hundredths) => hundredths / 100),
  fc.double({ min: 0.01, max: 1000, noNaN: true }),
);
const shares = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 10, max: 45 }).map((percent) => percent / 100) },
  { weight: 2, arbitrary: fc.double({ min: 0.001, max: 0.999, noNaN: true }) },
  // Nothing came off, a gain, and more than there was.
  { weight: 1, arbitrary: fc.constantFrom(0, -0.1, 1, 1.5) },
);
const pieceOf = (members: fc.Arbitrary<number>) =>
  fc.record({
    base: weights,
    share: shares,
    member: members,
    grade: fc.integer({ min: -1, max: GRADES - 1 }),
  });
const piecesOf = (members: fc.Arbitrary<number>, minLength = 0) =>
  fc.array(pieceOf(members), { minLength, maxLength: 60, size: 'max' });

/** Any number of members up to twelve. */
const mixed = piecesOf(fc.integer({ min: 0, max: 11 }));
const corners = fc.oneof(
  // One member alone.
  piecesOf(fc.constant(3)),
  // Every member with one piece.
  mixed.map((pieces) => pieces.map((piece, member) => ({ ...piece, member }))),
  // All equal, or all alike but one.
  fc
    .tuple(mixed, pieceOf(fc.nat(4)))
    .map(([pieces, { base, share }]) => pieces.map((piece) => ({ ...piece, base, share }))),
  fc
    .tuple(piecesOf(fc.nat(4), 1), pieceOf(fc.nat(4)))
    .map(([pieces, { base, share }]) =>
      pieces.map((piece, row) => (row === 0 ? piece : { ...piece, base, share })),
    ),
  // Nothing came off anywhere.
  mixed.map((pieces) => pieces.map((piece) => ({ ...piece, share: 0 }))),
  // Every member true to one grade; every member equal to all others.
  mixed.map((pieces) => pieces.map((piece) => ({ ...piece, grade: piece.member % GRADES }))),
  mixed.map((pieces) =>
    pieces.map((piece, row) => ({ ...piece, share: 0.2 + 0.01 * (row % 5), member: Math.floor(row / 5) })),
  ),
);

export const clubs: fc.Arbitrary<AnyClub> = fc.oneof(mixed, corners).map(clubOf);

/** The same club in another order, and the place where each row was. */
export function shuffled({ rows, grade }: AnyClub, chance: Iterator<number>): AnyClub & { places: number[] } {
  const places = Array.from({ length: rows.count }, (_, row) => row);
  for (let row = places.length - 1; row > 0; row--) {
    const other = Number(chance.next().value) % (row + 1);
    [places[row], places[other]] = [at(places, other), at(places, row)];
  }
  return { rows: rowsAt(rows, places), grade: codesAt(grade, places), places };
}

/** The names of the figures, at any depth, that are numbers and not finite. */
export function notNumbers(figures: unknown, name = ''): string[] {
  if (typeof figures === 'number') return Number.isFinite(figures) ? [] : [`${name}: ${figures}`];
  if (figures === null || typeof figures !== 'object') return [];
  const inside: [unknown, unknown][] = figures instanceof Map ? [...figures] : Object.entries(figures);
  return inside.flatMap(([key, value]) => notNumbers(value, `${name}.${key}`));
}
