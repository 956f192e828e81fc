/** Values by rank without sorting all of them: screening asks for a few of a great many, over and over. */
import { at } from './matrix.ts';

/** After so many halvings that were none, the rest is sorted: chosen values must not make it slow. */
const patience = (count: number): number => 16 + 4 * Math.log2(count);

/**
 * The value that stands at a place of the sorted values. Moves it there, with none above it before it and none below it
 * behind it (Hoare, "Algorithm 65: Find", Communications of the ACM 4:321, 1961), so that a near place is found fast.
 * @param values reordered; numbers, without NaN
 * @param rank from 0 for the least to length - 1
 * @example select(Float64Array.of(30, 10, 20), 1) // 20
 */
export function select(values: Float64Array, rank: number): number {
  let [low, high] = [0, values.length - 1];
  for (let rounds = patience(values.length); low < high; rounds--) {
    if (rounds < 0) {
      values.subarray(low, high + 1).sort();
      break;
    }
    const pivot = middleOf(at(values, low), at(values, (low + high) >>> 1), at(values, high));
    let [left, right] = [low, high];
    while (left <= right) {
      while ((values[left] ?? 0) < pivot) left += 1;
      while ((values[right] ?? 0) > pivot) right -= 1;
      if (left > right) break;
      const moved = values[left] ?? 0;
      values[left] = values[right] ?? 0;
      values[right] = moved;
      left += 1;
      right -= 1;
    }
    // Between right and left all are the pivot.
    if (rank <= right) high = right;
    else if (rank >= left) low = left;
    else break;
  }
  return at(values, rank);
}

/**
 * The value in the middle, or halfway between the two in the middle.
 * @param values reordered; at least one, without NaN
 * @example median(Float64Array.of(4, 1, 3, 2)) // 2.5
 */
export const median = (values: Float64Array): number => selectQuantile(values, 0.5);

/**
 * The p-quantile, to the last digit what `quantile` says of the sorted values.
 * @param values reordered; at least one, without NaN
 * @param p from 0 to 1
 * @example selectQuantile(Float64Array.of(4, 1, 3, 2), 0.25) // 1.75
 */
export function selectQuantile(values: Float64Array, p: number): number {
  if (values.length === 0) throw new RangeError('a quantile needs at least one value');
  const position = (values.length - 1) * p;
  const below = Math.floor(position);
  const low = select(values, below);
  if (below === position) return low;
  // The least of those behind it.
  let high = Number.POSITIVE_INFINITY;
  for (let place = below + 1; place < values.length; place++) {
    const value = values[place] ?? high;
    if (value < high) high = value;
  }
  return low + (position - below) * (high - low);
}

const middleOf = (one: number, two: number, three: number): number =>
  Math.max(Math.min(one, two), Math.min(Math.max(one, two), three));
