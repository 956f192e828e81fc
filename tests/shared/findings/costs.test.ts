/** What a weight on the plate cost: by hand, against R, and what must hold of any club. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Columns, columnsAt } from '../../../shared/club/columns.ts';
import { APART_BY, type AskedAverages, findAverages } from '../../../shared/findings/averages.ts';
import { type AskedBoard, findBoard } from '../../../shared/findings/board.ts';
import type { CalendarDay } from '../../../shared/measure/day.ts';
import type { Currency } from '../../../shared/measure/money.ts';
import { averaged } from '../../../shared/replies/averages.ts';
import { board } from '../../../shared/replies/board.ts';
import { randomIntercept } from '../../../shared/statistics/random-intercept.ts';
import { rowsAt } from '../../../shared/statistics/rows.ts';
import { cleanRows } from '../../../shared/statistics/screening.ts';
import { costModel } from '../../../shared/statistics/share-model.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';
import { speak } from '../../../shared/words/index.ts';
import { CLUB_NAMES, distance, type Expected, oracleClub } from '../../oracles/clubs.ts';
import dyestuff from '../../oracles/published/Dyestuff.json' with { type: 'json' };
import { clubs, notNumbers } from '../statistics/any-club.ts';
import { columnsOf } from './columns-of.ts';

const USD = 'USD' as Currency;
const BRISKET = 'beef/brisket-whole' as CutKey;
const ASKED: AskedAverages = {
  cut: BRISKET,
  measure: 'cost',
  also: 'trim',
  currency: USD,
  by: 'grade',
  filter: {},
  units: 'kg',
  mine: null,
};
const RANKED: AskedBoard = {
  cut: BRISKET,
  measure: 'cost',
  also: 'trim',
  currency: USD,
  since: null,
  until: null,
  hidden: [],
  mine: null,
};
const SHOWN = {
  cut: BRISKET,
  ranking: 'value',
  season: 'always',
  since: null,
  until: null,
  today: '2026-07-04' as CalendarDay,
  hidden: [],
  mine: null,
} as const;
const say = speak({ locale: 'en-US', units: 'lb', currency: USD });

const looked = (plain: Columns) => ({ plain, injected: null, also: columnsAt(plain, []) });
const find = (plain: Columns, asked: Partial<AskedAverages> = {}) =>
  findAverages(looked(plain), { ...ASKED, ...asked });
const rank = (plain: Columns, asked: Partial<AskedBoard> = {}) =>
  findBoard(looked(plain), { ...RANKED, ...asked });

/** Kilos on the plate and what was spent on them, of pieces of twice as many kilos. */
function costColumns(pieces: readonly (readonly [member: number, kilos: number, spent: number])[]): Columns {
  const plain = columnsOf({
    count: pieces.length,
    base: pieces.map(() => 1),
    loss: pieces.map(() => 0),
    member: pieces.map(([member]) => member),
  });
  return {
    ...plain,
    base: Float64Array.from(pieces, ([, kilos]) => kilos * 2000),
    loss: Float64Array.from(pieces, ([, kilos]) => kilos * 1000),
    spent: Float64Array.from(pieces, ([, , spent]) => spent),
  };
}

