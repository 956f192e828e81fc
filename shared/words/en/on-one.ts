/** What is told to give an idea: a difference in points, what it comes to on one piece, and the piece. */
import type { Show } from '../../measure/show.ts';
import { NANOGRAMS, grams as plainGrams } from '../../measure/units.ts';
import { short } from './counts.ts';

const GRAMS = {
  lb: plainGrams(NANOGRAMS.lb),
  kg: plainGrams(NANOGRAMS.kg),
  oz: plainGrams(NANOGRAMS.oz),
} as const;

/** `14.8 lb`, `6.7 kg` */
export const roughly = (show: Show, grams: number): string =>
  `${show.oneDecimal(grams / GRAMS[show.form.units])} ${show.form.units}`;

/** `5 oz`, `1.2 lb`, `140 g`; under an ounce, or ten grams, not to the whole one. */
export function little(show: Show, grams: number): string {
  if (show.form.units === 'kg') {
    if (grams >= GRAMS.kg) return roughly(show, grams);
    return `${show.count(grams < 10 ? grams : Math.round(grams / 10) * 10)} g`;
  }
  if (grams >= GRAMS.lb) return roughly(show, grams);
  const ounces = grams / GRAMS.oz;
  return `${ounces < 1 ? show.oneDecimal(ounces) : show.count(ounces)} oz`;
}

/** A share as points: `2 points`, `2.5 points`, `1 point`. */
export function points(show: Show, share: number): string {
  const value = Math.round(share * 1000) / 10;
  return `${short(show, value)} ${value === 1 ? 'point' : 'points'}`;
}

/** A difference without its sign, in points: 0.0245 is `2.5`. */
export const hundredths = (show: Show, share: number): string => show.oneDecimal(Math.abs(share) * 100);

/**
 * From where to where a difference lies, in points: the nearer end first, and with words where 0 lies within.
 * @example ends(show, { low: -0.068, high: -0.012 }) // '1.2 to 6.8'; of -0.031 to 0.052 '3.1 less to 5.2 more'
 */
export function ends(show: Show, { low, high }: { low: number; high: number }): string {
  const [first, last] = [hundredths(show, low), hundredths(show, high)];
  if (low > 0) return `${first} to ${last}`;
  return high < 0 ? `${last} to ${first}` : `${first} less to ${last} more`;
}
