/** A table as lines of equal width letters, narrow enough for a phone. */
import { clip } from './clip.ts';

/** What a phone shows of a line of equal width letters before it breaks. */
export const TABLE_LINE = 38;

const NUMBERLIKE = /^[^\p{L}]*\p{N}/u;
const FENCE = /`/g;

/** In a block of code nothing is markup but its end. */
const plain = (cell: string): string => cell.replace(FENCE, "'").replace(/\s+/g, ' ').trim();
const widthOf = (text: string): number => [...text].length;
const pad = (text: string, width: number, right: boolean): string => {
  const space = ' '.repeat(Math.max(0, width - widthOf(text)));
  return right ? space + text : text + space;
};

/**
 * Prints rows of cells, the first row their head: columns of figures stand to the right, others to the left.
 * Where a line would be too wide for a phone, the first column is shortened.
 *
 * @example printTable([['cut', 'came off'], ['brisket', '17.4 %']]) // ['cut      came off', 'brisket    17.4 %']
 */
export function printTable(rows: readonly (readonly string[])[]): string[] {
  const cells = rows.map((row) => row.map(plain));
  const columns = Math.max(0, ...cells.map((row) => row.length));
  const column = (index: number): string[] => cells.map((row) => row[index] ?? '');
  const widths = Array.from({ length: columns }, (_, index) => Math.max(...column(index).map(widthOf)));
  const right = widths.map((_, index) => {
    const body = column(index)
      .slice(1)
      .filter((cell) => cell !== '');
    return index > 0 && body.length > 0 && body.every((cell) => NUMBERLIKE.test(cell));
  });

  const total = widths.reduce((sum, width) => sum + width, 0);
  const gap = total + 2 * (columns - 1) > TABLE_LINE ? 1 : 2;
  const over = Math.max(0, total + gap * (columns - 1) - TABLE_LINE);
  const first = Math.max(1, (widths[0] ?? 0) - over);

  return cells.map((row) => {
    const printed = widths.map((width, index) => {
      const cell = row[index] ?? '';
      return index === 0 ? pad(clip(cell, first), first, false) : pad(cell, width, right[index] ?? false);
    });
    return clip(printed.join(' '.repeat(gap)).trimEnd(), TABLE_LINE);
  });
}
