/** The model of shares, its contrasts, board and predictions against R, and what must hold of any club. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { combination } from '../../../shared/statistics/combination.ts';
import { leaderboard } from '../../../shared/statistics/leaderboard.ts';
import { at } from '../../../shared/statistics/matrix.ts';
import { contrastBetween, contrastWithClub } from '../../../shared/statistics/member-contrast.ts';
import {
  expectation,
  predictPurchase,
  predictShare,
  usualWeights,
} from '../../../shared/statistics/prediction.ts';
import { randomIntercept } from '../../../shared/statistics/random-intercept.ts';
import { rowsAt } from '../../../shared/statistics/rows.ts';
import { cleanRows, logitShare } from '../../../shared/statistics/screening.ts';
import { pointOf, type ShareModel, shareModel } from '../../../shared/statistics/share-model.ts';
import { CLUB_NAMES, codesAt, distance, type Expected, oracleClub } from '../../oracles/clubs.ts';
import { type AnyClub, clubs, notNumbers, shuffled } from './any-club.ts';

/** The margin of the expected verdicts. */
const MARGIN = 0.01;

function cleanOf(club: AnyClub): AnyClub {
  const places = cleanRows(club.rows);
  return { rows: rowsAt(club.rows, places), grade: codesAt(club.grade, places) };
}
const modelOf = (club: AnyClub) => {
  const { rows, grade } = cleanOf(club);
  return shareModel(rows, grade);
};
const within = (pairs: readonly (readonly [number | null | undefined, unknown])[]) => {
  pairs.forEach(([actual, expected], place) => {
    expect(distance(actual, expected), `${place}: ${actual} for ${expected}`).toBeLessThanOrEqual(1);
  });
};

const USABLE = CLUB_NAMES.filter((name) => (oracleClub(name).brisket.mixed as Expected).usable);

describe.each(USABLE)('%s', (name) => {
  const club = oracleClub(name);
  const clean = cleanOf(club);
  const expected = club.brisket.mixed as Expected & {
    beta: Expected;
    se: Expected;
    unpenalised: Expected & { beta: Expected };
    memberContrasts: Expected[];
    board: Expected[];
    predictions: Expected & { rows: Expected[] };
    fixed: string[];
  };
  const model = shareModel(clean.rows, clean.grade) as ShareModel;
  const { fit } = model;
  const gradeOf = (grade: unknown) => club.gradeOrder.indexOf(String(grade));

  /** Each column's effect against the reference, the intercept at the reference. */
  const effect = (column: string) => {
    const reference = gradeOf(expected.referenceGrade);
    const own = pointOf(model, reference);
    if (column === '(Intercept)') return combination(fit, own);
    return combination(
      fit,
      pointOf(model, gradeOf(column)).map((value, place) => value - at(own, place)),
    );
  };

  test('the fit', () => {
    expect([fit.count, fit.members.size]).toEqual([expected.n, expected.members]);
    expect(model.reference).toBe(expected.fixed.length > 1 ? gradeOf(expected.referenceGrade) : null);
    expect(model.grades).toEqual(expected.fixed.slice(1).map(gradeOf));
    within([
      [fit.ratio, expected.lambda],
      [Math.sqrt(fit.memberVariance), expected.sdMember],
      [Math.sqrt(fit.pieceVariance), expected.sdCook],
      [fit.logLikelihood, expected.logLikREML],
      [fit.coefficients[0], expected.eta0],
    ]);
    for (const column of expected.fixed) {
      const { estimate, variance } = effect(column);
      within([
        [estimate, expected.beta[column]],
        [Math.sqrt(variance), expected.se[column]],
      ]);
    }
  });

  test('the fit without the penalty', () => {
    const { rows, grade } = clean;
    const plain = randomIntercept(
      {
        count: rows.count,
        response: Array.from(rows.base, (base, row) => logitShare(base, at(rows.loss, row))),
        columns: model.grades.map((level) => Array.from(grade.codes, (code) => Number(code === level))),
        member: rows.member,
      },
      { penalise: false },
    );
    if (plain === null) throw new Error('no fit');
    const intercept = plain.coefficients.reduce(
      (sum, coefficient, place) => sum - (place === 0 ? 0 : coefficient * at(plain.columnMeans, place)),
      at(plain.coefficients, 0),
    );
    within([
      [plain.ratio, expected.unpenalised.lambda],
      [Math.sqrt(plain.memberVariance), expected.unpenalised.sdMember],
      [Math.sqrt(plain.pieceVariance), expected.unpenalised.sdCook],
      [plain.logLikelihood, expected.unpenalised.logLik],
      ...expected.fixed.map(
        (column, place) =>
          [place === 0 ? intercept : plain.coefficients[place], expected.unpenalised.beta[column]] as const,
      ),
    ]);
  });

  test('every member against the others', () => {
    expect(expected.memberContrasts.length).toBe(fit.members.size);
    for (const row of expected.memberContrasts) {
      const member = club.members.indexOf(String(row.member));
      const found = contrastWithClub(model, member, MARGIN);
      expect([found?.pieces, found?.df, found?.verdict]).toEqual([row.n, row.df, row.verdict]);
      within([
        [fit.members.get(member)?.effect, row.u],
        [found?.logit.difference, row.contrast],
        [found?.logit.standardError, row.se],
        [found?.logit.low, row.lo],
        [found?.logit.high, row.hi],
        [found?.difference, row.pp],
        [found?.low, row.ppLo],
        [found?.high, row.ppHi],
      ]);
    }
  });

  test('the board', () => {
    const found = leaderboard(model, 0);
    expect(found.map(({ member }) => club.members[member])).toEqual(
      expected.board.map(({ member }) => member),
    );
    found.forEach(({ difference, standardError, separable }, place) => {
      const row = expected.board[place];
      expect(separable).toBe(row?.separated);
      within([
        [difference, row?.diffFromLeader],
        [standardError, row?.se],
      ]);
    });
  });

  test('purchases', () => {
    const { weightLb, pricePerLb, level, rows } = expected.predictions;
    for (const row of rows) {
      const buyer = {
        grade: gradeOf(row.grade),
        member: row.member === null ? null : club.members.indexOf(String(row.member)),
      };
      const found = predictShare(model, buyer, Number(level));
      const bought = predictPurchase(found, Number(weightLb), Number(pricePerLb));
      expect(found.known).toBe(row.member !== null);
      within([
        [found.centre, row.logit],
        [found.standardDeviation, row.sd],
        [found.df, row.df],
        [found.share, row.share],
        [found.low, row.shareLo],
        [found.high, row.shareHi],
        [bought.loss, row.trimLb],
        [bought.lossLow, row.trimLoLb],
        [bought.lossHigh, row.trimHiLb],
        [bought.price, row.pricePerUsableLb],
        [bought.priceLow, row.priceLo],
        [bought.priceHigh, row.priceHi],
      ]);
    }
  });
});

