/** Where texts come to stand: inside the picture, and none on top of another. */
import { lineHeight } from '../../shared/pictures/frame.ts';
import type { Anchor, Note } from '../../shared/pictures/notes.ts';

/** One line of text, ready to be drawn. `left`, `top`, `width` and `height` are its box in layout pixels. */
export interface PlacedLine {
  text: string;
  left: number;
  top: number;
  width: number;
  height: number;
  size: number;
  bold: boolean;
  colour: string;
}

/** The width of a text in layout pixels. */
export type Measure = (text: string, size: number, bold: boolean) => number;
/** The pixel at which a value of an axis stands. */
export type PixelOf = (axis: 'x' | 'y', value: number) => number;
export interface Area {
  width: number;
  height: number;
}

/** Texts keep this far from the edge, in layout pixels. */
const EDGE = 4;
const ELLIPSIS = '…';

const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(value, high));

/** The longest start of `text` that fits with an ellipsis. */
function shorten(text: string, fits: (text: string) => boolean): string {
  if (fits(text)) return text;
  const letters = [...text];
  while (letters.length > 0 && !fits(letters.join('').trimEnd() + ELLIPSIS)) letters.pop();
  return letters.join('').trimEnd() + ELLIPSIS;
}

/** A text in lines that fit, broken at spaces; what is left over ends in an ellipsis. */
function wrap(text: string, most: number, fits: (text: string) => boolean): readonly string[] {
  const lines: string[] = [];
  let words = text.split(' ');
  while (lines.length < most - 1 && !fits(words.join(' '))) {
    let taken = Math.max(1, words.length - 1);
    while (taken > 1 && !fits(words.slice(0, taken).join(' '))) taken -= 1;
    if (!fits(words.slice(0, taken).join(' '))) break;
    lines.push(words.slice(0, taken).join(' '));
    words = words.slice(taken);
  }
  return [...lines, shorten(words.join(' '), fits)];
}

function boxOf(note: Note, pixelOf: PixelOf, measure: Measure, area: Area): readonly PlacedLine[] {
  const { size, colour, bold = false, align = 'left' } = note;
  const pixel = (axis: 'x' | 'y', anchor: Anchor) =>
    typeof anchor === 'number' ? anchor : pixelOf(axis, anchor.at) + (anchor.shift ?? 0);
  const widest = Math.min(note.width ?? area.width, area.width - 2 * EDGE);
  const lines = wrap(note.text, note.lines ?? 1, (text) => measure(text, size, bold) <= widest);
  const height = lineHeight(size);
  const x = pixel('x', note.x);
  const y = pixel('y', note.y);
  if (!Number.isFinite(x) || !Number.isFinite(y)) throw new Error(`the note "${note.text}" has no place`);
  const top = clamp(y - height / 2, EDGE, area.height - EDGE - lines.length * height);
  return lines.map((text, index) => {
    const width = measure(text, size, bold);
    const left = clamp(
      x - { left: 0, center: width / 2, right: width }[align],
      EDGE,
      area.width - EDGE - width,
    );
    return { text, left, top: top + index * height, width, height, size, bold, colour };
  });
}

/** Whether two boxes have a point in common. */
export const overlap = (a: PlacedLine, b: PlacedLine): boolean =>
  a.left < b.left + b.width &&
  b.left < a.left + a.width &&
  a.top < b.top + b.height &&
  b.top < a.top + a.height;

/** Down, up, further down, further up: by half a line each, until two large lines are passed. */
const DODGES = [0, ...[1, 2, 3, 4, 5, 6, 7, 8].flatMap((step) => [step, -step])];

/**
 * Places notes in their order: an earlier one stays where it wants to, a later one that would touch it goes
 * a little down or up. One that finds no free place stays where it wants to be.
 * Throws for a note at a place that is none.
 */
export function placeNotes(
  notes: readonly Note[],
  pixelOf: PixelOf,
  measure: Measure,
  area: Area,
): readonly PlacedLine[] {
  const placed: PlacedLine[] = [];
  for (const note of notes) {
    const lines = boxOf(note, pixelOf, measure, area);
    const choices = DODGES.map((step) =>
      lines.map((line) => ({ ...line, top: line.top + (step * line.height) / 2 })),
    );
    const inside = (line: PlacedLine) => line.top >= EDGE && line.top + line.height <= area.height - EDGE;
    const free = choices.find((choice) =>
      choice.every((line) => inside(line) && !placed.some((other) => overlap(line, other))),
    );
    placed.push(...(free ?? lines));
  }
  return placed;
}
