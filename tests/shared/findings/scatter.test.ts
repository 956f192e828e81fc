/** The points and lines of a question about size: each member's least squares, the widest of many, and cheap. */
import { describe, expect, test } from 'vitest';
import { scatterOf } from '../../../shared/findings/scatter.ts';

type Piece = readonly [grams: number, share: number, member: number];
const rowsOf = (pieces: readonly Piece[]) => ({
  count: pieces.length,
  base: pieces.map(([grams]) => grams),
  loss: pieces.map(([grams, share]) => grams * share),
  member: pieces.map(([, , member]) => member),
});

describe('pieces as points', () => {
  test('all of a few, with whose they are, and their middle', () => {
    const found = scatterOf(
      rowsOf([
        [4000, 0.25, 0],
        [6000, 0.15, 1],
      ]),
    );
    expect(found).toMatchObject({ count: 2, members: 2, lines: [], middle: { grams: 5000, share: 0.2 } });
    expect(found.pieces).toEqual([
      { grams: 4000, share: 0.25, member: 0 },
      { grams: 6000, share: 0.15, member: 1 },
    ]);
  });

  test('none of none', () => {
    expect(scatterOf(rowsOf([]))).toEqual({ pieces: [], count: 0, members: 0, lines: [], middle: null });
  });

  test('an own line is least squares, from the smallest to the biggest piece', () => {
    // 10, 12, 14 kg with 0.30, 0.20, 0.22: slope (2 * -0.04 - 2 * 0.06) / 8 = -0.02 a kilo around (12, 0.24).
    const { lines } = scatterOf(
      rowsOf([
        [10_000, 0.3, 0],
        [12_000, 0.2, 0],
        [14_000, 0.22, 0],
        [9000, 0.1, 1],
      ]),
    );
    expect(lines).toHaveLength(1);
    const [line] = lines;
    expect(line?.small).toEqual({ grams: 10_000, share: expect.closeTo(0.28, 12) });
    expect(line?.big).toEqual({ grams: 14_000, share: expect.closeTo(0.2, 12) });
  });

  test('pieces of one weight have no line', () => {
    expect(
      scatterOf(
        rowsOf([
          [5000, 0.1, 0],
          [5000, 0.3, 0],
        ]),
      ).lines,
    ).toEqual([]);
  });

  test('of 40 members the lines of those whose weights are widest apart', () => {
    const pieces = Array.from({ length: 40 }, (_none, member): Piece[] => [
      [5000, 0.2, member],
      [5000 + 100 * (member + 1), 0.2, member],
    ]).flat();
    const { lines, members } = scatterOf(rowsOf(pieces));
    expect(members).toBe(40);
    expect(lines.map(({ big }) => big.grams)).toEqual(
      Array.from({ length: 30 }, (_none, index) => 9000 - 100 * index),
    );
  });

  test('of a quarter of a million an even choice, in a time that is printed', () => {
    const pieces = Array.from(
      { length: 250_000 },
      (_none, index): Piece => [3000 + (index % 997), 0.2, index % 400],
    );
    const rows = rowsOf(pieces);
    const from = performance.now();
    const found = scatterOf(rows);
    console.log(`250,000 pieces as points: ${(performance.now() - from).toFixed(0)} ms`);
    expect(found.count).toBe(250_000);
    expect(found.pieces.length).toBeLessThanOrEqual(400);
    expect(found.pieces.length).toBeGreaterThan(300);
    expect(found.lines).toHaveLength(30);
    expect(found.middle?.share).toBeCloseTo(0.2, 12);
  });
});
