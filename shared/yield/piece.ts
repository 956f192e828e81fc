/** A piece of meat on its way from the shop to the plate: what was weighed, and what follows from it. */
import {
  addMoney,
  forWeight,
  type Money,
  moneyNumber,
  moneyRatio,
  type Price,
  paid,
  perWeight,
  subtractMoney,
} from '../measure/money.ts';
import { grams, type Nanograms, type WeightUnit } from '../measure/units.ts';

/** Trimmings that were saved (tallow, grind, stock): off the raw piece, but not lost. */
export interface Saved {
  name: string;
  weight: Nanograms;
  /** What they are worth, if a value was told. */
  price: Price | null;
}

/** Everything that was put on the scale. 0 means nothing came off; null means not weighed. */
export interface Weighed {
  /** How many pieces were bought and weighed together as one lot. At least 1. */
  pieces: number;
  /** The weight paid for, as on the label. Above 0. */
  bought: Nanograms;
  /** Out of its bag, patted dry. */
  bagged: Nanograms | null;
  /** What the knife took off raw; or what was left to cook. Either gives the other. */
  trim: Nanograms | null;
  left: Nanograms | null;
  /** Injection or brine taken up. */
  added: Nanograms | null;
  /** Off the heat: after the rest, unwrapped, drained. */
  cooked: Nanograms | null;
  /** Thrown away after cooking: bone, fat, gristle; or what was on the plate. Either gives the other. */
  scraps: Nanograms | null;
  served: Nanograms | null;
  saved: readonly Saved[];
  price: Price | null;
}

/** The weights that a member can tell, in the order in which a piece meets the scale. */
export const WEIGHT_NAMES = [
  'bought',
  'bagged',
  'trim',
  'left',
  'added',
  'cooked',
  'scraps',
  'served',
] as const;

/** One of them, as options, columns and figures call it. */
export type WeightName = (typeof WEIGHT_NAMES)[number];

/** Every weight of a piece, told or following from the others; null where neither. */
export interface Weights extends Record<Exclude<WeightName, 'bought'>, Nanograms | null> {
  bought: Nanograms;
  /** Bag juice: bought - bagged. */
  juice: Nanograms | null;
  /** What went into the heat: left + added. */
  intoHeat: Nanograms | null;
}

/**
 * Completes what was weighed: left = (bagged or bought) - trim and the other way round, served = cooked - scraps
 * and the other way round. A weight that was told stays as told.
 * @example weightsOf({ bought: 12 lb, trim: 3 lb, ... }).left // 9 lb
 */
export function weightsOf(piece: Weighed): Weights {
  const whole = piece.bagged ?? piece.bought;
  const left = piece.left ?? rest(whole, piece.trim);
  const served = piece.served ?? rest(piece.cooked, piece.scraps);
  return {
    bought: piece.bought,
    bagged: piece.bagged,
    juice: rest(piece.bought, piece.bagged),
    trim: piece.trim ?? rest(whole, piece.left),
    left,
    added: piece.added,
    intoHeat: left === null ? null : ((left + (piece.added ?? 0)) as Nanograms),
    cooked: piece.cooked,
    scraps: piece.scraps ?? rest(piece.cooked, piece.served),
    served,
  };
}

function rest(whole: Nanograms | null, part: Nanograms | null): Nanograms | null {
  return whole === null || part === null ? null : ((whole - part) as Nanograms);
}

/** Where a piece is on its way: under the knife, in the heat, or at the board. */
export type Stage = 'knife' | 'heat' | 'plate';

/**
 * The stage whose weight comes next; null once it is on the plate.
 * @example stageNext({ bought: 12 lb, trim: 3 lb, ... }) // 'heat'
 */
export function stageNext(piece: Weighed): Stage | null {
  const { trim, cooked, served } = weightsOf(piece);
  if (served !== null) return null;
  return cooked !== null ? 'plate' : trim !== null ? 'heat' : 'knife';
}

/** What a piece cost, exactly; null where no price was told. */
export interface Costs {
  paid: Money;
  /** What the saved trimmings are worth; null if none was given a value. */
  credit: Money | null;
  /** Paid less the credit: what the meat itself cost. */
  net: Money;
}

/** @example costsOf(8 lb 8 oz at 4.19 a pound).paid // 35.615 exactly, printed 35.62 */
export function costsOf(piece: Weighed): Costs | null {
  if (piece.price === null) return null;
  const { currency } = piece.price;
  const whole = paid(piece.price, piece.bought);
  const worth = piece.saved.flatMap(({ price, weight }) =>
    price === null || price.currency !== currency ? [] : [paid(price, weight)],
  );
  const credit = worth.length === 0 ? null : worth.reduce(addMoney);
  return { paid: whole, credit, net: credit === null ? whole : subtractMoney(whole, credit) };
}

