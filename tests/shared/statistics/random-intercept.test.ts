/** The mixed model against published data, certified components of variance, and what must hold of any data. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { combination, pointAt } from '../../../shared/statistics/combination.ts';
import { at } from '../../../shared/statistics/matrix.ts';
import { type RandomIntercept, randomIntercept } from '../../../shared/statistics/random-intercept.ts';
import { distance } from '../../oracles/clubs.ts';
import siRstv from '../../oracles/nist/SiRstv.json' with { type: 'json' };
import smLs01 from '../../oracles/nist/SmLs01.json' with { type: 'json' };
import smLs04 from '../../oracles/nist/SmLs04.json' with { type: 'json' };
import smLs07 from '../../oracles/nist/SmLs07.json' with { type: 'json' };
import dyestuff from '../../oracles/published/Dyestuff.json' with { type: 'json' };
import orthodont from '../../oracles/published/Orthodont.json' with { type: 'json' };
import pastes from '../../oracles/published/Pastes_sample.json' with { type: 'json' };
import rail from '../../oracles/published/Rail.json' with { type: 'json' };
import sleepstudy from '../../oracles/published/sleepstudy.json' with { type: 'json' };

interface Expected {
  lambda: number;
  sigma2U: number;
  sigma2E: number;
  beta: Record<string, number>;
  se: Record<string, number>;
  blup: Record<string, number>;
  vcov?: number[][];
  logLik?: number;
}
interface Published {
  name: string;
  design: { columns: string[] };
  data: { y: number[]; group: (string | number)[]; X?: number[][] };
  refined: Expected;
  penalised: Expected;
}
const PUBLISHED: Published[] = [rail, dyestuff, sleepstudy, orthodont, pastes].map((data) => ({
  ...data,
  refined: named(data.refined),
  penalised: named(data.penalised),
}));

/** The records of each file have names of their own. */
function named(expected: Omit<Expected, 'beta' | 'se' | 'blup'> & Record<'beta' | 'se' | 'blup', object>) {
  const record = (of: object) =>
    Object.fromEntries(Object.entries(of).map(([name, value]) => [name, Number(value)]));
  return { ...expected, beta: record(expected.beta), se: record(expected.se), blup: record(expected.blup) };
}

/** A published set's observations, and its groups by code. */
function observed({ data, design }: Published) {
  const groups = [...new Set(data.group)];
  const columns = design.columns
    .slice(1)
    .map((_, place) => data.y.map((_, row) => data.X?.[row]?.[place + 1] ?? 0));
  const member = data.group.map((group) => groups.indexOf(group));
  return { groups, observations: { count: data.y.length, response: data.y, columns, member } };
}

/** In the columns as they are, not centred: the variance of a sum tells a covariance. */
function asPublished(fit: RandomIntercept) {
  const width = fit.coefficients.length;
  const unit = (...places: number[]) => {
    const plain = fit.columnMeans.map((_, place) => places.filter((each) => each === place).length);
    return plain.map((value, place) => value - at(plain, 0) * at(fit.columnMeans, place));
  };
  const varianceOf = (...places: number[]) => combination(fit, unit(...places)).variance;
  const each = Array.from({ length: width }, (_, place) => place);
  return {
    coefficients: each.map((place) => combination(fit, unit(place)).estimate),
    covariance: each.map((row) =>
      each.map((column) =>
        row === column
          ? varianceOf(row)
          : (varianceOf(row, column) - varianceOf(row) - varianceOf(column)) / 2,
      ),
    ),
  };
}

/** Of all figures the one farthest off, 1 being all that is allowed. */
function worst(
  found: RandomIntercept | null,
  groups: readonly (string | number)[],
  columns: readonly string[],
  expected: Expected,
) {
  if (found === null) return Number.POSITIVE_INFINITY;
  const { coefficients, covariance } = asPublished(found);
  return Math.max(
    distance(found.ratio, expected.lambda),
    distance(found.memberVariance, expected.sigma2U),
    distance(found.pieceVariance, expected.sigma2E),
    ...columns.flatMap((name, place) => [
      distance(coefficients[place], expected.beta[name]),
      distance(Math.sqrt(covariance[place]?.[place] ?? Number.NaN), expected.se[name]),
    ]),
    ...groups.map((group, code) => distance(found.members.get(code)?.effect, expected.blup[group])),
    ...(expected.vcov ?? []).flatMap((row, one) =>
      row.map((value, two) => distance(covariance[one]?.[two], value)),
    ),
    expected.logLik === undefined ? 0 : distance(found.logLikelihood, expected.logLik),
  );
}

describe('published data', () => {
  test.each(PUBLISHED.map((data) => [data.name, data] as const))('%s', (_name, data) => {
    const { groups, observations } = observed(data);
    const plain = randomIntercept(observations, { penalise: false });
    expect(worst(plain, groups, data.design.columns, data.refined)).toBeLessThanOrEqual(1);
    const penalised = randomIntercept(observations);
    expect(worst(penalised, groups, data.design.columns, data.penalised)).toBeLessThanOrEqual(1);
  });

  test('the figures printed in books', () => {
    const fitOf = ({ name }: { name: string }) => {
      const data = PUBLISHED.find((each) => each.name === name);
      return data && randomIntercept(observed(data).observations, { penalise: false });
    };
    const [rails, dyes] = [fitOf(rail), fitOf(dyestuff)];
    expect(Math.sqrt(rails?.memberVariance ?? 0)).toBeCloseTo(rail.published.sigmaU, 5);
    expect(Math.sqrt(rails?.pieceVariance ?? 0)).toBeCloseTo(rail.published.sigmaE, 6);
    expect(rails?.logLikelihood).toBeCloseTo(rail.published.logLik, 4);
    expect(dyes?.memberVariance).toBeCloseTo(dyestuff.published.varU, 0);
    expect(dyes?.pieceVariance).toBeCloseTo(dyestuff.published.varE, 0);
  });
});

