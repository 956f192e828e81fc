/** What an unusual piece may have been meant to be. */
import { distanceFrom, type UsualPiece } from './screening.ts';

/** One number of the piece times a factor: kilos typed as pounds, pounds typed as kilos, a point too far left or right. */
export interface Slip {
  of: 'base' | 'loss';
  change: 'pounds to kilos' | 'kilos to pounds' | 'ten times' | 'a tenth';
  /** What the weight as typed is multiplied by. */
  factor: number;
  base: number;
  loss: number;
  /** The squared distance of the mended piece from the usual one. */
  distance: number;
}

const POUNDS_A_KILO = 2.20462262;
/** A mended piece must be this near to the usual one (squared distance). */
const NEAR = 4;

/** In this order; of equally near ones the first is taken. */
const SLIPS: readonly Pick<Slip, 'of' | 'change' | 'factor'>[] = [
  { of: 'base', change: 'kilos to pounds', factor: POUNDS_A_KILO },
  { of: 'base', change: 'pounds to kilos', factor: 1 / POUNDS_A_KILO },
  { of: 'loss', change: 'kilos to pounds', factor: POUNDS_A_KILO },
  { of: 'loss', change: 'pounds to kilos', factor: 1 / POUNDS_A_KILO },
  { of: 'loss', change: 'ten times', factor: 10 },
  { of: 'loss', change: 'a tenth', factor: 0.1 },
  { of: 'base', change: 'ten times', factor: 10 },
  { of: 'base', change: 'a tenth', factor: 0.1 },
];

/**
 * The likely slip in a piece that screening flagged, or null if none makes it a usual piece.
 * @param base above 0, in the unit of the screened rows
 * @param loss above 0, in the same unit
 * @example a 6.8 lb brisket that lost 3.75 lb among 15 lb ones that lose a quarter: base, kilos to pounds
 */
export function likelySlip(usual: UsualPiece, base: number, loss: number): Slip | null {
  let best: Slip | null = null;
  for (const slip of SLIPS) {
    const mended = {
      base: slip.of === 'base' ? base * slip.factor : base,
      loss: slip.of === 'loss' ? loss * slip.factor : loss,
    };
    if (mended.loss >= mended.base) continue;
    const distance = distanceFrom(usual, mended.base, mended.loss);
    if (distance <= NEAR && (best === null || distance < best.distance))
      best = { ...slip, ...mended, distance };
  }
  return best;
}
