/** The regression within members: what it must agree with, what it must refuse, and what must not matter. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clusterInterval } from '../../../shared/statistics/cluster-interval.ts';
import { at } from '../../../shared/statistics/matrix.ts';
import { withinContrasts } from '../../../shared/statistics/within-contrast.ts';
import { withinMember } from '../../../shared/statistics/within-member.ts';

const seeded = (seed: number) => {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
};

test('of the weight alone it is the cluster-t of the members: s = Sxx, b = Sxy', () => {
  const members = fc.array(
    fc.array(
      fc.record({
        weight: fc.double({ min: 1, max: 30, noNaN: true }),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      { minLength: 2, maxLength: 6 },
    ),
    { minLength: 2, maxLength: 8 },
  );
  fc.assert(
    fc.property(members, (clubs) => {
      const rows = clubs.flatMap((own, member) => own.map((row) => ({ ...row, member })));
      const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
      const sums = clubs.map((own) => {
        const [weight, share] = [mean(own.map((row) => row.weight)), mean(own.map((row) => row.share))];
        return {
          squares: own.reduce((sum, row) => sum + (row.weight - weight) ** 2, 0),
          products: own.reduce((sum, row) => sum + (row.weight - weight) * (row.share - share), 0),
        };
      });
      const total = sums.reduce((sum, { squares }) => sum + squares, 0);
      const most = sums.reduce((top, { squares }) => Math.max(top, squares), 0);
      // Where one member is nearly all of it the two say so in their own ways.
      fc.pre(total > 1 && most < 0.999 * total && sums.every(({ squares }) => squares > 1e-6));
      const expected = clusterInterval(
        sums.map(({ squares }) => squares),
        sums.map(({ products }) => products),
      );
      const fit = withinMember({
        count: rows.length,
        member: rows.map(({ member }) => member),
        measured: rows.map(({ weight }) => weight),
        response: rows.map(({ share }) => share),
        factors: [],
      });
      const [found] = withinContrasts(fit, [{ of: 0 }]);
      expect(found?.estimate).toBeCloseTo(expected.estimate ?? Number.NaN, 10);
      expect(found?.standardError).toBeCloseTo(expected.standardError ?? Number.NaN, 10);
      expect((found?.df ?? 0) / (expected.df ?? Number.NaN)).toBeCloseTo(1, 8);
      expect(found?.members).toBe(expected.members);
    }),
  );
});

describe('a second way of coding the same club', () => {
  const random = seeded(11);
  const count = 90;
  const member = Array.from({ length: count }, (_, row) => row % 9);
  const grades = Array.from({ length: count }, () => Math.floor(4 * random()) - 1);
  const styles = Array.from({ length: count }, () => Math.floor(3 * random()));
  const measured = Array.from({ length: count }, () => 10 + 8 * random());
  const response = grades.map((grade, row) => 0.2 + 0.02 * grade + 0.01 * at(member, row) + 0.1 * random());
  const club = { count, member, measured, response };
  const grade = { codes: grades, levels: 3 };
  const style = { codes: styles, levels: 3 };

  test('levels that nobody posted, factors in another order and factors of one level change nothing', () => {
    const plain = withinMember({ ...club, factors: [grade, style] });
    const other = withinMember({
      ...club,
      factors: [{ codes: new Int8Array(count), levels: 1 }, style, { codes: grades, levels: 12 }],
    });
    const [first] = withinContrasts(plain, [
      { of: plain.sums.columnOf(0, 2), over: plain.sums.columnOf(0, 0) },
    ]);
    const [second] = withinContrasts(other, [
      { of: other.sums.columnOf(2, 2), over: other.sums.columnOf(2, 0) },
    ]);
    expect(other.residualDf).toBe(plain.residualDf);
    for (const name of ['estimate', 'standardError', 'df', 'unitVariance', 'topMemberShare'] as const) {
      expect(second?.[name]).toBeCloseTo(first?.[name] ?? Number.NaN, 11);
    }
  });

  test('a pair turned round has the other sign and the same error', () => {
    const fit = withinMember({ ...club, factors: [grade, style] });
    const [low, high] = [fit.sums.columnOf(0, 0), fit.sums.columnOf(0, 1)];
    const [up, down] = withinContrasts(fit, [
      { of: high, over: low },
      { of: low, over: high },
    ]);
    expect(down?.estimate).toBeCloseTo(-(up?.estimate ?? Number.NaN), 14);
    expect(down?.standardError).toBeCloseTo(up?.standardError ?? Number.NaN, 14);
  });

  test('not told is a level of its own, and a level that is not there has no column', () => {
    const { sums } = withinMember({ ...club, factors: [grade, style] });
    expect([sums.columns, sums.columnOf(0, -1), sums.columnOf(0, 3), sums.columnOf(5, 0)]).toEqual([
      8, 1, -1, -1,
    ]);
    // Every style was told.
    expect(sums.columnOf(1, -1)).toBe(-1);
  });
});

describe('what it refuses, and why', () => {
  const contrastOf = (
    rows: readonly (readonly [member: number, weight: number, share: number, grade?: number])[],
    asked: 'weight' | 'grade' = 'weight',
  ) => {
    const factors = asked === 'grade' ? [{ codes: rows.map(([, , , grade]) => grade ?? 0), levels: 2 }] : [];
    const fit = withinMember({
      count: rows.length,
      member: rows.map(([member]) => member),
      measured: rows.map(([, weight]) => weight),
      response: rows.map(([, , share]) => share),
      factors,
    });
    const { columnOf } = fit.sums;
    return withinContrasts(fit, [
      asked === 'weight' ? { of: 0 } : { of: columnOf(0, 1), over: columnOf(0, 0) },
    ])[0];
  };

  test.each([
    ['no_pieces', []],
    [
      'one_member',
      [
        [4, 10, 0.2],
        [4, 12, 0.25],
        [4, 14, 0.22],
      ],
    ],
    [
      'nobody_both',
      [
        [0, 10, 0.2],
        [1, 12, 0.25],
        [2, 14, 0.22],
      ],
    ],
    [
      'saturated',
      [
        [0, 10, 0.2],
        [0, 12, 0.25],
        [1, 14, 0.22],
      ],
    ],
    [
      'no_variation',
      [
        [0, 10, 0.2],
        [0, 12, 0.3],
        [1, 10, 0.4],
        [1, 12, 0.5],
        [2, 10, 0.1],
        [2, 12, 0.2],
      ],
    ],
    [
      'no_variation',
      [
        [0, 10, 0],
        [0, 12, 0],
        [1, 10, 0],
        [1, 12, 0],
        [2, 10, 0],
        [2, 12, 0],
      ],
    ],
    [
      'rests_on_one',
      [
        [0, 10, 0.2],
        [0, 12, 0.3],
        [0, 14, 0.3],
        [1, 12, 0.4],
        [1, 12, 0.5],
      ],
    ],
    [
      'few_members',
      [
        [0, 10, 0.2],
        [0, 12, 0.3],
        [0, 14, 0.3],
        [1, 12, 0.4],
        [1, 14, 0.5],
      ],
    ],
    [
      'mostly_one_member',
      [
        [0, 1, 0.2],
        [0, 20, 0.3],
        [0, 14, 0.3],
        [1, 12, 0.4],
        [1, 13, 0.5],
        [2, 12, 0.4],
        [2, 13, 0.2],
      ],
    ],
  ] as const)('%s', (reason, rows) => {
    expect(contrastOf(rows)?.reason).toBe(reason);
  });

  test('grades that are constant within members are not told apart', () => {
    const rows = [
      [0, 10, 0.2, 0],
      [0, 12, 0.3, 0],
      [1, 14, 0.3, 1],
      [1, 12, 0.4, 1],
      [2, 14, 0.5, 1],
      [2, 10, 0.4, 1],
    ] as const;
    expect(contrastOf(rows, 'grade')).toMatchObject({
      estimable: false,
      estimate: null,
      reason: 'nobody_both',
    });
  });

  test('a grade bought both ways by one member only rests on them', () => {
    const rows = [
      [0, 10, 0.2, 0],
      [0, 12, 0.3, 1],
      [0, 13, 0.25, 1],
      [1, 14, 0.3, 1],
      [1, 12, 0.4, 1],
      [2, 14, 0.5, 0],
      [2, 10, 0.4, 0],
    ] as const;
    expect(contrastOf(rows, 'grade')).toMatchObject({ estimable: true, reason: 'rests_on_one' });
  });

  test('a grade that always goes with the weight is not told from it', () => {
    const rows = [0, 1, 2, 3].flatMap((member) => [
      [member, 10, 0.2 + 0.01 * member, 0] as const,
      [member, 12, 0.3 - 0.02 * member, 1] as const,
      [member, 12, 0.28, 1] as const,
    ]);
    expect(contrastOf(rows, 'grade')).toMatchObject({ estimable: false, reason: 'nobody_both' });
  });
});
