/** The chart plugin that draws a picture's ground and its notes, which stand as JSON under `options.plugins.notes`. */
import type { SKRSContext2D } from '@napi-rs/canvas';
import type { Chart, Plugin } from 'chart.js';
import { FONT, FONT_MORE } from '../../shared/pictures/frame.ts';
import type { Note } from '../../shared/pictures/notes.ts';
import { GROUND } from '../../shared/pictures/palette.ts';
import { type PlacedLine, placeNotes } from './placement.ts';

const fontOf = (size: number, bold: boolean) => `${bold ? 700 : 400} ${size}px "${FONT}", "${FONT_MORE}"`;

/** The chart's context is the canvas' own, whatever the types of a browser say. */
const contextOf = (chart: Chart) => chart.ctx as unknown as SKRSContext2D;

/** Where the notes of a laid out chart come to stand. */
export function placedNotes(chart: Chart, notes: readonly Note[]): readonly PlacedLine[] {
  const context = contextOf(chart);
  return placeNotes(
    notes,
    (axis, value) => chart.scales[axis]?.getPixelForValue(value) ?? Number.NaN,
    (text, size, bold) => {
      context.font = fontOf(size, bold);
      return context.measureText(text).width;
    },
    chart,
  );
}

/** Draws the ground below everything and the notes on top of everything. */
export const notesPlugin = (notes: readonly Note[]): Plugin => ({
  id: 'notes',
  beforeDraw(chart) {
    const context = contextOf(chart);
    context.fillStyle = GROUND;
    context.fillRect(0, 0, chart.width, chart.height);
  },
  afterDraw(chart) {
    const context = contextOf(chart);
    context.textBaseline = 'middle';
    context.textAlign = 'left';
    for (const { text, left, top, height, size, bold, colour } of placedNotes(chart, notes)) {
      context.font = fontOf(size, bold);
      context.fillStyle = colour;
      context.fillText(text, left, top + height / 2);
    }
  },
});
