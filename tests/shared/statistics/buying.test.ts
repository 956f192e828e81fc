/** What purchases are reckoned with: grades drawn towards nothing, what pieces share, a rule of thumb, how much is enough. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cholesky, inverse } from '../../../shared/statistics/cholesky.ts';
import { lowYield, piecesToBuy } from '../../../shared/statistics/feeding.ts';
import { jointExpectation } from '../../../shared/statistics/joint-expectation.ts';
import { timesVector } from '../../../shared/statistics/matrix.ts';
import { expectation } from '../../../shared/statistics/prediction.ts';
import { thumbExpectation } from '../../../shared/statistics/rule-of-thumb.ts';
import { type ShareModel, shareModel } from '../../../shared/statistics/share-model.ts';
import { shrinkGrades } from '../../../shared/statistics/shrunk-grades.ts';
import { drawClub } from '../../calibration/club.ts';
import { chanceOf } from '../../calibration/random.ts';

function modelOf(pieces: number, members: number): ShareModel {
  const habits = {
    slope: 0,
    ownSlopes: 0,
    ownSpreads: 0,
    trimmersBuyBigger: false,
    slips: 0,
    scaleError: 0,
    grades: [-0.02, 0, 0.02] as const,
  };
  const { rows, grade } = drawClub(habits, pieces, members, chanceOf(2, 'buying', pieces));
  const model = shareModel(rows, grade);
  if (model === null) throw new Error('the club has no model');
  return model;
}

const inverted = (matrix: Float64Array, size: number): Float64Array => {
  const root = cholesky(matrix, size);
  if (root === null) throw new Error('not positive definite');
  return inverse(root, size);
};

describe('grades drawn towards nothing', () => {
  const model = modelOf(40, 8);
  const { fit } = model;
  const width = fit.coefficients.length;
  const graded = (matrix: Float64Array) =>
    Float64Array.from({ length: (width - 1) ** 2 }, (_, place) => {
      const [row, column] = [Math.floor(place / (width - 1)) + 1, (place % (width - 1)) + 1];
      return matrix[row * width + column] ?? 0;
    });

  test('V_s = (V^-1 + P^-1)^-1 and b_s = V_s V^-1 b, with 0.1^2 on the diagonal of P and half of it off', () => {
    const before = inverted(graded(fit.covariance), width - 1);
    const prior = inverted(Float64Array.of(0.01, 0.005, 0.005, 0.01), width - 1);
    const after = inverted(
      before.map((value, place) => value + (prior[place] ?? 0)),
      width - 1,
    );
    const expected = timesVector(after, timesVector(before, fit.coefficients.slice(1)));
    const shrunk = shrinkGrades(model).fit;
    expected.forEach((value, place) => {
      expect(shrunk.coefficients[place + 1]).toBeCloseTo(value, 10);
    });
    graded(shrunk.covariance).forEach((value, place) => {
      expect(value).toBeCloseTo(after[place] ?? 0, 10);
    });
  });

  test('nothing moves under a prior that knows nothing, and no grade is left under one that knows all', () => {
    const free = shrinkGrades(model, 1e4).fit;
    free.coefficients.forEach((value, place) => {
      expect(value).toBeCloseTo(fit.coefficients[place] ?? 0, 6);
    });
    for (const [code, { effect }] of free.members)
      expect(effect).toBeCloseTo(fit.members.get(code)?.effect ?? 0, 6);
    const none = shrinkGrades(model, 1e-5).fit;
    for (const value of none.coefficients.slice(1)) expect(Math.abs(value)).toBeLessThan(1e-6);
  });

  test('a model without grades stays as it is', () => {
    const plain: ShareModel = { ...model, grades: [] };
    expect(shrinkGrades(plain)).toBe(plain);
  });
});

describe('what pieces of one buyer share', () => {
  const model = shrinkGrades(modelOf(40, 8));
  const [member = 0] = model.fit.members.keys();

  test.each([null, member])('two of one grade all of it (buyer %s)', (buyer) => {
    const { each, shared } = jointExpectation(model, [1, 1], buyer);
    expect(each[0]).toEqual(expectation(model, { grade: 1, member: buyer }));
    for (const value of shared) expect(value).toBeCloseTo(each[0]?.sharedVariance ?? 0, 12);
  });

  test('two of unlike grades less', () => {
    const { each, shared } = jointExpectation(model, [0, 2], null);
    expect(shared[0]).toBeCloseTo(each[0]?.sharedVariance ?? 0, 12);
    expect(shared[1]).toBeLessThan(Math.max(shared[0] ?? 0, shared[3] ?? 0));
    expect(shared[1]).toBe(shared[2]);
  });
});

describe('a rule of thumb', () => {
  const rule = { share: 0.2, members: 0.2, pieces: 0.2, level: 0.3 };

  test('by itself, without a piece', () => {
    const none = { count: 0, base: [], loss: [], member: [] };
    expect(thumbExpectation(rule, none)).toEqual({
      centre: Math.log(0.25),
      sharedVariance: expect.closeTo(0.09 + 0.04, 12),
      pieceVariance: 0.2 ** 2,
      df: Number.POSITIVE_INFINITY,
      known: false,
    });
  });

  test('is drawn towards the pieces there are, the more of them the more', () => {
    const pieces = (count: number) => ({
      count,
      base: Array.from({ length: count }, () => 10),
      loss: Array.from({ length: count }, () => 3),
      member: Array.from({ length: count }, (_, row) => row),
    });
    const centres = [0, 1, 3, 300].map((count) => thumbExpectation(rule, pieces(count)).centre);
    expect(centres).toEqual(centres.toSorted((one, other) => one - other));
    expect(centres.at(-1)).toBeCloseTo(Math.log(3 / 7), 2);
    // One piece: precisions 1 / 0.09 and 1 / 0.08.
    expect(centres[1]).toBeCloseTo(
      (Math.log(0.25) / 0.09 + Math.log(3 / 7) / 0.08) / (1 / 0.09 + 1 / 0.08),
      12,
    );
  });
});

describe('how much is enough', () => {
  const parts = { centre: 0.16, sharedVariance: 0.01, pieceVariance: 0.02, df: 8 };

  test('the low yield of one piece and of many', () => {
    const one = 1 / (1 + Math.exp(0.16 + 1.2815515655446004 * Math.sqrt(0.03)));
    expect(lowYield({ ...parts, known: false }, 1)).toBeCloseTo(one, 12);
    expect(lowYield({ ...parts, known: false }, 1e9)).toBeCloseTo(
      1 / (1 + Math.exp(0.16 + 1.2815515655446004 * 0.1)),
      9,
    );
    // t with 8 degrees of freedom, one-sided 0.9: 1.396815.
    expect(lowYield({ ...parts, known: true }, 1)).toBeCloseTo(
      1 / (1 + Math.exp(0.16 + 1.396815309 * Math.sqrt(0.03))),
      8,
    );
  });

  test('published: 127.5 oz at 61 % are 13.06 lb; 2 lb at 61 % are 3.28', () => {
    // USDA Food Buying Guide, method 1, example C, and appendix B.
    expect(piecesToBuy(127.5 / 16, 13.5, () => 0.61).buy).toBeCloseTo(13.06, 2);
    expect(piecesToBuy(2, 13.5, () => 0.61).buy).toBeCloseTo(3.28, 2);
  });

  test('whole pieces are the fewest that hold what is needed', () => {
    const need = fc.double({ min: 0.01, max: 1000, noNaN: true });
    const usual = fc.double({ min: 0.1, max: 30, noNaN: true });
    fc.assert(
      fc.property(need, usual, (needed, weight) => {
        const low = (pieces: number) => lowYield({ ...parts, known: false }, pieces);
        const { pieces, buy, low: used } = piecesToBuy(needed, weight, low);
        expect(used).toBe(low(pieces));
        expect(buy).toBe(needed / used);
        expect(buy).toBeLessThanOrEqual(pieces * weight);
        if (pieces > 1) expect(needed / low(pieces - 1)).toBeGreaterThan((pieces - 1) * weight);
      }),
    );
  });
});
