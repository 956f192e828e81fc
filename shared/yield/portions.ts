/** Portions of a piece: what one costs, how many there are, what it costs at another price, how much to buy. */
import {
  inProportion,
  type Money,
  moneyNumber,
  moneyRatio,
  type Price,
  paid,
  perWeight,
} from '../measure/money.ts';
import { grams, type Nanograms, type Units } from '../measure/units.ts';
import { creditOf, lastWeight, type Parted } from './parts.ts';
import { costFactor, costPer, costsOf, lastPart, pieceFigures, portionCost, type Weighed } from './piece.ts';

/** How often a portion's cost goes into the price paid for a pound or a kilo: 3.4792 over 6.65 is 0.5232. */
export function portionFactor(piece: Weighed, portion: Nanograms, unit: Units): number | null {
  const cost = portionCost(piece, portion);
  const shelf = costPer(piece, 'bought', unit);
  return cost === null || shelf === null ? null : moneyRatio(cost, shelf);
}

/**
 * A cost of this piece if it had been bought at the price `again`: the cost times the one price over the other, as
 * a cost factor does it, but exactly. Null where nothing was paid.
 * @example 3.4792 at 6.65 a pound, again 7.15 a pound: 3.7408
 */
export function costAgain(piece: Weighed, cost: Money, again: Price): Money | null {
  const costs = costsOf(piece);
  return costs === null ? null : inProportion(cost, costs.paid, paid(again, piece.bought));
}

/** How many whole portions a weight makes: servings round down. 270.72 oz in portions of 3 oz are 90. */
export const portionsIn = (weight: Nanograms, portion: Nanograms): number =>
  Number(BigInt(weight) / BigInt(portion));

/**
 * What to buy so that `needed` remains, where `bought` leaves `gives`: rounded up to the nanogram, so that it is enough.
 * All above 0.
 * @example weightToBuy(85 portions of 170 g, 5.2 kg, 4.6 kg) // 16.3348 kg
 */
export function weightToBuy(needed: Nanograms, bought: Nanograms, gives: Nanograms): Nanograms {
  const whole = BigInt(needed) * BigInt(bought);
  return Number((whole + BigInt(gives) - 1n) / BigInt(gives)) as Nanograms;
}

/** What is asked of a test beside its costs. */
export interface PortionsAsked {
  portion: Nanograms | null;
  /** How many to buy for. */
  portions: number | null;
  /** Another price, to see what it does. */
  again: Price | null;
}

/** What to buy for the portions asked for; null where they were not. 85 of 170 g at 88.46 % usable: 16.33 kg. */
export function buyFor({ piece }: Parted, { portion, portions }: PortionsAsked): Nanograms | null {
  if (portion === null || portions === null) return null;
  return weightToBuy((portion * portions) as Nanograms, piece.bought, lastWeight(piece));
}

/**
 * The figures of a test: weights in grams, shares of what was bought, money in the piece's currency.
 * - those of the piece, where `left` is the usable weight (see `pieceFigures`)
 * - `usableCostPer…` = (paid - credits) / usable; `costFactorUsable` = that over the price paid for the same weight
 * - `portionFactor` = portion cost / price paid for one `factorUnit`; `portionOf`: what portions are cut from
 * @example 12 lb at 6.65, 6 lb usable, 13.00 credited: usableCostPerLb 11.1333, costFactorUsable 1.6742
 */
export function partsFigures(parted: Parted, asked: PortionsAsked, units: Units) {
  const { piece, usable, loss, apart } = parted;
  const { portion, again } = asked;
  const amount = (money: Money | null) => (money === null ? null : moneyNumber(money));
  const usableCost = costPer(piece, 'left', 'kg');
  const ofPortion = portion === null ? null : portionCost(piece, portion);
  const toBuy = buyFor(parted, asked);
  const atAgain = (cost: Money | null) =>
    cost === null || again === null ? null : amount(costAgain(piece, cost, again));
  return {
    ...pieceFigures(piece),
    parts: piece.saved.map((part) => ({
      name: part.name,
      grams: grams(part.weight),
      share: part.weight / piece.bought,
      credit: amount(creditOf(part)),
    })),
    usableGrams: grams(usable),
    usableShare: usable / piece.bought,
    lossGrams: loss === null ? null : grams(loss),
    lossShare: loss === null ? null : loss / piece.bought,
    apartGrams: grams(apart),
    usableValue: amount(costsOf(piece)?.net ?? null),
    usableCostPerKg: amount(usableCost),
    usableCostPerLb: amount(costPer(piece, 'left', 'lb')),
    usableCostPerOz: amount(costPer(piece, 'left', 'oz')),
    costFactorUsable: costFactor(piece, 'left'),
    portionGrams: portion === null ? null : grams(portion),
    portionOf: portion === null ? null : lastPart(piece),
    portions: portion === null ? null : portionsIn(lastWeight(piece), portion),
    portionCost: amount(ofPortion),
    portionFactor: portion === null ? null : portionFactor(piece, portion, units),
    factorUnit: units,
    again:
      again === null
        ? null
        : {
            pricePerKg: amount(perWeight(paid(again, piece.bought), piece.bought, 'kg')),
            usableCostPerKg: atAgain(usableCost),
            portionCost: atAgain(ofPortion),
          },
    buyGrams: toBuy === null ? null : grams(toBuy),
  };
}

/** Those figures. */
export type PartsFigures = ReturnType<typeof partsFigures>;