describe('NIST StRD, certified', () => {
  test.each([
    ['SiRstv', siRstv, 12],
    ['SmLs01', smLs01, 12],
    ['SmLs04', smLs04, 9.8],
    ['SmLs07', smLs07, 4],
  ] as const)('%s', (_name, { y, group, derived }, digits) => {
    const fit = randomIntercept(
      { count: y.length, response: y, columns: [], member: group },
      { penalise: false },
    );
    const agree = (value: number, expected: number) =>
      -Math.log10(Math.abs(value - expected) / expected || 1e-16);
    expect(agree(fit?.memberVariance ?? 0, derived.sigma2U)).toBeGreaterThanOrEqual(digits);
    expect(agree(fit?.pieceVariance ?? 0, derived.sigma2E)).toBeGreaterThanOrEqual(digits);
  });
});

describe('of any data', () => {
  const row = fc.record({
    y: fc.double({ min: -3, max: 3, noNaN: true }),
    x: fc.integer({ min: 0, max: 3 }),
    member: fc.integer({ min: 0, max: 6 }),
  });
  const rows = fc.array(row, { maxLength: 40, size: 'max' });
  type Row = { y: number; x: number; member: number };
  const fitOf = (all: readonly Row[], penalise = true, response = (y: number) => y) =>
    randomIntercept(
      {
        count: all.length,
        response: all.map(({ y }) => response(y)),
        columns: [all.map(({ x }) => x)],
        member: all.map(({ member }) => member),
      },
      { penalise },
    );

  test('every figure is a number, and no variance below 0', () => {
    fc.assert(
      fc.property(rows, fc.boolean(), (all, penalise) => {
        const fit = fitOf(all, penalise);
        if (fit === null) return;
        const { members, coefficients, covariance, columnMeans, ...figures } = fit;
        const effects = [...members.values()].map(({ effect }) => effect);
        const numbers = [
          ...Object.values(figures),
          ...effects,
          ...coefficients,
          ...covariance,
          ...columnMeans,
        ];
        expect(numbers.filter((value) => !Number.isFinite(value))).toEqual([]);
        expect(Math.min(fit.ratio, fit.memberVariance, fit.pieceVariance)).toBeGreaterThanOrEqual(0);
        for (const code of members.keys()) {
          expect(combination(fit, pointAt(fit), new Map([[code, 1]])).variance).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  /** Seven members, and noise in every row, so that one ratio is best. */
  const plain = fc.array(row, { minLength: 20, maxLength: 40, size: 'max' }).map((all) =>
    all.map(({ y, x, member }, place) => ({
      y: y + Math.sin(7 * place),
      x,
      member: place < 14 ? place % 7 : member,
    })),
  );

  test('the order of the rows does not matter', () => {
    fc.assert(
      fc.property(plain, (all) => {
        const [fit, turned] = [fitOf(all), fitOf(all.toReversed())];
        if (fit === null || turned === null) return expect(fit).toBe(turned);
        expect(turned.ratio / fit.ratio).toBeCloseTo(1, 9);
        expect(turned.pieceVariance / fit.pieceVariance).toBeCloseTo(1, 9);
      }),
    );
  });

  test('a response in another unit gives the same in that unit', () => {
    fc.assert(
      fc.property(plain, fc.double({ min: 0.01, max: 1000, noNaN: true }), (all, unit) => {
        const [fit, scaled] = [fitOf(all), fitOf(all, true, (y) => unit * y + 7)];
        if (fit === null || scaled === null) return;
        expect(scaled.ratio / fit.ratio).toBeCloseTo(1, 6);
        expect(scaled.pieceVariance / unit ** 2 / fit.pieceVariance).toBeCloseTo(1, 6);
        expect(at(scaled.coefficients, 0)).toBeCloseTo(unit * at(fit.coefficients, 0) + 7, 5);
      }),
    );
  });

  test('equal members have a variance of 0, or one a little above it', () => {
    const all = Array.from({ length: 24 }, (_, row) => ({
      y: [1, 2, 4, 3][row % 4] ?? 0,
      x: 0,
      member: row >> 2,
    }));
    const observations = {
      count: 24,
      response: all.map(({ y }) => y),
      columns: [],
      member: all.map(({ member }) => member),
    };
    expect(randomIntercept(observations, { penalise: false })?.ratio).toBe(0);
    expect(randomIntercept(observations)?.ratio).toBeGreaterThan(0.01);
  });

  test('a column that repeats another, or nothing left over, has no fit', () => {
    const x = [1, 2, 3, 4, 5, 6, 7, 9];
    const twice = {
      count: 8,
      response: [3, 1, 4, 1, 5, 9, 2, 6],
      columns: [x, x],
      member: [0, 0, 1, 1, 2, 2, 3, 3],
    };
    expect(randomIntercept(twice)).toBeNull();
    expect(randomIntercept({ ...twice, columns: [], response: Array(8).fill(2) })).toBeNull();
    expect(randomIntercept({ count: 0, response: [], columns: [], member: [] })).toBeNull();
  });
});
