/** Somebody who follows /shop: how often its ranges and its odds hold, and what following it costs. */
import { compareLabels, type Shopped } from '../../shared/findings/labels.ts';
import { findOffered } from '../../shared/findings/offered.ts';
import type { Currency } from '../../shared/measure/money.ts';
import { NANOGRAMS, type Nanograms } from '../../shared/measure/units.ts';
import type { CutKey, GradeKey } from '../../shared/trade/keys.ts';
import { chanceOf } from '../calibration/random.ts';
import { type Buying, drawBuying, gradeAt, nameOf } from './columns.ts';

export interface Shopping {
  pieces: number;
  members: number;
  clubs: number;
  /** What a grade loses more than the one below it, as a share. */
  apart: number;
  /** How far prices of a pair are apart at most, as a part. */
  prices: number;
}

export interface ShoppingTrip {
  /** How often the trim of a piece lay in its range: of newcomers, and of those who weighed in before. */
  newcomers: number;
  known: number;
  /** By tenths of what was said, from 5: how often, how often it was right, and what was said on average. */
  odds: { said: number; right: number; times: number }[];
  /** What following it costs less than taking the lower price a pound, as a part; above 0 it saves. */
  saved: number;
}

/** In one club, of each kind of buyer: more of them tell more from the same club. */
const PAIRS = 10;
const CUT = 'beef/brisket-whole' as CutKey;
const USD = 'USD' as Currency;

export function shopFor({ pieces, members, clubs, apart, prices }: Shopping, seed = 1): ShoppingTrip {
  const held = { newcomer: [0, 0], known: [0, 0] };
  const odds = Array.from({ length: 6 }, () => ({ said: 0, right: 0, times: 0 }));
  const spent = { followed: 0, cheapest: 0 };
  for (let club = 0; club < clubs; club++) {
    const chance = chanceOf(seed, `shop ${pieces} ${apart} ${prices}`, club);
    const buying = drawBuying(pieces, members, apart, chance);
    for (const who of ['newcomer', 'known'] as const) {
      for (let pair = 0; pair < PAIRS; pair++) {
        const low = Math.floor(2 * chance.even());
        const grades = chance.even() < 0.5 ? [low, low + 1] : [low + 1, low];
        const second = 5 * (1 + prices * (2 * chance.even() - 1));
        const found = buy(buying, buying[who], grades, [5, second]);
        for (const inside of found.inside) {
          held[who][0] = (held[who][0] ?? 0) + Number(inside);
          held[who][1] = (held[who][1] ?? 0) + 1;
        }
        const bin = odds[Math.min(5, Math.max(0, Math.round(10 * found.chance) - 5))];
        if (bin !== undefined) {
          bin.said += found.chance;
          bin.right += Number(found.right);
          bin.times += 1;
        }
        spent.followed += found.followed;
        spent.cheapest += found.cheapest;
      }
    }
  }
  return {
    newcomers: (held.newcomer[0] ?? 0) / (held.newcomer[1] ?? 1),
    known: (held.known[0] ?? 0) / (held.known[1] ?? 1),
    odds: odds.map(({ said, right, times }) => ({ said: said / times, right: right / times, times })),
    saved: 1 - spent.followed / spent.cheapest,
  };
}

const offer = (
  cut: CutKey,
  { trim, plate }: Pick<Buying, 'trim' | 'plate'>,
  grades: readonly (GradeKey | null)[],
  member: number,
) =>
  findOffered(
    { plain: trim, injected: null, also: plate },
    {
      cut,
      measure: 'trim',
      also: 'plate',
      grades,
      member: nameOf(member),
      style: null,
      bone: null,
      currency: USD,
    },
  );

const labelOf = (cut: CutKey, grams: number, perPound: number, grade: GradeKey | null): Shopped => ({
  weight: Math.round(grams * NANOGRAMS.g) as Nanograms,
  price: { amount: Math.round(perPound * 10_000), basis: 'lb', currency: USD, text: '' },
  grade,
  cut,
  bone: null,
  weightText: '',
});

/** One pair: what was said of it, and what it came to. */
function buy({ trim, plate, next }: Buying, member: number, grades: number[], perPound: [number, number]) {
  const asked = grades.map((grade) => gradeAt(grade) as GradeKey);
  const found = offer(CUT, { trim, plate }, asked, member);
  const pieces = grades.map((grade) => next(member, grade));
  const labels = pieces.map(({ grams }, place) =>
    labelOf(CUT, grams, perPound[place] ?? 0, asked[place] ?? null),
  );
  const { labels: compared, best } = compareLabels(labels, [{ places: [0, 1], found }]);
  const costs = pieces.map(({ trimShare }, place) => (perPound[place] ?? 0) / (1 - trimShare));
  const other = 1 - best;
  return {
    inside: compared.map(({ trimLow, trimHigh }, place) => {
      const { trimShare } = pieces[place] ?? { trimShare: 0 };
      return (trimLow ?? 0) <= trimShare && trimShare <= (trimHigh ?? 1);
    }),
    chance: compared[best]?.chanceCheapest ?? 0,
    right: (costs[best] ?? 0) < (costs[other] ?? 0),
    followed: costs[best] ?? 0,
    cheapest: costs[perPound[0] <= perPound[1] ? 0 : 1] ?? 0,
  };
}

const FLAT = 'beef/brisket-flat' as CutKey;
/** Both cost the same on the plate at this price of a flat, where a packer costs 5: it loses a quarter as much. */
const FLAT_PRICE = (5 * (1 - 0.25 * 0.25)) / (1 - 0.25);

/**
 * A whole packer beside a trimmed flat whose price is up to a fifth off: what following /shop costs less than taking the
 * lower price a pound, as a part.
 */
export function shopUnlike(pieces: number, members: number, clubs: number, seed = 1): number {
  const spent = { followed: 0, cheapest: 0 };
  for (let club = 0; club < clubs; club++) {
    const chance = chanceOf(seed, `unlike ${pieces}`, club);
    const [packers, flats] = [1, 0.25].map((trimmed) => drawBuying(pieces, members, 0, chance, trimmed));
    if (packers === undefined || flats === undefined) throw new RangeError('two clubs');
    const found = [offer(CUT, packers, [null], packers.newcomer), offer(FLAT, flats, [null], flats.newcomer)];
    for (let pair = 0; pair < PAIRS; pair++) {
      const prices = [5, FLAT_PRICE * (1 + 0.4 * (chance.even() - 0.5))];
      const bought = [packers.next(packers.newcomer), flats.next(flats.newcomer)];
      const labels = bought.map(({ grams }, place) =>
        labelOf(place === 0 ? CUT : FLAT, grams, prices[place] ?? 0, null),
      );
      const { best } = compareLabels(
        labels,
        found.map((one, place) => ({ places: [place], found: one })),
      );
      const costs = bought.map(({ plateYield }, place) => (prices[place] ?? 0) / plateYield);
      spent.followed += costs[best] ?? 0;
      spent.cheapest += costs[(prices[0] ?? 0) <= (prices[1] ?? 0) ? 0 : 1] ?? 0;
    }
  }
  return 1 - spent.followed / spent.cheapest;
}
