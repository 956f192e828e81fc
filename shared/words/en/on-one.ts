/** What is told to give an idea: a difference in points, what it comes to on one piece, and the piece. */
import type { Show } from '../../measure/show.ts';
import type { Units } from '../../measure/units.ts';

const GRAMS: Readonly<Record<Units | 'oz', number>> = { lb: 453.59237, kg: 1000, oz: 28.349523125 };

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
  const told = Number.isInteger(value) ? show.count(value) : show.oneDecimal(value);
  return `${told} ${value === 1 ? 'point' : 'points'}`;
}