test('the block of each average, worked out by hand', () => {
  // Of three people: 20, 24 and 30 a kilo; 25 and 35; 40.
  const { figures } = find(
    costColumns([
      [0, 1, 20],
      [0, 2, 48],
      [0, 3, 90],
      [1, 2, 50],
      [1, 2, 70],
      [2, 5, 200],
    ]),
  ).whole;
  expect(figures).toMatchObject({ pieces: 6, members: 3, waiting: 0, untouched: 0, gained: 0 });
  expect(figures.meanShare).toBeCloseTo((20 + 24 + 30 + 25 + 35 + 40) / 6, 12);
  expect(figures.pooledShare).toBeCloseTo((20 + 48 + 90 + 50 + 70 + 200) / 15, 12);
  expect(figures.memberMean).toBeCloseTo((74 / 3 + 30 + 40) / 3, 12);
  expect(figures.median).toBeCloseTo(27.5, 12);
  expect([figures.lowerQuartile, figures.upperQuartile]).toEqual([24.25, 33.75]);

  // Each average is a ratio b / s of sums by member: S, r = s / S, e = b - estimate s.
  const byHand = (s: readonly number[], b: readonly number[]) => {
    const whole = s.reduce((sum, one) => sum + one, 0);
    const estimate = b.reduce((sum, one) => sum + one, 0) / whole;
    const r = s.map((one) => one / whole);
    const variance =
      s.reduce((sum, one, g) => {
        const e = (b[g] ?? 0) - estimate * one;
        return sum + e ** 2 / (1 - (r[g] ?? 0));
      }, 0) /
      whole ** 2;
    const a = r.map((one) => one ** 2 / (1 - one));
    const squares = (of: readonly number[]) => of.reduce((sum, one) => sum + one ** 2, 0);
    const df = 1 / (squares(r) + a.reduce((sum, one) => sum + one, 0) ** 2 - squares(a));
    return { estimate, variance, df };
  };
  const mean = byHand([3, 2, 1], [74, 60, 40]);
  expect(figures.meanDf).toBeCloseTo(mean.df, 12);
  expect(((figures.meanHigh ?? 0) + (figures.meanLow ?? 0)) / 2).toBeCloseTo(mean.estimate, 12);
  const pooled = byHand([6, 4, 5], [158, 120, 200]);
  expect(figures.pooledDf).toBeCloseTo(pooled.df, 12);
  expect(((figures.pooledHigh ?? 0) + (figures.pooledLow ?? 0)) / 2).toBeCloseTo(pooled.estimate, 12);
  // The average member has m - 1 = 2 degrees of freedom, of which t(0.975) is 0.95 sqrt(2 / (1 - 0.95^2)).
  const members = byHand([1, 1, 1], [74 / 3, 30, 40]);
  expect(members.df).toBeCloseTo(2, 12);
  const reach = 0.95 * Math.sqrt(2 / (1 - 0.95 ** 2)) * Math.sqrt(members.variance);
  expect(figures.memberHigh).toBeCloseTo(members.estimate + reach, 10);
  expect(figures.memberLow).toBeCloseTo(members.estimate - reach, 10);
});

test.each(CLUB_NAMES)('%s: the ranges are R’s, money in the place of what came off', (name) => {
  const club = oracleClub(name);
  const rows = rowsAt(club.rows, cleanRows(club.rows));
  const pieces = Array.from(
    { length: rows.count },
    (_, row) => [Number(rows.member[row]), Number(rows.base[row]), Number(rows.loss[row])] as const,
  );
  const plain = costColumns(pieces);
  const { figures } = find({ ...plain, confirmed: plain.confirmed.fill(1) }).whole;
  const { n, meanShare, pooledRatio, memberMean } = club.brisket.average as Expected &
    Record<string, Expected>;
  expect(figures.pieces).toBe(n);
  for (const [ours, theirs] of [
    [[figures.meanShare, figures.meanLow, figures.meanHigh], meanShare],
    [[figures.pooledShare, figures.pooledLow, figures.pooledHigh], pooledRatio],
    [[figures.memberMean, figures.memberLow, figures.memberHigh], memberMean],
  ] as const) {
    const expected = [theirs?.est, theirs?.lo95, theirs?.hi95];
    ours.forEach((value, at) => {
      expect(distance(value, expected[at])).toBeLessThanOrEqual(1);
    });
  }
});

