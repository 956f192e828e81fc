/** The axis of shares or of money below a picture: from where to where, and its lines and figures. */
import type { PictureWords } from '../words/en/pictures.ts';
import type { Averaged } from '../yield/measure.ts';
import { INNER_WIDTH, lineHeight, MARGIN, PERCENT, PLAIN_FONT, SIZE } from './frame.ts';
import { moneyAxis } from './money-axis.ts';
import type { Note } from './notes.ts';
import { GRID, QUIET_INK } from './palette.ts';
import type { Json } from './picture.ts';

type AxisWords = PictureWords['stands']['axis'];

/** Fractions, or amounts of money. `ticks` are ascending, the first is the least and the last the greatest. */
export interface Axis {
  min: number;
  max: number;
  ticks: readonly number[];
}

/** Points, in per cent. */
const LEAST_SPAN = 10;
const TICK_STEPS = [2, 5, 10] as const;
const WIDEST_STEP = 20;
const MOST_TICKS = 8;
/** Keeps a value that is on a line, but for its last digits, from asking for one more. */
const DUST = 1e-9;
/** From the lower edge of the data to the middle of the figures, and from there to what they are of. */
const FIGURES_DOWN = 20;

/** What the figures and the caption below the data take, in layout pixels. */
export const AXIS_HEIGHT = FIGURES_DOWN + 2 * lineHeight(SIZE.small);

/**
 * An axis on which all values lie, ten points wide or more, so that a pair that is alike looks alike.
 * @param values fractions; throws a RangeError without any
 * @example axisOf([0.174]) // { min: 0.12, max: 0.24, ticks: [0.12, 0.14, 0.16, 0.18, 0.2, 0.22, 0.24] }
 */
export function axisOf(values: readonly number[]): Axis {
  if (values.length === 0) throw new RangeError('an axis needs values');
  const least = 100 * Math.min(...values);
  const greatest = 100 * Math.max(...values);
  const wider = Math.max(0, LEAST_SPAN - (greatest - least)) / 2;
  // No share lies outside of 0 and 1, so what is missing on that side is added on the other.
  const over = Math.min(0, least - wider) + Math.max(0, greatest + wider - 100);
  const [low, high] = [Math.min(least, least - wider - over), Math.max(greatest, greatest + wider - over)];
  const ends = (step: number) => [Math.floor(low / step + DUST), Math.ceil(high / step - DUST)] as const;
  const few = (step: number) => ends(step)[1] - ends(step)[0] < MOST_TICKS;
  const step = TICK_STEPS.find(few) ?? WIDEST_STEP;
  const [first, last] = ends(step);
  const ticks = Array.from({ length: last - first + 1 }, (_none, index) => ((first + index) * step) / 100);
  return { min: (first * step) / 100, max: (last * step) / 100, ticks };
}

/** The axis of what is averaged. */
export const axisFor = (measure: Averaged, values: readonly number[]): Axis =>
  measure === 'cost' ? moneyAxis(values) : axisOf(values);

/**
 * Layout pixels from the left edge of the data.
 * @example along({ min: 0.1, max: 0.3, ticks }, 0.2) // 332: half of the data's width
 */
export const along = ({ min, max }: Axis, share: number): number =>
  ((share - min) / (max - min)) * INNER_WIDTH;

/**
 * The share at a place, back to what a picture needs of it.
 * @example shareAt({ min: 0.1, max: 0.3, ticks }, 332) // 0.2
 */
export const shareAt = ({ min, max }: Axis, pixels: number): number =>
  Math.round((min + (pixels / INNER_WIDTH) * (max - min)) * 1e5) / 1e5;

/** What an average letter takes of its size, generously. */
const LETTER = 0.5;

/** A text over or under a share, as far as it stays within the margins; else at the margin. */
export function centred(axis: Axis, share: number, text: string, size: number): Pick<Note, 'x' | 'align'> {
  const [middle, half] = [along(axis, share), (text.length * size * LETTER) / 2];
  if (middle < half) return { x: MARGIN, align: 'left' };
  if (middle > INNER_WIDTH - half) return { x: MARGIN + INNER_WIDTH, align: 'right' };
  return { x: { at: share }, align: 'center' };
}

/** Amounts may be long: those at the ends of the axis stay within it. */
const inward = (index: number, count: number): 'left' | 'center' | 'right' =>
  index === 0 ? 'left' : index === count - 1 ? 'right' : 'center';

/** What a figure needs to the next one, of its own width: at an end it stands half of it further in. */
const ROOM = 1.6;

/** Each figure, every second, or every third: as many as stand side by side. */
function everyNth(texts: readonly string[], width: number): number {
  const widest = Math.max(...texts.map(({ length }) => length)) * SIZE.small * LETTER * ROOM;
  return Math.max(1, Math.ceil((widest * (texts.length - 1)) / width));
}

/** The figures below the data, and what they are of. `bottom`: the lower edge of the data, `width` how wide it is. */
export function axisNotes(
  { ticks }: Axis,
  bottom: number,
  measure: Averaged,
  words: AxisWords,
  width = INNER_WIDTH,
): readonly Note[] {
  const quiet = { size: SIZE.small, colour: QUIET_INK };
  const y = bottom + FIGURES_DOWN;
  const texts = ticks.map((share) => words.tick({ measure, share }));
  const nth = measure === 'cost' ? everyNth(texts, width) : 1;
  const figures = ticks.flatMap((at, index): Note[] => {
    const align = measure === 'cost' ? inward(index, ticks.length) : 'center';
    return index % nth === 0 ? [{ ...quiet, text: texts[index] ?? '', x: { at }, y, align }] : [];
  });
  return [
    ...figures,
    {
      ...quiet,
      text: words.caption({ measure }),
      x: MARGIN,
      y: y + lineHeight(SIZE.small) + 2,
      width: INNER_WIDTH,
    },
  ];
}

/** The chart's two scales: shares to the right, layout pixels from the top of the data down. */
export const scales = ({ min, max, ticks }: Axis, height: number): { readonly [key: string]: Json } => ({
  x: {
    type: 'linear',
    min,
    max,
    border: { display: false },
    grid: { color: GRID, drawTicks: false, lineWidth: 2 },
    ticks: { display: false, stepSize: Math.round(((ticks[1] ?? max) - min) * 1e6) / 1e6, padding: 0 },
  },
  y: { type: 'linear', display: false, offset: false, min: 0, max: height, reverse: true },
});

/** The same axis where no notes are drawn: with the chart's own figures. */
export const plainScale = (measure: Averaged, words: AxisWords): { readonly [key: string]: Json } => ({
  display: true,
  ticks: {
    display: true,
    padding: 4,
    font: PLAIN_FONT,
    ...(measure === 'cost' ? {} : { format: PERCENT }),
  },
  title: { display: true, text: words.caption({ measure }), font: PLAIN_FONT },
});
