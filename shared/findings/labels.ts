/** Labels side by side: what each comes to on the plate, and how often each of them comes out cheapest. */
import { pricePerKg } from '../measure/money.ts';
import { grams } from '../measure/units.ts';
import { chancesCheapest } from '../statistics/cheapest.ts';
import { studentT } from '../statistics/distributions.ts';
import type { Expectation } from '../statistics/prediction.ts';
import { shareAt } from '../statistics/share-model.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Label } from '../trade/label.ts';
import type { FoundOffered, Source } from './offered.ts';

/** A label with the cut that it is of. */
export interface Shopped extends Omit<Label, 'cut'> {
  cut: CutKey;
}

/** Labels of one cut, with or without its bone, and what is expected of them, in the same order. */
export interface Offered {
  /** Places among all labels. */
  places: readonly number[];
  found: FoundOffered;
}

/** A label with what it comes to. Money in the label's currency. */
export interface Compared {
  label: Shopped;
  grams: number;
  /** What a kilo of it costs in the shop. */
  pricePerKg: number;
  /** What comes off raw, with its range 8 times in 10; null where it is told on the plate alone. */
  trimShare: number | null;
  trimLow: number | null;
  trimHigh: number | null;
  /** Of what is bought. */
  plateYield: number;
  servedGrams: number;
  costPerServedKg: number;
  costLow: number;
  costHigh: number;
  /** Null for a label by itself. */
  chanceCheapest: number | null;
  /** The price of a kilo at which it draws level with the best; null for the best. */
  levelPricePerKg: number | null;
  found: FoundOffered;
  source: Source;
}

/** All labels, in the order in which they were told. */
export interface Comparison {
  labels: readonly Compared[];
  /** The place of the one that comes out cheapest most often. */
  best: number;
  /** One cut and one grade, sold alike: nothing but the price tells them apart. */
  alike: boolean;
}

/** 8 times in 10. */
const LEVEL = 0.8;

/**
 * The share that is expected of one piece, and between which it lies 8 times in 10: fractions.
 * @example likelyShare(expected) // { share: 0.2, low: 0.14, high: 0.28 }
 */
export function likelyShare({ centre, df, sharedVariance, pieceVariance }: Expectation) {
  const reach = studentT((1 + LEVEL) / 2, df) * Math.sqrt(sharedVariance + pieceVariance);
  return { share: shareAt(centre), low: shareAt(centre - reach), high: shareAt(centre + reach) };
}

/**
 * The cost of a weight on the plate is price / ((1 - trimShare) * kept), where what is kept of the rest is the same for
 * all labels of one cut: so only trim and price decide between them.
 * @param labels one or more; each stands in one of the `offered`
 */
export function compareLabels(labels: readonly Shopped[], offered: readonly Offered[]): Comparison {
  const compared = labels.map((label, place) => reckon(label, place, offered));
  const chances = chancesCheapest(
    compared.map(({ expected, found, label }) => ({
      centre: expected.centre,
      ownVariance: expected.pieceVariance,
      price: shelf(label) / found.kept.share,
    })),
    sharedOf(labels.length, offered),
  );
  const best = bestOf(compared, chances);
  const least = compared[best]?.costPerServedKg ?? 0;
  return {
    best,
    alike: offered.length === 1 && new Set(labels.map(({ grade }) => grade)).size === 1,
    labels: compared.map(({ expected: _expected, ...one }, place) => ({
      ...one,
      chanceCheapest: labels.length === 1 ? null : (chances[place] ?? null),
      levelPricePerKg: place === best ? null : least * one.plateYield,
    })),
  };
}

const shelf = ({ price, weight }: Shopped): number => pricePerKg(price, weight);

function reckon(label: Shopped, place: number, offered: readonly Offered[]) {
  const group = offered.find(({ places }) => places.includes(place));
  const expected = group?.found.each[group.places.indexOf(place)];
  if (group === undefined || expected === undefined) throw new RangeError(`label ${place} is of no cut`);
  const { found } = group;
  const { share, low, high } = likelyShare(expected);
  const price = shelf(label);
  const cost = (lost: number) => price / ((1 - lost) * found.kept.share);
  const trimmed = found.stage === 'trim';
  const plateYield = (1 - share) * found.kept.share;
  return {
    label,
    expected,
    found,
    grams: grams(label.weight),
    pricePerKg: price,
    trimShare: trimmed ? share : null,
    trimLow: trimmed ? low : null,
    trimHigh: trimmed ? high : null,
    plateYield,
    servedGrams: grams(label.weight) * plateYield,
    costPerServedKg: cost(share),
    costLow: cost(low),
    costHigh: cost(high),
    source: sourceOf(found),
  };
}

/** What is known best of it: by the member's own pieces, the club's, a table, or nothing but a rule of thumb. */
export const sourceOf = ({ source, kept }: FoundOffered): Source =>
  source === 'rule of thumb' ? kept.source : source;

/** Labels of one cut share the buyer and the club's level; those of unlike cuts share nothing. */
function sharedOf(size: number, offered: readonly Offered[]): Float64Array {
  const shared = new Float64Array(size * size);
  for (const { places, found } of offered) {
    places.forEach((row, own) => {
      places.forEach((column, other) => {
        shared[row * size + column] = found.shared[own * places.length + other] ?? 0;
      });
    });
  }
  return shared;
}

/** The one that is cheapest most often; of equals the cheaper one to be expected, then the first. */
function bestOf(compared: readonly { costPerServedKg: number }[], chances: readonly number[]): number {
  const cost = (place: number) => compared[place]?.costPerServedKg ?? 0;
  const chance = (place: number) => chances[place] ?? 0;
  return compared.reduce((best, _one, place) => {
    const ahead = chance(place) - chance(best);
    return ahead > 0 || (ahead === 0 && cost(place) < cost(best)) ? place : best;
  }, 0);
}

/** The surest first. */
const SOURCES: readonly Source[] = ['member', 'club', 'book', 'rule of thumb'];

/** The weakest of what several are told by: of `club` and `book` it is `book`. */
export const weakest = (sources: readonly Source[]): Source =>
  SOURCES[Math.max(0, ...sources.map((source) => SOURCES.indexOf(source)))] ?? 'rule of thumb';