/**
 * A cost per weight of the part that is left, off the heat, or on the plate; null where it is not known.
 * @example costPer(12 lb at 6.65 a pound of which 6 lb are left, 'left', 'lb') // 13.30
 */
export function costPer(
  piece: Weighed,
  part: 'bought' | 'left' | 'cooked' | 'served',
  unit: WeightUnit,
): Money | null {
  const costs = costsOf(piece);
  const weight = weightsOf(piece)[part];
  if (costs === null || !weight) return null;
  return perWeight(part === 'bought' ? costs.paid : costs.net, weight, unit);
}

/**
 * How often the shelf price goes into the cost per weight of `part`; null where it is not known.
 * @example costFactor(the same piece, 'left') // 2
 */
export function costFactor(piece: Weighed, part: 'left' | 'cooked' | 'served'): number | null {
  const shelf = costPer(piece, 'bought', 'kg');
  const cost = costPer(piece, part, 'kg');
  return shelf === null || cost === null ? null : moneyRatio(cost, shelf);
}

/** The figures of a piece: weights in grams, shares as fractions, money in the piece's currency. */
export type PieceFigures = ReturnType<typeof pieceFigures>;

/**
 * Every share, yield and cost that follows from what was weighed; null where a weight or price is missing.
 * - `trimShare` = trim / bought; `plateYield` = served / bought
 * - `cookingYield` = cooked / (left + added); `carvingYield` = served / cooked
 * - `portionCost` is told of a yield test alone: `partsFigures`
 * - `costPer…Kg` = (paid - credit) / that part; `costFactor…` = that over the price paid per the same unit
 * @example 5.2 kg bought at 11.95 a kg, 4.6 kg left: costPerLeftKg 13.5087 (trimShare 0.1154)
 */
export function pieceFigures(piece: Weighed) {
  const weights = weightsOf(piece);
  const costs = costsOf(piece);
  const inGrams = (weight: Nanograms | null) => (weight === null ? null : grams(weight));
  const amount = (money: Money | null) => (money === null ? null : moneyNumber(money));
  return {
    pieces: piece.pieces,
    boughtGrams: grams(weights.bought),
    baggedGrams: inGrams(weights.bagged),
    juiceGrams: inGrams(weights.juice),
    trimGrams: inGrams(weights.trim),
    leftGrams: inGrams(weights.left),
    addedGrams: inGrams(weights.added),
    cookedGrams: inGrams(weights.cooked),
    scrapsGrams: inGrams(weights.scraps),
    servedGrams: inGrams(weights.served),
    trimShare: ratio(weights.trim, weights.bought),
    cookingYield: ratio(weights.cooked, weights.intoHeat),
    carvingYield: ratio(weights.served, weights.cooked),
    plateYield: ratio(weights.served, weights.bought),
    paid: amount(costs?.paid ?? null),
    credit: amount(costs?.credit ?? null),
    pricePerKg: amount(costPer(piece, 'bought', 'kg')),
    costPerLeftKg: amount(costPer(piece, 'left', 'kg')),
    costPerCookedKg: amount(costPer(piece, 'cooked', 'kg')),
    costPerServedKg: amount(costPer(piece, 'served', 'kg')),
    costFactorLeft: costFactor(piece, 'left'),
    costFactorServed: costFactor(piece, 'served'),
    portionCost: null as number | null,
  };
}

/** part / whole as a fraction; null where either is missing or the whole is nothing. */
function ratio(part: Nanograms | null, whole: Nanograms | null): number | null {
  return part === null || whole === null || whole === 0 ? null : part / whole;
}

/**
 * The part of a piece that portions are cut from: the last one that was weighed.
 * @example lastPart({ cooked: 4 lb, served: null, ... }) // 'cooked'
 */
export function lastPart(piece: Weighed): 'left' | 'cooked' | 'served' {
  const { cooked, served } = weightsOf(piece);
  return served !== null ? 'served' : cooked !== null ? 'cooked' : 'left';
}

/** The cost of a portion, cut from the last part that was weighed: 5 oz at 11.1333 a pound is 3.4792. Null without a price. */
export function portionCost(piece: Weighed, portion: Nanograms): Money | null {
  const perKg = costPer(piece, lastPart(piece), 'kg');
  return perKg === null ? null : forWeight(perKg, portion, 'kg');
}
