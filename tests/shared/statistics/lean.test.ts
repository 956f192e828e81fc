/** What a small club gets: heads, a bet, a stake, the piece that would teach most. */
import { describe, expect, test } from 'vitest';
import { standardNormal } from '../../../shared/statistics/distributions.ts';
import { lean, nextBest, split, stake } from '../../../shared/statistics/lean.ts';
import { withinContrasts } from '../../../shared/statistics/within-contrast.ts';
import { withinMember } from '../../../shared/statistics/within-member.ts';

type Row = readonly [member: number, weight: number, share: number];
const ask = (rows: readonly Row[]) => {
  const fit = withinMember({
    count: rows.length,
    member: rows.map(([member]) => member),
    measured: rows.map(([, weight]) => weight),
    response: rows.map(([, , share]) => share),
    factors: [],
  });
  return { fit, contrasts: withinContrasts(fit, [{ of: 0 }]) };
};
const bet = (rows: readonly Row[]) => {
  const { fit, contrasts } = ask(rows);
  return contrasts[0] === undefined ? null : lean(fit, contrasts[0]);
};

test('heads are counted of those who cooked big and small', () => {
  const rows: Row[] = [
    [0, 1, 0.2],
    [0, 2, 0.3],
    [1, 1, 0.2],
    [1, 2, 0.25],
    [2, 1, 0.3],
    [2, 2, 0.2],
    [3, 1, 0.2],
    [3, 1, 0.9],
    [4, 1, 0.2],
    [5, 1, 0.2],
    [5, 2, 0.2],
  ];
  expect(split(ask(rows).fit)).toEqual({ up: 2, down: 1 });
});

describe('the bet', () => {
  test('leans to where the pieces point, and never far for a few of them', () => {
    const up = bet([
      [0, 1, 0.2],
      [0, 2, 0.25],
      [1, 1, 0.3],
      [1, 2, 0.33],
    ]);
    const down = bet([
      [0, 1, 0.25],
      [0, 2, 0.2],
      [1, 1, 0.33],
      [1, 2, 0.3],
    ]);
    expect(up?.side).toBe('more');
    expect(down?.side).toBe('less');
    expect(down?.chance).toBeCloseTo(up?.chance ?? Number.NaN, 12);
    expect(up?.chance).toBeGreaterThan(0.5);
    expect(up?.chance).toBeLessThan(0.7);
  });

  test('is even where nothing points anywhere, and none where nobody has both', () => {
    expect(
      bet([
        [0, 1, 0.2],
        [0, 2, 0.2],
        [1, 1, 0.3],
        [1, 2, 0.3],
      ])?.chance,
    ).toBeCloseTo(0.5, 12);
    expect(
      bet([
        [0, 1, 0.2],
        [1, 2, 0.3],
      ]),
    ).toBeNull();
    expect(bet([])).toBeNull();
  });

  test('of many pieces is that of two normals', () => {
    // 400 members with a small and a big piece each, of whom 0.01 more is lost off the big one by a hair's breadth.
    const rows = Array.from({ length: 400 }, (_, member): Row[] => {
      const noise = 0.05 * standardNormal((member + 0.5) / 400);
      return [
        [member, 0, 0.25],
        [member, 1, 0.26 + noise],
      ];
    }).flat();
    const { fit, contrasts } = ask(rows);
    const contrast = contrasts[0];
    if (contrast === undefined) throw new Error('no contrast');
    const found = lean(fit, contrast);
    const variance =
      ((fit.residualSquares + 4 * 0.05 ** 2) / (fit.residualDf + 4)) * contrast.unitVariance +
      0.015 ** 2 * contrast.squaredShares;
    const weight = 0.01 ** 2 / (0.01 ** 2 + variance);
    const [mean, spread] = [weight * 0.01, Math.sqrt(weight * variance)];
    // The quantile of the chance, so that no distribution function is needed; t with 403 df is nearly the normal.
    expect(standardNormal(found?.chance ?? 0)).toBeCloseTo(mean / spread, 1);
    expect(found?.side).toBe('more');
  });

  test('stays a number however far the estimate', () => {
    const found = bet([
      [0, 1, 0.01],
      [0, 1.001, 0.9],
      [1, 1, 0.01],
      [1, 1.001, 0.9],
    ]);
    expect(found?.chance).toBeGreaterThan(0.5);
    expect(found?.chance).toBeLessThanOrEqual(1);
  });
});

describe('the stake', () => {
  test('is the margin on a usual piece until a difference is found', () => {
    const open = stake('open', -0.012, 0.02, 14, 5);
    expect(open.perPiece).toBeCloseTo(0.28, 12);
    expect(open.perPieceCost).toBeCloseTo(1.4, 12);
    expect(stake('early', null, 0.02, 14, null)).toEqual({ perPiece: 0.28, perPieceCost: null });
    expect(stake('less', -0.05, 0.02, 14, null).perPiece).toBeCloseTo(0.7, 12);
    expect(stake('same', -0.005, 0.02, 14, null).perPiece).toBeCloseTo(0.28, 12);
  });
});

describe('the piece that would teach most', () => {
  const rows = (pieces: readonly (readonly [member: number, weight: number])[]) => ({
    count: pieces.length,
    member: pieces.map(([member]) => member),
    base: pieces.map(([, weight]) => weight),
    loss: pieces.map(([, weight]) => weight / 4),
  });

  test('is a big one from who only cooked small ones, and the other way round', () => {
    const range = { small: 10, big: 16 };
    const pieces = [
      [7, 10],
      [7, 16],
      [3, 10],
      [3, 11],
      [5, 13],
    ] as const;
    // Gains: 3 has 2/3 of 5.5 squared, 7 has 2/3 of 3 squared, 5 has 1/2 of 3 squared.
    expect(nextBest(rows(pieces), range)).toEqual({ member: 3, side: 'big', weight: 16 });
    const others = [
      [7, 10],
      [7, 16],
      [3, 16],
      [3, 15],
      [5, 13],
    ] as const;
    expect(nextBest(rows(others), range)).toEqual({ member: 3, side: 'small', weight: 10 });
  });

  test('is none without pieces or without a range', () => {
    expect(nextBest(rows([]), { small: 10, big: 16 })).toBeNull();
    expect(nextBest(rows([[0, 10]]), { small: 10, big: 10 })).toBeNull();
  });
});
