/** The debates against what R answers with dense matrices. */
import { describe, expect, test } from 'vitest';
import { factorQuestion } from '../../../shared/statistics/factor-question.ts';
import { projectedPieces } from '../../../shared/statistics/more-pieces.ts';
import { codesAt, rowsAt } from '../../../shared/statistics/rows.ts';
import { ruledRows } from '../../../shared/statistics/ruling.ts';
import { cleanRows } from '../../../shared/statistics/screening.ts';
import { logSlope, lumpedLook } from '../../../shared/statistics/size-explained.ts';
import { sizeQuestion } from '../../../shared/statistics/size-question.ts';
import { CLUB_NAMES, distance, type Expected, type OracleClub, oracleClub } from '../../oracles/clubs.ts';

const DEMAND = { margin: 0.01, scaleError: 0.02 };

/** The rows of a question with their factors. */
function asked({ rows, grade, style }: OracleClub, places: readonly number[]) {
  return { rows: rowsAt(rows, places), grade: codesAt(grade, places), style: codesAt(style, places) };
}
const running = (club: OracleClub) => asked(club, cleanRows(club.rows));
function ruled(club: OracleClub) {
  const places = ruledRows(club.rows)?.places;
  return places === undefined ? null : asked(club, places);
}
const within = (names: Record<string, [number | null | undefined, unknown]>) => {
  for (const [name, [actual, expected]] of Object.entries(names)) {
    expect(distance(actual, expected), `${name}: ${actual} for ${expected}`).toBeLessThanOrEqual(1);
  }
};

function checkSize({ rows, grade, style }: ReturnType<typeof asked>, level: number, expected: Expected) {
  const found = sizeQuestion(rows, [grade, style], { ...DEMAND, level });
  expect(found.pieces).toBe(expected.n);
  if (expected.verdict === 'same_weights') {
    expect([found.verdict, found.reason]).toEqual(['early', 'same_weights']);
    return;
  }
  expect(found.verdict).toBe(expected.verdict);
  const contrast = found.within?.contrast;
  expect(contrast?.estimable).toBe(expected.estimable);
  expect(contrast?.members).toBe(expected.members);
  const { range } = found;
  within({
    usualLow: [range?.small, expected.usualLow],
    usualHigh: [range?.big, expected.usualHigh],
    usualRange: [(range?.big ?? 0) - (range?.small ?? 0), expected.usualRange],
  });
  if (expected.verdict === 'early') {
    expect(found.reason).not.toBeNull();
    expect([found.low, found.high, found.standardError, found.df, found.p]).toEqual(Array(5).fill(null));
    return;
  }
  const error = found.standardError ?? Number.NaN;
  expect([found.level, found.margin, found.plainVerdict, found.scale?.verdict]).toEqual([
    expected.level,
    expected.margin,
    expected.plainVerdict,
    expected.correctedVerdict,
  ]);
  expect([contrast?.restsOnOne, found.within?.fit.residualDf]).toEqual([false, expected.dfModel]);
  within({
    est: [found.difference, expected.est],
    se: [error, expected.se],
    df: [found.df, expected.df],
    seModel: [contrast?.modelStandardError, expected.seModel],
    topMemberShare: [contrast?.topMemberShare, expected.topMemberShare],
    lo: [found.low, expected.lo],
    hi: [found.high, expected.hi],
    t: [(found.difference ?? 0) / error, expected.t],
    p: [found.p, expected.p],
    Sxx: [1 / (contrast?.unitVariance ?? 0), expected.Sxx],
    lambda: [found.scale?.shrinkage, expected.lambda],
    spurious: [found.scale?.spurious, expected.spurious],
    correctedEst: [found.scale?.corrected?.estimate, expected.correctedEst],
    correctedLo: [found.scale?.corrected?.low, expected.correctedLo],
    correctedHi: [found.scale?.corrected?.high, expected.correctedHi],
    kappaTip: [found.scale?.toExplain, expected.kappaTip],
    projectedExtra: [
      found.verdict === 'open' ? projectedPieces(found.pieces, error, level, DEMAND.margin) : null,
      expected.projectedExtra,
    ],
  });
}