describe('too little for a model', () => {
  test.each(CLUB_NAMES.filter((name) => !USABLE.includes(name)))('%s', (name) => {
    expect(modelOf(oracleClub(name))).toBeNull();
  });

  const members = [0, 0, 1, 1, 2, 2, 3, 3];
  const club = (loss: readonly number[], member: readonly number[] = members) =>
    shareModel({ count: loss.length, base: loss.map(() => 10), loss, member });

  test('three members, and three pieces more than members, are the least', () => {
    expect(club([1, 2, 3, 2, 1, 3, 2, 2])).not.toBeNull();
    expect(club([1, 2, 3, 2, 1, 3, 2, 2], [0, 0, 1, 1, 1, 1, 1, 1])).toBeNull();
    expect(club([1, 2, 3, 2, 1], [0, 0, 1, 1, 2])).toBeNull();
    expect(club([])).toBeNull();
  });

  test('shares that do not vary, or not within members', () => {
    expect(club([2, 2, 2, 2, 2, 2, 2, 2])).toBeNull();
    expect(club([1, 1, 2, 2, 3, 3, 4, 4])).toBeNull();
  });

  test('rows that have no share', () => {
    expect(club([1, 2, 3, 2, 1, 3, 2, 0])).toBeNull();
    expect(club([1, 2, 3, 2, 1, 3, 2, 12])).toBeNull();
  });
});

describe('grades', () => {
  const { rows, grade } = cleanOf(oracleClub('p1_ordinary'));

  test('not told are a level of their own, and never the reference where some are told', () => {
    const codes = Array.from(grade.codes, (code, row) => (row % 3 === 0 ? code : -1));
    const model = shareModel(rows, { codes, levels: grade.levels });
    expect(model?.reference).toBe(1);
    expect(model?.grades).toEqual([0, 2, -1]);
  });

  test('that no piece has, or nobody knows, stand at the mean', () => {
    const model = shareModel(rows, grade) as ShareModel;
    const typical = predictShare(model, { grade: null, member: null });
    expect(typical.centre).toBe(model.fit.coefficients[0]);
    expect(predictShare(model, { grade: 3, member: null })).toEqual(typical);
  });

  test('of which there is one leave a model without', () => {
    const codes = Array.from(grade.codes, () => 2);
    const [one, none] = [shareModel(rows, { codes, levels: 3 }), shareModel(rows)];
    expect(one?.fit.ratio).toBe(none?.fit.ratio);
    expect(one?.grades).toEqual([]);
  });
});

