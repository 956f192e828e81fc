/** What a piece that is not bought yet may lose. */
import { combination } from './combination.ts';
import { studentT } from './distributions.ts';
import { quantile } from './quantile.ts';
import { pointOf, type ShareModel, shareAt } from './share-model.ts';

export interface Buyer {
  /** A code of the model's grades; null for any. */
  grade: number | null;
  /** A member's code; null, or one without pieces, for anybody. */
  member: number | null;
}

/** On the logit scale: the middle, what all pieces of this buyer share of the doubt, and what each has of its own. */
export interface Expectation {
  centre: number;
  sharedVariance: number;
  pieceVariance: number;
  df: number;
  /** Whether the member has pieces in the model. */
  known: boolean;
}

export interface SharePrediction extends Expectation {
  /** On the logit scale. */
  standardDeviation: number;
  share: number;
  low: number;
  high: number;
}

export interface PurchasePrediction {
  /** In the unit of the weight. */
  loss: number;
  lossLow: number;
  lossHigh: number;
  /** The price of what is left, per the unit of the price. */
  price: number;
  priceLow: number;
  priceHigh: number;
}

/**
 * The parts of a prediction, for one piece or for several of one buyer (whose own errors average, and the rest not).
 * @example expectation(model, { grade: 1, member: null }) // centre -1.0888, df 24
 */
export function expectation(model: ShareModel, { grade, member }: Buyer): Expectation {
  const { fit } = model;
  const known = member !== null && fit.members.has(member);
  const { estimate, variance } = combination(
    fit,
    pointOf(model, grade),
    known ? new Map([[member, 1]]) : undefined,
  );
  return {
    centre: estimate,
    sharedVariance: known ? variance : variance + fit.memberVariance,
    pieceVariance: fit.pieceVariance,
    df: fit.members.size - 1,
    known,
  };
}

/**
 * The range in which the share of the next piece lies so often (Henderson, "Best Linear Unbiased Estimation and
 * Prediction under a Selection Model", Biometrics 31:423, 1975).
 * @param level between 0 and 1; 0.8 is 8 times in 10
 * @example predictShare(model, { grade: 1, member: null }) // share 0.252, 0.168 to 0.359
 */
export function predictShare(model: ShareModel, buyer: Buyer, level = 0.8): SharePrediction {
  const parts = expectation(model, buyer);
  const standardDeviation = Math.sqrt(parts.sharedVariance + parts.pieceVariance);
  const reach = studentT((1 + level) / 2, parts.df) * standardDeviation;
  return {
    ...parts,
    standardDeviation,
    share: shareAt(parts.centre),
    low: shareAt(parts.centre - reach),
    high: shareAt(parts.centre + reach),
  };
}

/**
 * A predicted share as weight and money: of this weight, at this price per unit of weight.
 * @example predictPurchase({ share: 0.252, low: 0.168, high: 0.359 }, 14.2, 5.49) // loss 3.58, price 7.34
 */
export function predictPurchase(
  { share, low, high }: Pick<SharePrediction, 'share' | 'low' | 'high'>,
  weight: number,
  price: number,
): PurchasePrediction {
  return {
    loss: share * weight,
    lossLow: low * weight,
    lossHigh: high * weight,
    price: price / (1 - share),
    priceLow: price / (1 - low),
    priceHigh: price / (1 - high),
  };
}

/**
 * The weights between which a prediction speaks from experience: 5 % of the pieces are lighter, 5 % heavier. Null
 * without pieces.
 * @example usualWeights([10, 12, 14]) // { low: 10.2, high: 13.8 }
 */
export function usualWeights(weights: ArrayLike<number>): { low: number; high: number } | null {
  if (weights.length === 0) return null;
  const sorted = Float64Array.from(weights).sort();
  return { low: quantile(sorted, 0.05), high: quantile(sorted, 0.95) };
}
