/** The published figure that stands beside a club's own: whether the two can be compared, or why not. */
import { type BookFigure, type BookMeasure, bookFor, type NotComparable } from './book.ts';
import type { Cut } from './cut.ts';
import type { Bone } from './keys.ts';

/** What of a club's pieces decides whether a table's are like them; null where it was not told. */
export interface ToldOfPieces {
  style: string | null;
  bone: Bone | null;
}

/** Why a figure is not compared: the table's own reasons, or other fat left on, or the bone. */
export type Unlike = NotComparable | 'fat' | 'bone';

/** A published figure beside a club's own. */
export interface BesideBook {
  figure: BookFigure;
  /**
   * A fraction, as a member reads it: what came off for `trim` and, whatever the measure, of a raw piece; else what was
   * kept.
   */
  share: number;
  /** Null where the two can be compared. */
  unlike: Unlike | null;
}

/** Inches of fat that a brisket's style leaves on: from the first up to the second. */
const FAT_LEFT: Readonly<Record<string, readonly [least: number, most: number]>> = {
  'brisket/thick': [0.25, Number.POSITIVE_INFINITY],
  'brisket/quarter': [0.25, 0.25],
  'brisket/thin': [0, 0.125],
};

/**
 * The figure of most pieces that can be compared with pieces of which this was told, or else the first of a cut with the
 * reason why it can't. What was not told is no reason: the table's own fat and bone are told beside its figure. Null where
 * no table has the cut in this measure.
 * @example besideBook(cutOf('beef/tri-tip' as CutKey), 'cooking', { style: null, bone: null })?.share // 0.84
 */
export function besideBook(
  cut: Pick<Cut, 'key'>,
  measure: BookMeasure,
  told: ToldOfPieces,
): BesideBook | null {
  const found = bookFor(cut, measure).map((figure) => ({
    figure,
    share: shareOf(figure),
    unlike: figure.notComparable ?? unlikeTold(figure, told),
  }));
  return found.find(({ unlike }) => unlike === null) ?? found[0] ?? null;
}

function shareOf({ measure, tells, percent, cooked }: BookFigure): number {
  const asLost = measure === 'trim' || cooked === 'raw';
  return (asLost === (tells === 'lost') ? percent : 100 - percent) / 100;
}

function unlikeTold({ fatInches, bone }: BookFigure, told: ToldOfPieces): Unlike | null {
  if (bone !== null && told.bone !== null && bone !== told.bone) return 'bone';
  const left = told.style === null ? undefined : FAT_LEFT[told.style];
  if (fatInches === null || left === undefined) return null;
  return fatInches >= left[0] && fatInches <= left[1] ? null : 'fat';
}