test('the best value is read from the model of published data, on the scale of logarithms', () => {
  // Dyestuff (Davies & Goldsmith 1972), yields of six batches, as logarithms of costs.
  const response = dyestuff.data.y.map((grams) => grams / 1000);
  const groups = [...new Set(dyestuff.data.group)];
  const member = dyestuff.data.group.map((group) => groups.indexOf(group));
  const count = response.length;
  const model = costModel({
    count,
    base: response.map(() => 2),
    loss: response.map((y) => 2 * Math.exp(y)),
    member,
  });
  const fit = randomIntercept({ count, response, columns: [], member });
  expect(model?.fit.ratio).toBeCloseTo(fit?.ratio ?? Number.NaN, 8);
  expect(model?.fit.coefficients[0]).toBeCloseTo(fit?.coefficients[0] ?? Number.NaN, 12);
  const found = rank(costColumns(response.map((y, row) => [member[row] ?? 0, 2, 2 * Math.exp(y)] as const)));
  const levels = [...(fit?.members ?? [])]
    .map(([code, { effect }]) => ({ code, level: Math.exp((fit?.coefficients[0] ?? 0) + effect) }))
    .sort((one, other) => one.level - other.level);
  expect(found.rows.map((row) => row.member)).toEqual(levels.map(({ code }) => `member-00${String(code)}`));
  found.rows.forEach(({ share }, place) => {
    expect(share).toBeCloseTo(levels[place]?.level ?? Number.NaN, 8);
  });
});

describe('which pieces have a cost', () => {
  const plain = costColumns([
    [0, 1, 20],
    [0, 2, 48],
    [1, 2, 50],
    [1, 2, 70],
    [2, 5, 200],
    [2, 4, 100],
  ]);
  const euros = (rows: readonly number[]): Columns => ({
    ...plain,
    currency: {
      codes: plain.currency.codes.map((_code, row) => Number(rows.includes(row))),
      values: ['USD', 'EUR'],
    },
  });

  test('none in another currency, without a price, or not on the plate; each is counted once', () => {
    const spent = plain.spent.map((money, row) => (row === 2 ? Number.NaN : money));
    const loss = plain.loss.map((grams, row) =>
      row === 3 ? Number.NaN : row === 4 ? (plain.base[row] ?? 0) : grams,
    );
    const { figures, uncosted } = find({ ...euros([1, 3]), spent, loss }).whole;
    expect(figures).toMatchObject({ pieces: 2, meanShare: 22.5 });
    expect(uncosted).toEqual({ unserved: 2, unpriced: 1, foreign: [{ currency: 'EUR', count: 1 }] });
  });

  test('of a filter its own are counted', () => {
    const member = 'member-001';
    const { whole, unfiltered } = find(euros([0, 2]), { filter: { member } });
    expect(whole.uncosted?.foreign).toEqual([{ currency: 'EUR', count: 1 }]);
    expect(unfiltered?.uncosted?.foreign).toEqual([{ currency: 'EUR', count: 2 }]);
  });

  test('none that waits in what came off', () => {
    const many = Array.from({ length: 20 }, (_, row) => [row % 4, 2 + row / 100, 40 + row] as const);
    const costs = costColumns(many);
    // All lose a fifth to the knife, but for one that loses nearly all.
    const loss = costs.base.map((base, row) => base * (row === 7 ? 0.9 : 0.2 + row / 1000));
    const found = findAverages({ plain: costs, injected: null, also: { ...costs, loss } }, ASKED);
    expect(found.whole.figures).toMatchObject({ pieces: 19, waiting: 1 });
  });

  test('what lost nothing or gained has one like any other', () => {
    const loss = plain.loss.map((grams, row) => (row === 0 ? 0 : row === 1 ? -100 : grams));
    expect(find({ ...plain, loss }).whole.figures).toMatchObject({ pieces: 6, untouched: 0, gained: 0 });
  });

  test('one that cost nothing is averaged, but has no place', () => {
    const spent = plain.spent.map((money, row) => (row === 0 ? 0 : row === 1 ? -3 : money));
    expect(find({ ...plain, spent }).whole.figures.pieces).toBe(6);
    expect(rank({ ...plain, spent })).toMatchObject({ pieces: 4, free: 2 });
  });

  test('bands of size are of what was bought, whatever got to the plate', () => {
    const keys = find(plain, { by: 'size' }).groups.map(({ figures }) => figures.key);
    expect(keys).toEqual(['2-4 kg', '4-6 kg', '8-10 kg', '10-12 kg']);
  });

  test('costs without a currency are a fault of ours', () => {
    const { currency: _currency, ...rest } = ASKED;
    expect(() => findAverages(looked(plain), rest)).toThrow(RangeError);
  });
});

