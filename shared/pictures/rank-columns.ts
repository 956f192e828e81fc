/** What pictures by rank share: which rows are drawn, and the columns beside the marks. */
import { MARGIN, SIZE, WIDTH } from './frame.ts';
import type { Note } from './notes.ts';
import { INK, QUIET_INK } from './palette.ts';

/** More rows are more than a phone shows at a time. */
export const MOST_RANKS = 12;

/** Layout pixels. */
export const ROW = 46;
/** The line of small words over the columns. */
export const HEAD_ROW = 32;
/** The columns beside the marks: the place at the left; how many pieces, and a figure, at the right. */
const PLACE_WIDTH = 56;
const COUNT_WIDTH = 78;
const GAP = 14;

/** The padding of a chart whose marks stand between the columns. `figures`: how wide theirs is; 0 without one. */
export const paddingOf = (figures: number, top: number, bottom: number) => ({
  left: MARGIN + PLACE_WIDTH,
  right: MARGIN + COUNT_WIDTH + figures + GAP,
  top,
  bottom,
});

/** How wide the marks' own part is. */
export const marksWidth = (figures: number): number =>
  WIDTH - 2 * MARGIN - PLACE_WIDTH - COUNT_WIDTH - figures - GAP;

const countRight = (figures: number): number => WIDTH - MARGIN - figures;

interface HeadWords {
  placeHead: () => string;
  piecesHead: () => string;
}

/** What stands over the columns. `middle`: of the line, from the top of the picture. */
export function headNotes(figures: number, middle: number, words: HeadWords): readonly Note[] {
  const quiet = { y: middle, size: SIZE.small, colour: QUIET_INK };
  return [
    { ...quiet, text: words.placeHead(), x: MARGIN },
    { ...quiet, text: words.piecesHead(), x: countRight(figures), align: 'right' },
  ];
}

/** The columns of one row. */
export interface RankText {
  place: string;
  pieces: string;
  figure: string | null;
  /** In bold, as the leader's; or quiet, as those without a place of their own. */
  weight: 'bold' | 'plain' | 'quiet';
}

/** The columns of one row. */
export function rankNotes(
  { place, pieces, figure, weight }: RankText,
  y: number,
  figures: number,
): readonly Note[] {
  const line = {
    y,
    size: SIZE.label,
    bold: weight === 'bold',
    colour: weight === 'quiet' ? QUIET_INK : INK,
  };
  return [
    { ...line, text: place, x: MARGIN },
    { ...line, text: pieces, x: countRight(figures), align: 'right' },
    ...(figure === null ? [] : [{ ...line, text: figure, x: WIDTH - MARGIN, align: 'right' } as const]),
  ];
}
