/** The rows that a method looks at: pieces of one cut in posting order, one entry a row in each array. */

export interface Rows {
  count: number;
  /** The weight that the loss is a share of, above 0: bought, or what went into the heat. Grams, or any unit. */
  base: ArrayLike<number>;
  /** What was lost of it, in the same unit. */
  loss: ArrayLike<number>;
  /** A whole number from 0 for each member. */
  member: ArrayLike<number>;
}

/** A factor of the rows: a code for each into its levels; -1 where it was not told. */
export interface Codes {
  codes: ArrayLike<number>;
  /** How many levels there are; codes are below it. */
  levels: number;
}

/**
 * A number for each row. A loop: of a great many rows `Float64Array.from` takes several times as long.
 * @example byRow(3, (row) => row / 2) // [0, 0.5, 1]
 */
export function byRow(count: number, of: (row: number) => number): Float64Array {
  const numbers = new Float64Array(count);
  for (let row = 0; row < count; row++) numbers[row] = of(row);
  return numbers;
}

/**
 * The shares lost, one a row.
 * @example lostShares({ count: 1, base: [10], loss: [2], member: [0] }) // [0.2]
 */
export const lostShares = ({ count, base, loss }: Rows): Float64Array =>
  byRow(count, (row) => (loss[row] ?? 0) / (base[row] ?? 0));

/** The rows' members under other numbers. */
export interface Numbered {
  /** By row: from 0, in the order of the members' first rows, whatever their codes are. */
  of: Int32Array;
  /** By number: the member's code. */
  codes: number[];
}

/** @example numbered({ count: 3, member: [7, 2, 7] }) // of [0, 1, 0], codes [7, 2] */
export function numbered({ count, member }: Pick<Rows, 'count' | 'member'>): Numbered {
  const numbers: number[] = [];
  const of = new Int32Array(count);
  const codes: number[] = [];
  for (let row = 0; row < count; row++) {
    const code = member[row] ?? 0;
    let number = numbers[code];
    if (number === undefined) {
      number = codes.push(code) - 1;
      numbers[code] = number;
    }
    of[row] = number;
  }
  return { of, codes };
}

/** The rows at these places, in their order. */
export function rowsAt({ base, loss, member }: Rows, places: ArrayLike<number>): Rows {
  const pick = (from: ArrayLike<number>) =>
    byRow(places.length, (row) => from[places[row] ?? -1] ?? Number.NaN);
  return { count: places.length, base: pick(base), loss: pick(loss), member: pick(member) };
}

/** A factor of the rows at these places, in their order. */
export const codesAt = ({ codes, levels }: Codes, places: ArrayLike<number>): Codes => ({
  codes: byRow(places.length, (row) => codes[places[row] ?? -1] ?? -1),
  levels,
});
