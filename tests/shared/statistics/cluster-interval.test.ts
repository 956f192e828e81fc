/** Ranges of averages against R, and what must hold of any club. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  averageIntervals,
  type ClusterEstimate,
  clusterInterval,
} from '../../../shared/statistics/cluster-interval.ts';
import { at } from '../../../shared/statistics/matrix.ts';
import { rowsAt } from '../../../shared/statistics/rows.ts';
import { cleanRows } from '../../../shared/statistics/screening.ts';
import { CLUB_NAMES, distance, type Expected, oracleClub } from '../../oracles/clubs.ts';
import { clubs, notNumbers } from './any-club.ts';

const farthest = (found: ClusterEstimate, expected: Expected) =>
  Math.max(
    distance(found.estimate, expected.est),
    distance(found.standardError, expected.se),
    distance(found.df, expected.df),
    distance(found.low, expected.lo95),
    distance(found.high, expected.hi95),
  );

function check(places: readonly number[], club: ReturnType<typeof oracleClub>, expected: Expected) {
  const found = averageIntervals(rowsAt(club.rows, places));
  expect(places.length).toBe(expected.n);
  expect(found.meanShare.members).toBe(expected.members);
  expect(farthest(found.meanShare, expected.meanShare as Expected)).toBeLessThanOrEqual(1);
  expect(farthest(found.pooledShare, expected.pooledRatio as Expected)).toBeLessThanOrEqual(1);
  expect(farthest(found.memberMean, expected.memberMean as Expected)).toBeLessThanOrEqual(1);
}

test.each(CLUB_NAMES)('%s, all and by grade', (name) => {
  const club = oracleClub(name);
  const clean = cleanRows(club.rows);
  check(clean, club, club.brisket.average as Expected);
  const byGrade = Object.entries(club.brisket.averageByGrade as Record<string, Expected>);
  expect(byGrade.length).toBeGreaterThan(0);
  for (const [grade, expected] of byGrade) {
    const level = club.gradeOrder.indexOf(grade);
    check(
      clean.filter((row) => at(club.grade.codes, row) === level),
      club,
      expected,
    );
  }
});

describe('a range', () => {
  test('needs two members with some weight', () => {
    const none = { standardError: null, df: null, low: null, high: null };
    expect(clusterInterval([], [])).toEqual({ estimate: null, members: 0, ...none });
    expect(clusterInterval([0, 0], [0, 0])).toEqual({ estimate: null, members: 0, ...none });
    expect(clusterInterval([4, 0], [1, 0])).toEqual({ estimate: 0.25, members: 1, ...none });
    expect(clusterInterval([1e300, 1e-300], [1e299, 1e-301])).toMatchObject(none);
  });

  test('of equal weights is that of a mean', () => {
    const found = clusterInterval([1, 1, 1, 1], [0.1, 0.2, 0.3, 0.6]);
    expect(found.estimate).toBeCloseTo(0.3, 15);
    expect(found.standardError).toBeCloseTo(Math.sqrt(0.14 / 3 / 4), 15);
    expect(found.df).toBeCloseTo(3, 12);
  });

  test('is wider the oftener it shall be right', () => {
    const [narrow, wide] = [0.8, 0.99].map((level) => clusterInterval([3, 5, 2], [1, 2, 1], level));
    expect(wide?.low).toBeLessThan(narrow?.low ?? Number.NaN);
    expect(wide?.high).toBeGreaterThan(narrow?.high ?? Number.NaN);
  });
});

test('of any club: numbers or null, in order, and the same in kilos', () => {
  fc.assert(
    fc.property(clubs, ({ rows }) => {
      const clean = rowsAt(rows, cleanRows(rows));
      const found = averageIntervals(clean);
      expect(notNumbers(found)).toEqual([]);
      for (const { estimate, low, high, df } of Object.values(found)) {
        if (low === null || high === null || estimate === null) continue;
        expect([low <= estimate, estimate <= high, (df ?? 0) > 1 - 1e-9]).toEqual([true, true, true]);
      }
      const inKilos = averageIntervals({
        ...clean,
        base: Array.from(clean.base, (weight) => weight * 0.45359237),
        loss: Array.from(clean.loss, (weight) => weight * 0.45359237),
      });
      for (const name of ['meanShare', 'pooledShare', 'memberMean'] as const) {
        const [high, same] = [found[name].high ?? 0, inKilos[name].high ?? 0];
        expect(Math.abs(same - high)).toBeLessThanOrEqual(1e-8 * Math.max(1, high));
      }
    }),
  );
});
