/** How much of a cut is enough, and how much there is of what somebody has. */
import { standardNormal } from '../statistics/distributions.ts';
import { lowYield, piecesToBuy } from '../statistics/feeding.ts';
import { shareAt } from '../statistics/share-model.ts';
import type { FoundDinner } from './dinner.ts';

/** Weights in grams, yields as fractions of what is bought. */
export interface Enough {
  /** What gets to the plate usually, and at the least 9 times in 10; null where no spread is known. */
  plateYield: number;
  plateLow: number | null;
  /** Whole pieces of the usual weight. */
  pieces: number;
  buyGrams: number;
}

/** 9 times in 10. */
const LEVEL = 0.9;
/** Of a table whose spread would leave nothing. */
const LEAST_YIELD = 0.05;

const usualYield = ({ expected, instead }: FoundDinner): number =>
  expected === null ? instead.share : 1 - shareAt(expected.centre);

/**
 * The low yield of so many pieces: the club's own; or a table's or the rule of thumb's, whose spread does not shrink with
 * the pieces, since most of it is between cooks. Null where none is told.
 */
export function plateLow({ expected, instead }: FoundDinner, pieces: number): number | null {
  if (expected !== null) return lowYield(expected, pieces);
  const { share, deviation } = instead;
  return deviation === null ? null : Math.max(LEAST_YIELD, share - standardNormal(LEVEL) * deviation);
}

/**
 * What to buy for a need: enough 9 times in 10, or on average where no spread is known.
 * @param needGrams on the plate, above 0
 * @example enough(found, 6035) // plateYield 0.45, plateLow 0.373, pieces 3, buyGrams 16175
 */
export function enough(found: FoundDinner, needGrams: number): Enough {
  const plateYield = usualYield(found);
  const { pieces, buy } = piecesToBuy(
    needGrams,
    found.usualGrams,
    (count) => plateLow(found, count) ?? plateYield,
  );
  return { plateYield, plateLow: plateLow(found, pieces), pieces, buyGrams: buy };
}

/**
 * What there is on the plate of what somebody has: at the least 9 times in 10, or on average where no spread is known.
 * @example haveOf(found, 6350) // pieces 1, plateLow 0.373, leastGrams 2369
 */
export function haveOf(found: FoundDinner, haveGrams: number): Enough & { leastGrams: number } {
  const plateYield = usualYield(found);
  const pieces = Math.max(1, Math.round(haveGrams / found.usualGrams));
  const low = plateLow(found, pieces);
  return {
    plateYield,
    plateLow: low,
    pieces,
    buyGrams: haveGrams,
    leastGrams: haveGrams * (low ?? plateYield),
  };
}
