/** Which of two pieces comes out cheaper, by integration. */
import { standardNormalBelow } from './distributions.ts';
import { at } from './matrix.ts';
import { leftAt, type Offer } from './offer.ts';

/** Points over the first one's doubt, and how far they reach: beyond, a normal has less than 1e-15. */
const POINTS = 160;
const REACH = 8;

/**
 * The chance that the first of two offers leaves the cheaper weight: over where the first one's share may lie by the
 * trapezoidal rule, which for a normal is exact to rounding (Trefethen & Weideman, SIAM Review 56:385, 2014), and over
 * the second one's, as far as the first does not tell it, in closed form.
 * @param shared 2 x 2, the covariance of what they share: beside it each has its own error
 * @example chanceFirstCheaper([choice at 5.49, select at 5.29], Float64Array.of(0.05, 0.045, 0.045, 0.06)) // 0.17
 */
export function chanceFirstCheaper(
  [first, second]: readonly [Offer, Offer],
  shared: ArrayLike<number>,
): number {
  const ofFirst = at(shared, 0) + first.ownVariance;
  const ofSecond = at(shared, 3) + second.ownVariance;
  // What is integrated in closed form should be the wider one, so that the other is a smooth sum.
  if (ofFirst > ofSecond)
    return (
      1 - chanceFirstCheaper([second, first], [at(shared, 3), at(shared, 1), at(shared, 2), at(shared, 0)])
    );
  const along = ofFirst > 0 ? at(shared, 1) / ofFirst : 0;
  const left = Math.sqrt(Math.max(0, ofSecond - along * at(shared, 1)));
  const step = (2 * REACH) / (POINTS - 1);
  let chance = 0;
  for (let point = 0; point < POINTS; point++) {
    const place = -REACH + point * step;
    const off = Math.sqrt(ofFirst) * place;
    const cost = first.price / leftAt(first.centre + off);
    const weight = (step * Math.exp(-(place ** 2) / 2)) / Math.sqrt(2 * Math.PI);
    chance += weight * dearer(second.price, second.centre + along * off, left, cost);
  }
  return Math.min(1, Math.max(0, chance));
}

/** The chance that a piece costs more than so much, of which the share lies there on the logit scale. */
function dearer(price: number, centre: number, deviation: number, cost: number): number {
  const left = price / cost;
  // Even whole it would cost more.
  if (left >= 1) return 1;
  if (left <= 0) return 0;
  // It costs more where its share is above 1 - left.
  const above = Math.log((1 - left) / left);
  if (deviation === 0) return centre === above ? 0.5 : Number(centre > above);
  return standardNormalBelow((centre - above) / deviation);
}
