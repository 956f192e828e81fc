/** Fewer values that lie as all of them do: what a picture draws of many. */

/** A chart of more marks is slow to draw, and no clearer. */
export const MOST_MARKS = 400;

/**
 * At most `most` of the values, evenly out of their order from the least to the greatest, both of which are among them:
 * they lie as all of them do, and the same values give the same choice.
 * @param sorted ascending
 * @example thin([1, 2, 3, 4, 5], 3) // [1, 3, 5]
 */
export function thin(sorted: readonly number[], most: number): readonly number[] {
  if (sorted.length <= most) return sorted;
  if (most < 2) return sorted.slice(0, most);
  const apart = (sorted.length - 1) / (most - 1);
  return Array.from({ length: most }, (_none, index) => sorted[Math.round(index * apart)] ?? 0);
}
