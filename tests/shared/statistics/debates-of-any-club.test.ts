/** What must hold of the debates of any club. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { factorQuestion } from '../../../shared/statistics/factor-question.ts';
import { lean, nextBest, split } from '../../../shared/statistics/lean.ts';
import type { Codes, Rows } from '../../../shared/statistics/rows.ts';
import { ruledRows } from '../../../shared/statistics/ruling.ts';
import { logSlope, lumpedLook } from '../../../shared/statistics/size-explained.ts';
import { sizeQuestion } from '../../../shared/statistics/size-question.ts';

const DEMAND = { level: 0.95, margin: 0.02, scaleError: 0.02 };

interface Piece {
  weight: number;
  share: number;
  member: number;
  grade: number;
  style: number;
}

/** Everything that is said of a club; the order of the pieces does not matter for it. */
function answers(pieces: readonly Piece[], unit = 1) {
  const rows: Rows = {
    count: pieces.length,
    base: pieces.map(({ weight }) => weight * unit),
    loss: pieces.map(({ weight, share }) => weight * share * unit),
    member: pieces.map(({ member }) => member),
  };
  const grade: Codes = { codes: pieces.map((piece) => piece.grade), levels: 3 };
  const style: Codes = { codes: pieces.map((piece) => piece.style), levels: 2 };
  const { within, range, ...size } = sizeQuestion(rows, [grade, style], DEMAND);
  const { fit: _fit, ...grades } = factorQuestion(rows, grade, [style], DEMAND);
  const look = lumpedLook(rows);
  const bet = within === null ? null : lean(within.fit, within.contrast);
  const next = range === null ? null : nextBest(rows, range);
  return {
    size,
    grades,
    look: { bigMinusSmall: look.bigMinusSmall },
    slope: look.slope === null ? null : look.slope * unit,
    logSlope: logSlope(rows, [grade, style]),
    heads: within === null ? null : split(within.fit),
    bet,
    next,
    range,
    ruled: ruledRows(rows)?.checkpoint ?? null,
  };
}

/** Every number in an answer, with its path. */
function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => numbersIn(inner, `${path}.${name}`));
}

/** Words and nothings in an answer, with their path. */
function wordsIn(value: unknown, path = ''): string[] {
  if (typeof value === 'number' || typeof value === 'function') return [];
  if (typeof value !== 'object' || value === null) return [`${path}: ${value}`];
  return Object.entries(value).flatMap(([name, inner]) => wordsIn(inner, `${path}.${name}`));
}

function expectFinite(answer: unknown): void {
  const wrong = numbersIn(answer).filter(([, value]) => !Number.isFinite(value));
  expect(wrong).toEqual([]);
}

function expectAlike(found: unknown, other: unknown): void {
  expect(wordsIn(other)).toEqual(wordsIn(found));
  const [all, others] = [numbersIn(found), numbersIn(other)];
  expect(others.map(([path]) => path)).toEqual(all.map(([path]) => path));
  all.forEach(([path, value], place) => {
    const off = Math.abs(value - (others[place]?.[1] ?? Number.NaN));
    expect(off, path).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
  });
}

/** Clubs as they come, with what is odd in them made likely: copies, one weight, collinear grades, nothing off. */
const anyPiece = (members: number): fc.Arbitrary<Piece> =>
  fc.record({
    weight: fc.oneof(fc.constantFrom(10, 12, 14), fc.double({ min: 0.1, max: 50, noNaN: true })),
    share: fc.oneof(fc.constantFrom(0, 0.2, 0.25), fc.double({ min: 0, max: 0.99, noNaN: true })),
    member: fc.integer({ min: 0, max: members - 1 }),
    grade: fc.integer({ min: -1, max: 2 }),
    style: fc.integer({ min: -1, max: 1 }),
  });
const anyClub = fc
  .integer({ min: 1, max: 6 })
  .chain((members) => fc.array(anyPiece(members), { maxLength: 40 }));

/** A club that has something to say: its numbers must not hang on the last digit of a rule's threshold. */
const plainClub = fc.array(
  fc.record({
    weight: fc.double({ min: 8, max: 20, noNaN: true }),
    share: fc.double({ min: 0.1, max: 0.4, noNaN: true }),
    member: fc.integer({ min: 0, max: 5 }),
    grade: fc.integer({ min: -1, max: 2 }),
    style: fc.integer({ min: -1, max: 1 }),
  }),
  { minLength: 30, maxLength: 60 },
);

