/** What a random-intercept model needs of its observations: sums by member, and products within members. */
import { at } from './matrix.ts';
import { numbered } from './rows.ts';

/** A response, and the columns that explain it. An intercept comes by itself. */
export interface Observations {
  count: number;
  /** Any unit. */
  response: ArrayLike<number>;
  /** One entry a row in each; none for an intercept alone. */
  columns: readonly ArrayLike<number>[];
  /** A whole number from 0 for each member. */
  member: ArrayLike<number>;
}

/** One member's totals of the centred response and of the centred columns. */
export interface MemberTotals {
  pieces: number;
  response: number;
  /** The first is that of the intercept: the number of pieces. */
  columns: Float64Array;
}

export interface MixedSums {
  count: number;
  /** How many columns, the intercept among them. */
  width: number;
  responseMean: number;
  /** By column what is taken off it: 0 for the intercept, else its mean. */
  columnMeans: Float64Array;
  /** By the code of a member that has pieces. */
  members: ReadonlyMap<number, MemberTotals>;
  /** Around the members' own means: width x width, sums of products of columns (0 for the intercept). */
  products: Float64Array;
  /** Around the members' own means: the sums of products of the columns with the response. */
  withResponse: Float64Array;
  /** Around the members' own means. */
  responseSquares: number;
  /** Around the grand mean. */
  totalSquares: number;
  /** By column, around the grand mean. */
  columnSquares: Float64Array;
}

/**
 * Everything is centred at its grand mean first, and squared around the members' means in a later pass, so that large
 * values keep their digits.
 * @example two members with responses 1, 3 and 5, 7: totals -4 and 4, responseSquares 4, totalSquares 20
 */
export function mixedSums({ count, response, columns, member }: Observations): MixedSums {
  const width = columns.length + 1;
  const { of, codes } = numbered({ count, member });
  const y = centred(response, count);
  const x = columns.map((column) => centred(column, count));
  const totalSquares = product(y.values, y.values);
  const columnSquares = Float64Array.of(count, ...x.map(({ values }) => product(values, values)));

  const pieces = totalsBy(of, codes.length, new Float64Array(count).fill(1));
  const responses = aroundMembers(of, pieces, y.values);
  const sums = x.map(({ values }) => aroundMembers(of, pieces, values));
  const members = new Map<number, MemberTotals>();
  codes.forEach((code, number) => {
    members.set(code, {
      pieces: at(pieces, number),
      response: at(responses, number),
      columns: Float64Array.of(at(pieces, number), ...sums.map((sum) => at(sum, number))),
    });
  });

  const products = new Float64Array(width * width);
  x.forEach(({ values }, row) => {
    for (let column = 0; column <= row; column++) {
      const sum = product(values, x[column]?.values ?? values);
      products[(row + 1) * width + column + 1] = sum;
      products[(column + 1) * width + row + 1] = sum;
    }
  });
  return {
    count,
    width,
    responseMean: y.mean,
    columnMeans: Float64Array.of(0, ...x.map(({ mean }) => mean)),
    members,
    products,
    withResponse: Float64Array.of(0, ...x.map(({ values }) => product(values, y.values))),
    responseSquares: product(y.values, y.values),
    totalSquares,
    columnSquares,
  };
}

/** A copy less its mean, of which the division's remainder is taken off too. */
function centred(column: ArrayLike<number>, count: number): { mean: number; values: Float64Array } {
  const values = new Float64Array(column).subarray(0, count);
  let mean = 0;
  for (let pass = 0; pass < 2; pass++) {
    const left = count === 0 ? 0 : total(values) / count;
    for (let row = 0; row < count; row++) values[row] = (values[row] ?? 0) - left;
    mean += left;
  }
  return { mean, values };
}

/** The totals by member; the values are then taken around the member's mean. */
function aroundMembers(of: Int32Array, pieces: Float64Array, values: Float64Array): Float64Array {
  const totals = totalsBy(of, pieces.length, values);
  const means = totals.map((sum, number) => sum / at(pieces, number));
  for (let row = 0; row < values.length; row++) {
    values[row] = (values[row] ?? 0) - (means[of[row] ?? 0] ?? 0);
  }
  return totals;
}

function totalsBy(of: Int32Array, members: number, values: Float64Array): Float64Array {
  const totals = new Float64Array(members);
  for (let row = 0; row < values.length; row++) {
    const number = of[row] ?? 0;
    totals[number] = (totals[number] ?? 0) + (values[row] ?? 0);
  }
  return totals;
}

function total(values: Float64Array): number {
  let sum = 0;
  for (let row = 0; row < values.length; row++) sum += values[row] ?? 0;
  return sum;
}

function product(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let row = 0; row < one.length; row++) sum += (one[row] ?? 0) * (other[row] ?? 0);
  return sum;
}
