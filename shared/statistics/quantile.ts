/**
 * The p-quantile of sorted values by linear interpolation between order statistics (Hyndman & Fan's type 7,
 * the default of R and of most spreadsheets).
 * @param sorted ascending, at least one value
 * @param p from 0 to 1
 * @example quantile([1, 2, 3, 4], 0.25) // 1.75
 */
export function quantile(sorted: ArrayLike<number>, p: number): number {
  const position = (sorted.length - 1) * p;
  const below = Math.floor(position);
  const low = sorted[below];
  if (low === undefined) throw new RangeError('quantile needs at least one value');
  const high = sorted[below + 1] ?? low;
  return low + (position - below) * (high - low);
}
