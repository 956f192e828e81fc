/** Averages against published and certified figures, and what must hold of any. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { averages } from '../../../shared/statistics/averages.ts';
import mavro from '../../published/nist/mavro.json' with { type: 'json' };
import numacc1 from '../../published/nist/numacc1.json' with { type: 'json' };
import numacc2 from '../../published/nist/numacc2.json' with { type: 'json' };
import numacc4 from '../../published/nist/numacc4.json' with { type: 'json' };

/** Losses `y` of bases `x`, one member unless told. */
const group = (x: readonly number[], y: readonly number[], member: readonly number[] = x.map(() => 0)) =>
  averages({ count: x.length, base: x, loss: y, member });

describe('NIST StRD, certified', () => {
  const alternating = ({ first, alternating: two, count }: typeof numacc2): number[] =>
    Array.from({ length: count }, (_, row) => (row === 0 ? first : (two[(row - 1) % 2] ?? 0)));

  /** The digits in which a value and a certified one agree: -log10 of the relative error. */
  const digits = (value: number | null, certified: string): number => {
    const error = Math.abs((value ?? Number.NaN) - Number(certified)) / Number(certified);
    return error === 0 ? 16 : -Math.log10(error);
  };

  // The values as losses of a base of 1, so that the shares are the values themselves. NumAcc4's deviation has no
  // more digits than its values keep of their tenths in double precision.
  test.each([
    ['Mavro', mavro.values, mavro.certified, 13, 12],
    ['NumAcc1', numacc1.values, numacc1.certified, 13, 13],
    ['NumAcc2', alternating(numacc2), numacc2.certified, 13, 13],
    ['NumAcc4', alternating(numacc4), numacc4.certified, 13, 8],
  ] as const)('%s', (_name, values, certified, meanDigits, deviationDigits) => {
    const found = group(
      values.map(() => 1),
      values,
    );
    expect(digits(found.meanShare, certified.mean)).toBeGreaterThanOrEqual(meanDigits);
    expect(digits(found.pooledShare, certified.mean)).toBeGreaterThanOrEqual(meanDigits);
    expect(digits(found.standardDeviation, certified.standardDeviation)).toBeGreaterThanOrEqual(
      deviationDigits,
    );
  });

  test('NoInt2 tells the mean of ratios from the ratio of means (Hartley & Ross, Nature 174:270)', () => {
    const found = group([4, 5, 6], [3, 4, 4]);
    expect(found.pooledShare).toBeCloseTo(11 / 15, 15);
    expect(found.meanShare).toBeCloseTo(133 / 180, 15);
    // The slope through the origin, 8/11, is neither.
    expect(found.pooledShare).not.toBeCloseTo(8 / 11, 3);
    expect(found.meanShare).not.toBeCloseTo(8 / 11, 3);
  });
});

describe('a research kitchen: B. Lowe, Experimental Cookery, tables 32 to 34', () => {
  const pounds = (whole: number, ounces: number) => whole + ounces / 16;
  // Published are the totals of the pieces, and so the pooled loss in per cent.
  test.each([
    ['hams, roasted', 7, pounds(126, 15), pounds(94, 7), 25.6],
    ['hams, boiled', 5, pounds(104, 5), pounds(82, 12), 20.67],
    ['veal legs', 6, pounds(107, 2), pounds(76, 1), 29.0],
  ])('%s: %d pieces, %d lb to %d lb', (_name, count, raw, cooked, percent) => {
    const each = <Value>(value: Value) => Array.from({ length: count }, () => value);
    const found = group(each(raw / count), each((raw - cooked) / count));
    expect(found.pieces).toBe(count);
    expect(Math.abs((found.pooledShare ?? 0) * 100 - percent)).toBeLessThanOrEqual(0.05);
  });
});

describe('small groups', () => {
  test('of nothing have no figures', () => {
    const { pieces, members, ...figures } = group([], []);
    expect([pieces, members]).toEqual([0, 0]);
    expect(Object.keys(figures)).toHaveLength(15);
    expect(Object.values(figures).every((figure) => figure === null)).toBe(true);
  });

  test('of one member have no range; of two, that of a t with one degree of freedom', () => {
    expect(group([10, 10], [2, 3], [1, 1])).toMatchObject({
      meanShare: 0.25,
      meanLow: null,
      meanHigh: null,
      meanDf: null,
    });
    // Two members with a share each: the mean's standard error is half their difference, and t(0.975, 1) is 12.7062.
    const two = group([10, 10], [2, 3], [1, 2]);
    expect(two.meanDf).toBeCloseTo(1, 12);
    expect(two.meanHigh).toBeCloseTo(0.25 + 12.706204736174698 * 0.05, 9);
    expect(two.meanLow).toBeCloseTo(0.25 - 12.706204736174698 * 0.05, 9);
  });

  test('of one piece have no deviation', () => {
    expect(group([10], [2])).toMatchObject({ meanShare: 0.2, median: 0.2, standardDeviation: null });
  });

  test('each piece, each pound and each member count once', () => {
    const found = group([10, 10, 20], [1, 2, 8], [7, 7, 9]);
    expect(found).toMatchObject({ pieces: 3, members: 2, pooledShare: 11 / 40, median: 0.2 });
    expect(found.meanShare).toBeCloseTo(0.7 / 3, 15);
    expect(found.memberMean).toBeCloseTo(0.275, 15);
  });
});

describe('of any pieces', () => {
  const pieces = fc.array(
    fc.record({
      base: fc.double({ min: 100, max: 20_000, noNaN: true }),
      share: fc.double({ min: 0, max: 0.999, noNaN: true }),
      member: fc.integer({ min: 0, max: 4 }),
    }),
    { minLength: 1, maxLength: 40 },
  );
  const of = (rows: readonly { base: number; share: number; member: number }[]) =>
    averages({
      count: rows.length,
      base: rows.map(({ base }) => base),
      loss: rows.map(({ base, share }) => base * share),
      member: rows.map(({ member }) => member),
    });

  test('every average lies between the least and the most', () => {
    fc.assert(
      fc.property(pieces, (rows) => {
        const found = of(rows);
        const shares = rows.map(({ share }) => share);
        const [least, most] = [Math.min(...shares) - 1e-9, Math.max(...shares) + 1e-9];
        for (const name of ['meanShare', 'pooledShare', 'memberMean', 'median', 'lowerQuartile'] as const) {
          expect(found[name]).toBeGreaterThanOrEqual(least);
          expect(found[name]).toBeLessThanOrEqual(most);
        }
        expect(found.lowerQuartile).toBeLessThanOrEqual(found.upperQuartile ?? -1);
      }),
    );
  });

  test('the order does not matter', () => {
    fc.assert(
      fc.property(pieces, (rows) => {
        const [found, turned] = [of(rows), of(rows.toReversed())];
        expect(turned.meanShare).toBeCloseTo(found.meanShare ?? Number.NaN, 12);
        expect(turned.pooledShare).toBeCloseTo(found.pooledShare ?? Number.NaN, 12);
        expect(turned.median).toBe(found.median);
      }),
    );
  });

  test('with equal weights the pound and the piece agree', () => {
    fc.assert(
      fc.property(pieces, (rows) => {
        const found = of(rows.map((row) => ({ ...row, base: 5000 })));
        expect(found.pooledShare).toBeCloseTo(found.meanShare ?? Number.NaN, 12);
      }),
    );
  });
});
