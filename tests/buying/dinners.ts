/** Dinners for forty, for which exactly what /feed says was bought: how often it was enough. */
import { findDinner } from '../../shared/findings/dinner.ts';
import { enough } from '../../shared/findings/enough.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import { chanceOf } from '../calibration/random.ts';
import { type Buying, drawBuying, nameOf } from './columns.ts';

/** Forty plates of 150 g. */
const NEED_GRAMS = 40 * 150;
/** In one club, of each kind of cook. */
const DINNERS = 8;

/** How often it was enough, of newcomers and of those who weighed in before; and what was left over of it, on average. */
export function feedForty(pieces: number, members: number, clubs: number, seed = 1) {
  const fed = { newcomer: 0, known: 0, over: 0, dinners: 0 };
  for (let club = 0; club < clubs; club++) {
    const chance = chanceOf(seed, `feed ${pieces}`, club);
    const buying = drawBuying(pieces, members, 0.01, chance);
    for (let dinner = 0; dinner < DINNERS; dinner++) {
      const [newcomer, known] = [servedTo(buying, buying.newcomer), servedTo(buying, buying.known)];
      fed.newcomer += Number(newcomer >= NEED_GRAMS);
      fed.known += Number(known >= NEED_GRAMS);
      // What is missing is no rest below nothing.
      fed.over += (Math.max(0, newcomer - NEED_GRAMS) + Math.max(0, known - NEED_GRAMS)) / 2 / NEED_GRAMS;
      fed.dinners += 1;
    }
  }
  const { dinners } = fed;
  return { newcomers: fed.newcomer / dinners, known: fed.known / dinners, leftOver: fed.over / dinners };
}

/** Grams on the plate, of exactly what is to be bought. */
function servedTo({ plate, trim, next }: Buying, member: number): number {
  const found = findDinner(
    { plain: plate, injected: null, also: trim },
    {
      cut: 'beef/brisket-whole' as CutKey,
      measure: 'plate',
      also: 'trim',
      member: nameOf(member),
      currency: 'USD',
    },
  );
  const { pieces, buyGrams } = enough(found, NEED_GRAMS);
  const bought = Array.from({ length: pieces }, () => next(member));
  const whole = bought.reduce((sum, { grams }) => sum + grams, 0);
  const served = bought.reduce((sum, { grams, plateYield }) => sum + grams * plateYield, 0);
  return (served / whole) * buyGrams;
}
