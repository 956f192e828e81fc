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

/** The rows at these places, in their order. */
export function rowsAt({ base, loss, member }: Rows, places: readonly number[]): Rows {
  // A loop: `Float64Array.from` asks an iterator for each, which is several times as slow.
  const pick = (from: ArrayLike<number>) => {
    const picked = new Float64Array(places.length);
    for (let row = 0; row < places.length; row++) picked[row] = from[places[row] ?? -1] ?? Number.NaN;
    return picked;
  };
  return { count: places.length, base: pick(base), loss: pick(loss), member: pick(member) };
}

/** A factor of the rows at these places, in their order. */
export const codesAt = ({ codes, levels }: Codes, places: readonly number[]): Codes => ({
  codes: Int32Array.from(places, (place) => codes[place] ?? -1),
  levels,
});
