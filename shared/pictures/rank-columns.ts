/** What pictures by rank share: which rows are drawn, the columns beside the marks, the same in words. */
import { MARGIN, SIZE, WIDTH } from './frame.ts';
import type { Note } from './notes.ts';
import { INK, QUIET_INK } from './palette.ts';

/** More rows are more than a phone shows at a time. */
export const MOST_RANKS = 12;
/** The platform's for a description. */
const MOST_ALT = 1024;
const LONGEST_ABOUT = 80;

/** Layout pixels. */
export const ROW = 46;
/** The line of small words over the columns. */
export const HEAD_ROW = 32;
/** The columns beside the marks: the place at the left; how many pieces, and the share, at the right. */
const PLACE_WIDTH = 56;
const COUNT_WIDTH = 78;
const SHARE_WIDTH = 112;
const GAP = 14;

/** The columns at the right of the marks. */
export type Columns = 'pieces' | 'pieces and share';

const rightOf = (columns: Columns): number => COUNT_WIDTH + (columns === 'pieces' ? 0 : SHARE_WIDTH) + GAP;

/** The padding of a chart whose marks stand between the columns. */
export const paddingOf = (columns: Columns, top: number, bottom: number) => ({
  left: MARGIN + PLACE_WIDTH,
  right: MARGIN + rightOf(columns),
  top,
  bottom,
});

const countRight = (columns: Columns): number => WIDTH - MARGIN - (columns === 'pieces' ? 0 : SHARE_WIDTH);

interface HeadWords {
  placeHead: () => string;
  piecesHead: () => string;
}

/** What stands over the columns. `middle`: of the line, from the top of the picture. */
export function headNotes(columns: Columns, middle: number, words: HeadWords): readonly Note[] {
  const quiet = { y: middle, size: SIZE.small, colour: QUIET_INK };
  return [
    { ...quiet, text: words.placeHead(), x: MARGIN },
    { ...quiet, text: words.piecesHead(), x: countRight(columns), align: 'right' },
  ];
}

export interface RankText {
  place: string;
  pieces: string;
  share: string | null;
  /** In bold, as the leader's; or quiet, as those without a place of their own. */
  weight: 'bold' | 'plain' | 'quiet';
}

/** The columns of one row. */
export function rankNotes({ place, pieces, share, weight }: RankText, y: number): readonly Note[] {
  const line = {
    y,
    size: SIZE.label,
    bold: weight === 'bold',
    colour: weight === 'quiet' ? QUIET_INK : INK,
  };
  const columns = share === null ? 'pieces' : 'pieces and share';
  return [
    { ...line, text: place, x: MARGIN },
    { ...line, text: pieces, x: countRight(columns), align: 'right' },
    ...(share === null ? [] : [{ ...line, text: share, x: WIDTH - MARGIN, align: 'right' } as const]),
  ];
}

/** No more of what a picture is about than leaves room for its figures. */
export const shortened = (about: string): string => [...about].slice(0, LONGEST_ABOUT).join('');

/** As many of the sentences as a description takes, whole ones only. */
export function withinAlt(sentences: readonly string[]): string {
  let text = '';
  for (const sentence of sentences) {
    const longer = text === '' ? sentence : `${text} ${sentence}`;
    if (longer.length > MOST_ALT) break;
    text = longer;
  }
  return text;
}

/** Whether a description takes all of these sentences. */
export const fitsAlt = (sentences: readonly string[]): boolean => sentences.join(' ').length <= MOST_ALT;
