/** What a regression within members needs of the pieces: one pass, and sums for each member. */
import { addTo, at, rowOf } from './matrix.ts';
import { type Codes, numbered } from './rows.ts';

/** What is explained, and by what. Every factor gives one 0/1 column for each level present, and one for not told. */
export interface Regression {
  count: number;
  member: ArrayLike<number>;
  response: ArrayLike<number>;
  /** A measured column, such as the weight; it comes first. */
  measured: ArrayLike<number>;
  factors: readonly Codes[];
}

/** All columns and the response are taken around the member's own mean ("absorbed"). */
export interface MemberSums {
  count: number;
  members: number;
  /** How many columns; the measured one is number 0. */
  columns: number;
  /** The column of a level of a factor (-1 for not told); -1 where no piece has it. */
  columnOf: (factor: number, level: number) => number;
  /** By member: how many pieces. */
  pieces: Float64Array;
  /** By member: a matrix, columns x columns, of the sums of products of columns. */
  products: Float64Array;
  /** By member: the sums of the products of the columns with the response. */
  withResponse: Float64Array;
  /** The sum of squares of the response around the members' means. */
  responseSquares: number;
  /** The sum of squares of the response as it is. */
  rawResponseSquares: number;
  /** By column: its sum of squares as it is. */
  rawSquares: Float64Array;
}

/**
 * The sums of the pieces by member, for the regression in which only comparisons of a member with themself count
 * (fixed effects; Mundlak 1978). The measured column and the response are centred before they are multiplied; of 0/1
 * columns the counts are enough.
 * @example
 * // one member, 10 and 12 lb with shares of 0.2 and 0.3: products [2], withResponse [0.1], responseSquares 0.005
 */
export function memberSums(regression: Regression): MemberSums {
  const { count, response, measured, factors } = regression;
  const { of, codes } = numbered(regression);
  const members = codes.length;
  const { columns, columnOf, columnsBy } = columnsOf(count, factors);
  const { pieces, means, responseMeans } = meansOf(regression, of, members);
  const products = new Float64Array(members * columns * columns);
  const withResponse = new Float64Array(members * columns);
  const levels = new Float64Array(members * columns);
  const rawSquares = new Float64Array(columns);
  let [responseSquares, rawResponseSquares] = [0, 0];
  for (let row = 0; row < count; row++) {
    const member = of[row] ?? 0;
    const [block, line] = [member * columns * columns, member * columns];
    const x = (measured[row] ?? 0) - (means[member] ?? 0);
    const y = (response[row] ?? 0) - (responseMeans[member] ?? 0);
    responseSquares += y * y;
    rawResponseSquares += (response[row] ?? 0) ** 2;
    addTo(rawSquares, 0, (measured[row] ?? 0) ** 2);
    addTo(products, block, x * x);
    addTo(withResponse, line, x * y);
    for (let factor = 0; factor < columnsBy.length; factor++) {
      const column = columnsBy[factor]?.[row] ?? 0;
      addTo(rawSquares, column, 1);
      addTo(levels, line + column, 1);
      addTo(withResponse, line + column, y);
      addTo(products, block + column * columns, x);
      for (let other = 0; other <= factor; other++) {
        addTo(products, block + column * columns + (columnsBy[other]?.[row] ?? 0), 1);
      }
    }
  }
  for (let member = 0; member < members; member++) {
    const counts = rowOf(levels, member, columns);
    centreCounts(rowOf(products, member, columns * columns), counts, at(pieces, member));
  }
  const sums = { products, withResponse, responseSquares, rawResponseSquares, rawSquares };
  return { count, members, columns, columnOf, pieces, ...sums };
}

/** Counts of pieces in two levels become sums of products around the means; the upper half becomes the lower. */
function centreCounts(products: Float64Array, levels: Float64Array, pieces: number): void {
  const columns = levels.length;
  for (let column = 1; column < columns; column++) {
    for (let other = 0; other <= column; other++) {
      const place = column * columns + other;
      // Whole numbers are multiplied first: exactly 0 where either level is all of the member's pieces.
      const value = (products[place] ?? 0) - ((levels[column] ?? 0) * (levels[other] ?? 0)) / pieces;
      products[place] = value;
      products[other * columns + column] = value;
    }
  }
}

/** By member: how many pieces, and the means of the measured column and of the response. */
function meansOf({ count, measured, response }: Regression, of: Int32Array, members: number) {
  const pieces = new Float64Array(members);
  const means = new Float64Array(members);
  const responseMeans = new Float64Array(members);
  for (let row = 0; row < count; row++) {
    const member = of[row] ?? 0;
    addTo(pieces, member, 1);
    addTo(means, member, measured[row] ?? 0);
    addTo(responseMeans, member, response[row] ?? 0);
  }
  for (let member = 0; member < members; member++) {
    means[member] = at(means, member) / at(pieces, member);
    responseMeans[member] = at(responseMeans, member) / at(pieces, member);
  }
  return { pieces, means, responseMeans };
}

/** The measured column, then for each factor its levels present, not told first; and by factor the column of each row. */
function columnsOf(count: number, factors: readonly Codes[]) {
  const starts: number[] = [];
  let size = 0;
  for (const { levels } of factors) {
    starts.push(size);
    size += levels + 1;
  }
  const places = new Int32Array(size).fill(-1);
  const slots = factors.map(({ codes }, factor) => {
    const start = (starts[factor] ?? 0) + 1;
    const own = new Int32Array(count);
    for (let row = 0; row < count; row++) {
      const slot = start + (codes[row] ?? 0);
      own[row] = slot;
      places[slot] = 0;
    }
    return own;
  });
  let columns = 1;
  for (let slot = 0; slot < size; slot++) if (places[slot] === 0) places[slot] = columns++;
  for (const own of slots) for (let row = 0; row < count; row++) own[row] = places[own[row] ?? 0] ?? 0;
  const columnOf = (factor: number, level: number): number =>
    level >= -1 && level < (factors[factor]?.levels ?? -1)
      ? at(places, (starts[factor] ?? 0) + level + 1)
      : -1;
  return { columns, columnOf, columnsBy: slots };
}
