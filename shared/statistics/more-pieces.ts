/** How many more pieces an open question may need. */
import { standardNormal } from './distributions.ts';

/** The chance that so many pieces tell no difference from one of the margin. */
const POWER = 0.9;

/**
 * How many more pieces, of a similar mix of members, tell no difference and one of the margin or more apart 9 times in 10
 * (the usual sample size for a difference seen at a level with a power: e.g. Cohen 1988). At most so many: fewer if the
 * difference is large. Not projected from the present difference, which is far too uncertain for that.
 * @param count pieces there are
 * @param standardError of the difference, now
 * @param level of the interval, 0.95 or 0.99
 * @param margin in the difference's unit; null comes back for 0
 * @example projectedPieces(149, 0.00962826147783001, 0.95, 0.01) // 1302.37
 */
export function projectedPieces(
  count: number,
  standardError: number,
  level: number,
  margin: number,
): number | null {
  if (!(margin > 0)) return null;
  const reach = standardNormal(1 - (1 - level) / 2) + standardNormal(POWER);
  return Math.max(0, count * (((standardError * reach) / margin) ** 2 - 1));
}

/**
 * `projectedPieces`, rounded up to two digits: the number that a member reads.
 * @example morePieces(149, 0.00962826147783001, 0.95, 0.01) // 1400
 */
export function morePieces(
  count: number,
  standardError: number,
  level: number,
  margin: number,
): number | null {
  const projected = projectedPieces(count, standardError, level, margin);
  return projected === null ? null : roundUp(projected);
}

/**
 * Whether that is far more than the club has: over twenty times.
 * @example isFarMore(1400, 149) // false
 */
export const isFarMore = (more: number, count: number): boolean => more > 20 * count;

/** Up to two digits, and to whole pieces. */
function roundUp(value: number): number {
  if (value <= 99) return Math.ceil(value);
  const unit = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Math.ceil(value / unit) * unit;
}
