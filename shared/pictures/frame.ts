/**
 * What every picture shares: its size, its margins, its texts' sizes, the lines at its head and foot.
 *
 * Pictures are read on phones, some 400 pixels wide: there a text of 20 layout pixels is 11 pixels high,
 * which is the least that is used.
 */
import type { Note } from './notes.ts';
import { INK, QUIET_INK } from './palette.ts';
import type { Json } from './picture.ts';

/** Layout pixels: of every picture, at both of its sides, and between them. */
export const WIDTH = 720;
export const MARGIN = 28;
export const INNER_WIDTH = WIDTH - 2 * MARGIN;

/** The shipped font, and its other half, which has the letters of central Europe and Turkey. */
export const FONT = 'Trimtally Sans';
/** Its other half, with the letters of central Europe and Turkey. */
export const FONT_MORE = 'Trimtally Sans More';

/** Heights of letters in layout pixels. */
export const SIZE = { key: 60, title: 36, label: 24, small: 20 } as const;

/** From one line of a text to the next, for a size. `placement` of a renderer uses the same. */
export const lineHeight = (size: number): number => Math.round(size * 1.25);

/** What an average letter takes of its size: for leaving room, not for placing. */
const LETTER = 0.54;
const ABOUT_LINES = 2;

/** The one figure that a picture is about, large at its top right: `45.9 %` over `on the plate`. */
export interface KeyFigure {
  figure: string;
  caption: string;
  colour: string;
}
const KEY_WIDTH = 210;
/** The large figure is higher than the title: what stands below it starts lower. */
const KEY_DOWN = 18;
const GAP = 16;

/** The least width of a column of figures, for `100.0 %`; a bold figure and the gap before it. */
const FIGURES_WIDTH = 112;
const FIGURE = 0.6;

/**
 * How wide a column of bold figures is: amounts of money may be longer than shares.
 * @example figureWidth(['17.4 %']) // 112, the least
 */
export const figureWidth = (figures: readonly string[]): number =>
  Math.max(FIGURES_WIDTH, ...figures.map(({ length }) => Math.ceil(length * SIZE.label * FIGURE)));

/** How many lines to leave room for, at most {@link ABOUT_LINES}. */
const linesOf = (text: string, size: number, width: number): number =>
  Math.min(ABOUT_LINES, Math.max(1, Math.ceil((text.length * size * LETTER) / width)));

/** The middles of the head's lines, from the top. */
const TITLE_AT = MARGIN + SIZE.title / 2;
const ABOUT_AT = TITLE_AT + SIZE.title / 2 + SIZE.label / 2 + 10;

/** What a bold letter takes of its size at most, and what a mark or a space does. */
const BOLD_LETTER = 0.63;
const BOLD_MARK = 0.3;

/** As large as a key figure is, or as fits: an amount of money may be long. */
function keySize(figure: string): number {
  const letters = [...figure].map((letter) => (/[.,\s]/.test(letter) ? BOLD_MARK : BOLD_LETTER));
  const width = letters.reduce((sum, letter) => sum + letter, 0);
  return Math.max(SIZE.label, Math.min(SIZE.key, Math.floor(KEY_WIDTH / width)));
}

function keyNotes({ figure, caption, colour }: KeyFigure): readonly Note[] {
  const right = { x: WIDTH - MARGIN, align: 'right', width: KEY_WIDTH, bold: true } as const;
  return [
    { ...right, text: figure, y: TITLE_AT + 4, size: keySize(figure), colour },
    { ...right, text: caption, y: ABOUT_AT + KEY_DOWN, size: SIZE.label, colour: INK },
  ];
}

/** The lines at the top: the title, what it is about, the key figure. `bottom`: where they end, in layout pixels. */
export function head(
  title: string,
  about: string,
  key: KeyFigure | null,
): { notes: readonly Note[]; bottom: number } {
  const width = key === null ? INNER_WIDTH : INNER_WIDTH - KEY_WIDTH - GAP;
  const lines = linesOf(about, SIZE.label, width);
  const text = { x: MARGIN, width };
  return {
    notes: [
      { ...text, text: title, y: TITLE_AT, size: SIZE.title, bold: true, colour: INK },
      { ...text, text: about, y: ABOUT_AT, size: SIZE.label, colour: QUIET_INK, lines },
      ...(key === null ? [] : keyNotes(key)),
    ],
    bottom:
      ABOUT_AT +
      SIZE.label / 2 +
      (lines - 1) * lineHeight(SIZE.label) +
      (key !== null && lines === 1 ? KEY_DOWN : 0),
  };
}

/** The small print at the bottom, one line each, the first one's middle at `middle`. */
export function foot(texts: readonly string[], middle: number): readonly Note[] {
  return texts.map((text, index) => ({
    text,
    x: MARGIN,
    y: middle + index * lineHeight(SIZE.small),
    size: SIZE.small,
    colour: QUIET_INK,
    width: INNER_WIDTH,
  }));
}

/**
 * The options that every chart has: nothing moves, nothing is drawn but the data and our notes.
 * `top` and `bottom` are the edges of the room left to the data, from the top and the bottom of the picture.
 */
export function options(
  top: number,
  bottom: number,
  notes: readonly Note[],
): { readonly [key: string]: Json } {
  return {
    responsive: false,
    maintainAspectRatio: false,
    animation: false,
    events: [],
    font: { family: `"${FONT}", "${FONT_MORE}"`, size: SIZE.label },
    layout: { autoPadding: false, padding: { left: MARGIN, right: MARGIN, top, bottom } },
    plugins: { legend: { display: false }, tooltip: { enabled: false }, notes },
  };
}

/** Of axes and legends, where no notes are drawn. */
export const PLAIN_FONT = { size: SIZE.small };

/** The same for a renderer that draws no notes: a title, in one line or several, and, where there are several series, a legend. */
export const plainOptions = (
  title: string | readonly string[],
  legend: boolean,
  scales: { readonly [key: string]: Json },
): { readonly [key: string]: Json } => ({
  layout: { padding: MARGIN / 2 },
  plugins: {
    title: { display: true, text: title, color: INK, font: { size: SIZE.label, weight: 'bold' } },
    legend: {
      display: legend,
      position: 'bottom',
      labels: { color: INK, usePointStyle: true, font: PLAIN_FONT },
    },
  },
  scales,
});

/** As `Intl.NumberFormat` takes it. Both, since the chart sets both by itself. */
export const PERCENT = { style: 'percent', minimumFractionDigits: 0, maximumFractionDigits: 0 };

/**
 * What rows are called beside an axis of their own, a line or two each, for a renderer that draws no notes: hidden, until
 * {@link PLAIN_NAMES} shows it.
 */
export const namesScale = (labels: readonly (readonly string[])[]): Json => ({
  type: 'category',
  axis: 'y',
  display: false,
  offset: true,
  grid: { display: false },
  labels,
});

/** Shows a {@link namesScale}. */
export const PLAIN_NAMES = { display: true, ticks: { autoSkip: false, font: PLAIN_FONT } };
