/** Which of several pieces comes out cheapest: how often each of them does. */
import { chanceFirstCheaper } from './cheaper-of-two.ts';
import { normalDraws } from './draws.ts';
import { at } from './matrix.ts';
import { leftAt, type Offer } from './offer.ts';
import { symmetricEigen } from './symmetric-eigen.ts';

const DRAWS = 20_000;
const SEED = 1;

/**
 * The chance of each offer to leave the cheapest weight. Two are integrated; of more 20,000 draws are counted, always the
 * same ones, so that an answer asked for again is the same (each within 0.007, 19 times in 20).
 * @param shared n x n, the covariance of what they share
 * @returns one chance an offer, which sum to 1; of one offer 1
 * @example chancesCheapest([choice at 5.49, select at 5.29], shared) // [0.174, 0.826]
 */
export function chancesCheapest(offers: readonly Offer[], shared: Float64Array): number[] {
  const [first, second] = offers;
  if (first === undefined) return [];
  if (second === undefined) return [1];
  if (offers.length === 2) {
    const chance = chanceFirstCheaper([first, second], shared);
    return [chance, 1 - chance];
  }
  return counted(offers, shared, DRAWS);
}

/**
 * The same by so many draws, whatever the number of offers.
 * @example counted([choice at 5.49, select at 5.29], shared, 1_000_000) // [0.1738, 0.8262]
 */
export function counted(
  offers: readonly Offer[],
  shared: Float64Array,
  draws: number,
  seed = SEED,
): number[] {
  const size = offers.length;
  const along = rootOf(shared, size);
  const normal = normalDraws(seed);
  const wins = offers.map(() => 0);
  const drawn = new Float64Array(size);
  for (let draw = 0; draw < draws; draw++) {
    for (let place = 0; place < size; place++) drawn[place] = normal();
    let [cheapest, least] = [0, Number.POSITIVE_INFINITY];
    offers.forEach(({ centre, ownVariance, price }, row) => {
      let logit = centre + Math.sqrt(ownVariance) * normal();
      for (let column = 0; column < size; column++)
        logit += at(along, row * size + column) * at(drawn, column);
      const cost = price / leftAt(logit);
      if (cost < least) [cheapest, least] = [row, cost];
    });
    wins[cheapest] = (wins[cheapest] ?? 0) + 1;
  }
  return wins.map((count) => count / draws);
}

/** A root of a covariance, which two offers of one grade make singular: by its eigenvalues. */
function rootOf(shared: Float64Array, size: number): Float64Array {
  const { values, vectors } = symmetricEigen(shared, size);
  const root = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      // Vector by vector, each times the root of its value.
      root[row * size + column] =
        at(vectors, column * size + row) * Math.sqrt(Math.max(0, at(values, column)));
    }
  }
  return root;
}
