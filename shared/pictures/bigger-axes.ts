/** The two axes of *bigger*: weights in the reader's unit, shares, and the ends of the usual range. */
import type { PictureWords } from '../words/en/pictures.ts';
import type { Measure } from '../yield/measure.ts';
import type { BoldLine } from './bigger-marks.ts';
import { lineHeight, MARGIN, SIZE, WIDTH } from './frame.ts';
import type { Note } from './notes.ts';
import { INK, QUIET_INK } from './palette.ts';
import { type Ticks, ticksOf } from './ticks.ts';

/** Layout pixels: the figures at the left of the data, and what stands below it. */
export const FIGURES_WIDTH = 64;
const FIGURES_DOWN = 24;
const CAPTION_DOWN = FIGURES_DOWN + lineHeight(SIZE.small) + 2;
/** What the figures and the caption below the data take. */
export const WEIGHTS_HEIGHT = CAPTION_DOWN + lineHeight(SIZE.small) / 2;

type Words = PictureWords['bigger'];

/** Around the outermost marks, of what lies between them. */
const ROOM = 0.04;

/** All values with a little room around them: `least` wide or more, and not below 0 or above `most` without need. */
function around(values: readonly number[], least: number, most: number): Ticks {
  const [first, last] = [Math.min(...values), Math.max(...values)];
  const wider = Math.max((last - first) * ROOM, (least - (last - first)) / 2);
  const [low, high] = [first - wider, last + wider];
  return ticksOf(first < 0 ? low : Math.max(0, low), last > most ? high : Math.min(high, most));
}

/** In pounds or kilos. */
const LEAST_WEIGHTS = 0.1;
/** Pieces of one weight stand in the middle of an axis a fifth as wide. */
export const weightsOf = (values: readonly number[]): Ticks =>
  around(values, Math.max(LEAST_WEIGHTS, 0.2 * Math.max(...values)), Number.POSITIVE_INFINITY);

/** So that a pair that is alike looks alike: ten points. */
const LEAST_SHARES = 0.1;
/** Lines and the band may reach this much farther than the pieces do, in their spread; they are cut off there. */
const MOST_BEYOND = 0.4;

/**
 * @param shares of the pieces, all of which are on it
 * @param reached by lines and the band, as far as there is room
 */
export function sharesOf(shares: readonly number[], reached: readonly number[]): Ticks {
  const [least, most] = [Math.min(...shares), Math.max(...shares)];
  const beyond = MOST_BEYOND * Math.max(most - least, LEAST_SHARES);
  const near = (share: number) => Math.max(least - beyond, 0, Math.min(share, most + beyond, 1));
  return around([...shares, ...reached.map(near)], LEAST_SHARES, 1);
}

/** The figures of both axes and what they are of. `top` and `bottom`: the edges of the data. */
export function axisNotes(
  { weights, shares }: { weights: Ticks; shares: Ticks },
  measure: Measure,
  { caption, bottom }: { caption: number; bottom: number },
  words: Words['axis'],
): Note[] {
  const quiet = { size: SIZE.small, colour: QUIET_INK };
  return [
    { ...quiet, text: words.shares({ measure }), x: MARGIN, y: caption },
    ...shares.ticks.map((share): Note => {
      const text = words.share({ share });
      return { ...quiet, text, x: MARGIN + FIGURES_WIDTH - 8, y: { at: share }, align: 'right' };
    }),
    ...weights.ticks.map((value): Note => {
      const text = words.weight({ value, step: weights.step });
      return { ...quiet, text, x: { at: value }, y: bottom + FIGURES_DOWN, align: 'center' };
    }),
    {
      ...quiet,
      text: words.weights({ measure }),
      x: WIDTH - MARGIN,
      y: bottom + CAPTION_DOWN,
      align: 'right',
    },
  ];
}

/** The ends of the usual range, each on its outer side, so that they stay apart. */
export const endNotes = (
  { smallGrams, bigGrams }: BoldLine,
  gramsPerUnit: number,
  y: number,
  words: Words,
): readonly Note[] => {
  const line = { y, size: SIZE.small, bold: true, colour: INK };
  return [
    {
      ...line,
      text: words.smallEnd({ grams: smallGrams }),
      x: { at: smallGrams / gramsPerUnit, shift: 12 },
      align: 'right',
    },
    { ...line, text: words.bigEnd({ grams: bigGrams }), x: { at: bigGrams / gramsPerUnit, shift: -12 } },
  ];
};
