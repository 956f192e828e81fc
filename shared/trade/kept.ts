/** What published tables, and where there are none rules of thumb, say of a cut once it is trimmed. */
import { type BookFigure, type BookMeasure, bookFor } from './book.ts';
import type { Cut } from './cut.ts';
import { thumbOf } from './thumbs.ts';

/** A share that is kept, as a fraction, and how far single pieces are from it. */
export interface Kept {
  share: number;
  /** A standard deviation; null where none is told. */
  deviation: number | null;
  source: 'book' | 'rule of thumb';
}

type Known = Pick<Cut, 'key' | 'raw' | 'bone'>;

/** A figure of a whole piece as a club cooks it, of the cut itself or of several alike. */
function figureFor(cut: Known, measure: BookMeasure, tells: BookFigure['tells']): BookFigure | null {
  const fits = ({ notComparable }: BookFigure) => notComparable === null || notComparable === 'several-cuts';
  return bookFor(cut, measure).find((one) => one.tells === tells && fits(one)) ?? null;
}

/** What bone and skin take of the raw piece, that a club takes off after the fire. */
const boneOf = (cut: Known): number =>
  (bookFor(cut, 'plate').find(({ notComparable }) => notComparable === 'bone-after')?.percent ?? 0) / 100;

/**
 * What gets to the plate of what was left to cook: the book's cooking yield, less what is thrown away at the board by the
 * book as well; or else what the rule of thumb leaves.
 * @example plateOverLeft(cutOf('beef/brisket-flat' as CutKey)) // { share: 0.69, deviation: 0.03042, source: 'book' }
 */
export function plateOverLeft(cut: Known): Kept {
  const cooking = figureFor(cut, 'cooking', 'kept');
  if (cooking === null) {
    const { trim, plate, plateDeviation } = thumbOf(cut);
    const served = figureFor(cut, 'plate', 'kept');
    if (served !== null) return { share: served.percent / 100 / (1 - trim), deviation: null, source: 'book' };
    const deviation = plateDeviation === null ? null : plateDeviation / (1 - trim);
    return { share: plate / (1 - trim), deviation, source: 'rule of thumb' };
  }
  const refused = figureFor(cut, 'carving', 'lost');
  const carving = refused === null ? 1 : 1 - refused.percent / 100;
  return {
    share: (cooking.percent / 100) * carving - (refused === null ? boneOf(cut) : 0),
    deviation: cooking.deviation === null ? null : (cooking.deviation / 100) * carving,
    source: 'book',
  };
}

/**
 * What gets to the plate of what was bought: as a table tells it of food as served, or else the book's yield times what a
 * usual trim leaves, or else the rule of thumb.
 * @param trim the share that usually comes off raw; null for the rule of thumb's
 * @example plateOverBought(cutOf('poultry/turkey-whole' as CutKey), null).share // 0.47
 */
export function plateOverBought(cut: Known, trim: number | null): Kept {
  const served = figureFor(cut, 'plate', 'kept');
  if (served !== null)
    return {
      share: served.percent / 100,
      deviation: served.deviation === null ? null : served.deviation / 100,
      source: 'book',
    };
  const thumb = thumbOf(cut);
  const kept = plateOverLeft(cut);
  if (kept.source === 'rule of thumb')
    return { share: thumb.plate, deviation: thumb.plateDeviation, source: 'rule of thumb' };
  const left = 1 - (trim ?? thumb.trim);
  return {
    share: kept.share * left,
    deviation: kept.deviation === null ? null : spreadOf(kept.share, kept.deviation, left),
    source: 'book',
  };
}

/** Four points: how far what comes off differs from piece to piece. Common practice, no source: from memory. */
const TRIM_DEVIATION = 0.04;

/** Of a product of two shares that vary by themselves. */
const spreadOf = (kept: number, deviation: number, left: number): number =>
  Math.hypot(deviation * left, kept * TRIM_DEVIATION);