describe('members', () => {
  const model = modelOf(oracleClub('p1_ordinary')) as ShareModel;

  test('one against another is the other way round', () => {
    const [one, other] = [contrastBetween(model, 0, 6, MARGIN), contrastBetween(model, 6, 0, MARGIN)];
    expect(one?.logit.difference).toBeCloseTo(-(other?.logit.difference ?? Number.NaN), 12);
    expect(one?.logit.low).toBeCloseTo(-(other?.logit.high ?? Number.NaN), 12);
    expect([one?.verdict, other?.verdict]).toEqual(['more', 'less']);
  });

  test('who have no pieces are not compared', () => {
    expect(contrastWithClub(model, 99, MARGIN)).toBeNull();
    expect(contrastBetween(model, 0, 99, MARGIN)).toBeNull();
    expect(contrastBetween(model, 0, 0, MARGIN)).toBeNull();
    expect(predictShare(model, { grade: 1, member: 99 })).toEqual(
      predictShare(model, { grade: 1, member: null }),
    );
  });

  test('with one or two pieces are listed below and never lead', () => {
    const board = leaderboard(model);
    const first = board.findIndex(({ provisional }) => provisional);
    expect(board.slice(first).every(({ provisional, pieces }) => provisional && pieces < 3)).toBe(true);
    expect(board[0]).toMatchObject({ place: 1, difference: 0, separable: false, provisional: false });
    for (const { low, share, high } of board) expect(low < share && share < high).toBe(true);
  });

  test('of equal effect stand in the order asked for', () => {
    const twins = [0, 1, 2, 3].flatMap((member) => [1, 2, 3].map((loss) => ({ member, loss })));
    const equal = shareModel({
      count: 12,
      base: Array(12).fill(10),
      loss: twins.map(({ loss }) => loss),
      member: twins.map(({ member }) => member),
    }) as ShareModel;
    expect(leaderboard(equal).map(({ member }) => member)).toEqual([0, 1, 2, 3]);
    const backward = leaderboard(equal, 3, (one, other) => other - one);
    expect(backward.map(({ member }) => member)).toEqual([3, 2, 1, 0]);
    expect(backward.some(({ separable }) => separable)).toBe(false);
  });

  test('several pieces of one buyer share what is known of them', () => {
    const { sharedVariance, pieceVariance, centre } = expectation(model, { grade: 1, member: null });
    const one = predictShare(model, { grade: 1, member: null });
    expect(one.standardDeviation).toBeCloseTo(Math.sqrt(sharedVariance + pieceVariance), 15);
    expect(one.centre).toBe(centre);
  });
});

test('weights that predictions know: all but the lightest and the heaviest twentieth', () => {
  expect(usualWeights([])).toBeNull();
  expect(usualWeights([12])).toEqual({ low: 12, high: 12 });
  expect(usualWeights(Array.from({ length: 21 }, (_, step) => 30 - step))).toEqual({ low: 11, high: 29 });
});

describe('of any club', () => {
  test('every figure is a number', () => {
    fc.assert(
      fc.property(clubs, (club) => {
        const model = modelOf(club);
        if (model === null) return;
        const contrasts = [...model.fit.members.keys()].map((member) =>
          contrastWithClub(model, member, 0.02),
        );
        const purchases = [-1, 0, 1, 2, null].map((grade) => predictShare(model, { grade, member: 0 }));
        expect(notNumbers([model, contrasts, leaderboard(model), purchases])).toEqual([]);
        for (const { low, share, high } of [...purchases, ...leaderboard(model)]) {
          expect(0 <= low && low <= share && share <= high && high <= 1).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  const same = (one: ShareModel | null, other: ShareModel | null) => {
    expect(one === null).toBe(other === null);
    if (one === null || other === null) return;
    expect(other.fit.ratio / one.fit.ratio).toBeCloseTo(1, 9);
    for (const [member, { effect }] of one.fit.members) {
      expect(other.fit.members.get(member)?.effect).toBeCloseTo(effect, 9);
    }
  };

  test('the order of the rows does not matter', () => {
    fc.assert(
      fc.property(clubs, fc.infiniteStream(fc.nat()), (club, chance) => {
        const clean = cleanOf(club);
        const turned = shuffled(clean, chance);
        same(shareModel(clean.rows, clean.grade), shareModel(turned.rows, turned.grade));
      }),
    );
  });

  test('pounds or kilos give the same', () => {
    fc.assert(
      fc.property(clubs, (club) => {
        const { rows, grade } = cleanOf(club);
        const grams = (weights: ArrayLike<number>) => Array.from(weights, (weight) => weight * 453.59237);
        same(
          shareModel(rows, grade),
          shareModel({ ...rows, base: grams(rows.base), loss: grams(rows.loss) }, grade),
        );
      }),
    );
  });
});