function checkGrades(club: OracleClub, at: ReturnType<typeof asked>, level: number, expected: Expected) {
  const found = factorQuestion(at.rows, at.grade, [at.style], { ...DEMAND, level });
  const pairs = expected.pairs as Expected[];
  expect([found.level, found.tested]).toEqual([expected.level, expected.pairsTested]);
  expect(found.pairs.map(({ first, second }) => [club.gradeOrder[first], club.gradeOrder[second]])).toEqual(
    pairs.map(({ low, high }) => [low, high]),
  );
  pairs.forEach((pair, place) => {
    const own = found.pairs[place];
    expect(own?.verdict).toBe(pair.verdict);
    expect([own?.contrast.estimable, own?.contrast.members]).toEqual([pair.estimable, pair.members]);
    if (pair.verdict === 'early') {
      expect([own?.low, own?.high, own?.p, own?.holm, own?.level]).toEqual(Array(5).fill(null));
      expect(own?.reason).not.toBeNull();
      return;
    }
    within({
      est: [own?.difference, pair.est],
      se: [own?.standardError, pair.se],
      df: [own?.df, pair.df],
      seModel: [own?.contrast.modelStandardError, pair.seModel],
      topMemberShare: [own?.contrast.topMemberShare, pair.topMemberShare],
      t: [(own?.difference ?? 0) / (own?.standardError ?? 0), pair.t],
      p: [own?.p, pair.p],
      pHolm: [own?.holm, pair.pHolm],
      levelPerPair: [own?.level, pair.levelPerPair],
      lo: [own?.low, pair.lo],
      hi: [own?.high, pair.hi],
    });
  });
}

describe.each(CLUB_NAMES)('%s', (name) => {
  const club = oracleClub(name);
  const { brisket } = club;

  test('do bigger pieces lose less, so far', () => {
    checkSize(running(club), 0.95, brisket.biggerRunning as Expected);
  });

  test('do bigger pieces lose less, as ruled', () => {
    const at = ruled(club);
    expect(ruledRows(club.rows)?.checkpoint ?? 0).toBe(brisket.checkpoint);
    expect(at === null).toBe(brisket.biggerRuling === undefined);
    if (at !== null) checkSize(at, 0.99, brisket.biggerRuling as Expected);
  });

  test('do higher grades lose more, so far', () => {
    checkGrades(club, running(club), 0.95, brisket.gradesRunning as Expected);
  });

  test('do higher grades lose more, as ruled', () => {
    const at = ruled(club);
    if (at !== null) checkGrades(club, at, 0.99, brisket.gradesRuling as Expected);
  });

  test('all pieces lumped together', () => {
    const expected = brisket.explain as Expected | undefined;
    const found = lumpedLook(running(club).rows);
    if (expected === undefined) {
      expect(found).toEqual({
        slope: null,
        naiveStandardError: null,
        bigMinusSmall: null,
        betweenMemberSlope: null,
      });
      return;
    }
    within({
      slope: [found.slope, expected.lumpedSlopePerLb],
      naive: [found.naiveStandardError, expected.lumpedNaiveSE],
      bigMinusSmall: [found.bigMinusSmall, expected.bigMinusSmall],
      between: [found.betweenMemberSlope, expected.betweenMemberSlopePerLb],
    });
  });

  test('the slope of the logarithms', () => {
    const expected = brisket.allometric as Expected | undefined;
    const { rows, grade, style } = running(club);
    const found = logSlope(rows, [grade, style]);
    if (expected?.usable !== true) {
      expect([found?.low, found?.high, found?.p]).toEqual([null, null, null]);
      return;
    }
    within({
      slope: [found?.slope, expected.slope],
      se: [found?.standardError, expected.se],
      df: [found?.df, expected.df],
      lo95: [found?.low, expected.lo95],
      hi95: [found?.high, expected.hi95],
      tVs1: [found?.t, expected.tVs1],
      pVs1: [found?.p, expected.pVs1],
    });
  });
});