/** Some pieces on the plate, with prices in two currencies, or none. */
const priced = fc
  .tuple(clubs, fc.infiniteStream(fc.tuple(fc.integer({ min: -500, max: 50_000 }), fc.nat(9))))
  .map(([{ rows, grade }, prices]) => {
    const plain = columnsOf(rows, { grade });
    const drawn = Array.from({ length: plain.count }, () => prices.next().value);
    return {
      ...plain,
      spent: Float64Array.from(drawn, ([cents, kind]) => (kind === 9 ? Number.NaN : cents / 100)),
      loss: plain.loss.map((loss, row) => (drawn[row]?.[1] === 8 ? Number.NaN : loss)),
      currency: {
        codes: Int32Array.from(drawn, ([, kind]) => (kind === 9 ? -1 : Number(kind > 5))),
        values: ['USD', 'EUR'],
      },
    } satisfies Columns;
  });

describe('of any club', () => {
  test('no hole, no NaN and no exception, in figures and in words', () => {
    fc.assert(
      fc.property(priced, (plain) => {
        const replies = [
          ...APART_BY.map((by) => {
            const asked = { ...ASKED, by, mine: 'member-000' };
            return averaged(asked, findAverages(looked(plain), asked), say);
          }),
          ...[null, 'member-001', 'stranger'].map((mine) =>
            board({ ...SHOWN, mine }, rank(plain, { mine }), say),
          ),
        ];
        for (const { answer, lines = [], table = [], small = [], picture, figures } of replies) {
          expect(notNumbers(figures)).toEqual([]);
          const text = [answer, ...lines, ...table.flat(), ...small, picture?.alt ?? ''].join('\n');
          expect(text).not.toMatch(/\bNaN\b|undefined|\bnull\b|Infinity/);
          expect(JSON.stringify(picture ?? {})).not.toMatch(/NaN|Infinity|:null/);
          expect(lines.length).toBeLessThanOrEqual(4);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('what pieces in another currency cost changes nothing', () => {
    fc.assert(
      fc.property(priced, fc.double({ min: 0.01, max: 1000, noNaN: true }), (plain, rate) => {
        const spent = plain.spent.map((money, row) =>
          plain.currency.codes[row] === 1 ? money * rate + 1 : money,
        );
        expect(find({ ...plain, spent })).toEqual(find(plain));
        expect(rank({ ...plain, spent })).toEqual(rank(plain));
      }),
      { numRuns: 40 },
    );
  });

  test('a member who changes their name changes nothing', () => {
    fc.assert(
      fc.property(priced, (plain) => {
        const values = plain.member.values.map((name) => `other-${name}`);
        const renamed = { ...plain, member: { ...plain.member, values } };
        const { most, ...found } = find(plain);
        expect({ ...find(renamed), most: null }).toEqual({ ...found, most: null });
        const levels = (columns: Columns) => rank(columns).rows.map(({ member: _member, ...row }) => row);
        expect(levels(renamed)).toEqual(levels(plain));
      }),
      { numRuns: 40 },
    );
  });

  test('all prices times two: all costs times two, and the same places', () => {
    fc.assert(
      fc.property(priced, (plain) => {
        const dearer = { ...plain, spent: plain.spent.map((money) => 2 * money) };
        const [one, other] = [find(plain).whole.figures, find(dearer).whole.figures];
        expect(other.pieces).toBe(one.pieces);
        expect(other.pooledShare).toBe(one.pooledShare === null ? null : 2 * one.pooledShare);
        expect(other.meanLow).toBe(one.meanLow === null ? null : 2 * one.meanLow);
        const [before, after] = [rank(plain), rank(dearer)];
        expect(after.missing).toBe(before.missing);
        after.rows.forEach(({ share }, place) => {
          expect(share).toBeCloseTo(2 * (before.rows[place]?.share ?? Number.NaN), 5);
        });
      }),
      { numRuns: 40 },
    );
  });
});