describe('of any club', () => {
  test('nothing is thrown, and no number is missing', () => {
    fc.assert(
      fc.property(anyClub, (pieces) => {
        expectFinite(answers(pieces));
      }),
      { numRuns: 1000 },
    );
  });

  test('too early shows no interval, all else shows one around its difference', () => {
    fc.assert(
      fc.property(anyClub, (pieces) => {
        const { size, grades } = answers(pieces);
        for (const { verdict, low, high, difference, reason } of [size, ...grades.pairs]) {
          if (verdict === 'early') expect([low, high, reason === null]).toEqual([null, null, false]);
          else expect(((low ?? 1) + (high ?? 1)) / 2).toBeCloseTo(difference ?? Number.NaN, 9);
        }
      }),
    );
  });

  const piece = { weight: 12, share: 0.2, member: 0, grade: 0, style: 0 };
  test.each<[string, Piece[], string]>([
    ['no pieces', [], 'no_pieces'],
    ['one piece', [piece], 'one_member'],
    [
      'one member',
      [0, 1, 2, 3, 4].map((more) => ({ ...piece, weight: 10 + more, share: 0.2 + more ** 2 / 100 })),
      'one_member',
    ],
    ['all equal', Array.from({ length: 30 }, (_, row) => ({ ...piece, member: row % 5 })), 'same_weights'],
    [
      'nothing came off',
      Array.from({ length: 30 }, (_, row) => ({
        ...piece,
        share: 0,
        member: row % 5,
        weight: 10 + (row % 7),
      })),
      'no_variation',
    ],
    [
      'grades that follow the member',
      Array.from({ length: 30 }, (_, row) => ({
        ...piece,
        member: row % 3,
        grade: row % 3,
        weight: 10,
        share: 0.2 + (row % 7) / 100,
      })),
      'same_weights',
    ],
    [
      'members with one piece each',
      Array.from({ length: 10_000 }, (_, row) => ({
        ...piece,
        member: row,
        weight: 10 + (row % 13) / 7,
        share: 0.1 + (row % 17) / 99,
      })),
      'nobody_both',
    ],
  ])('%s: %s', (_name, pieces, reason) => {
    const found = answers(pieces);
    expectFinite(found);
    expect([found.size.verdict, found.size.reason]).toEqual(['early', reason]);
    expect(found.grades.pairs.every(({ verdict }) => verdict === 'early')).toBe(true);
  });
});

describe('of a plain club', () => {
  test('the order of the pieces does not matter', () => {
    fc.assert(
      fc.property(plainClub, fc.infiniteStream(fc.nat()), (pieces, stream) => {
        const mixed = pieces
          .map((own) => ({ own, key: stream.next().value ?? 0 }))
          .sort((a, b) => a.key - b.key)
          .map(({ own }) => own);
        // The ruling is of the first pieces, and the best next piece of equal ones that of the first.
        const { ruled: _ruled, next: _next, ...found } = answers(pieces);
        const { ruled: _other, next: _last, ...turned } = answers(mixed);
        expectAlike(found, turned);
      }),
    );
  });

  test('nor does the unit', () => {
    fc.assert(
      fc.property(plainClub, (pieces) => {
        const [pounds, kilos] = [answers(pieces), answers(pieces, 0.45359237)];
        expectAlike({ ...kilos, range: null, next: null }, { ...pounds, range: null, next: null });
        expect([kilos.next?.member, kilos.next?.side]).toEqual([pounds.next?.member, pounds.next?.side]);
      }),
    );
  });

  test('nor do the numbers of the members', () => {
    fc.assert(
      fc.property(plainClub, (pieces) => {
        const renumbered = pieces.map((own) => ({ ...own, member: 1000 - 7 * own.member }));
        const [found, other] = [answers(pieces), answers(renumbered)];
        expect({ ...other, next: null }).toEqual({ ...found, next: null });
        expect(other.next?.member).toBe(1000 - 7 * (found.next?.member ?? 0));
      }),
    );
  });
});
