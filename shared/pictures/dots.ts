/** Many pieces as dots that don't hide each other: which are drawn, how large, and where they come to stand. */

export { MOST_MARKS, thin } from '../statistics/thin.ts';

/** One dot of a stack. */
export interface Dot {
  /** Layout pixels along the axis. */
  along: number;
  /** Its place in its stack, from 0. */
  level: number;
  /** How many the stack holds. */
  of: number;
}

/** How far dots stand apart, from middle to middle, in layout pixels; the largest that fits is taken. */
const STEPS = [18, 16, 14, 12, 11, 10, 9, 8, 7, 6, 5] as const;
/** Between two dots, so that they stay two. */
const BETWEEN = 1.5;

/** The radius of dots that stand this far apart, in layout pixels: 8.25 for 18. */
export const radiusOf = (step: number): number => (step - BETWEEN) / 2;

/** Runs of values that are less than a step from their first one. */
function runs(sorted: readonly number[], step: number): readonly (readonly number[])[] {
  const found: number[][] = [];
  for (const value of sorted) {
    const last = found.at(-1);
    if (last?.[0] !== undefined && value - last[0] < step) last.push(value);
    else found.push([value]);
  }
  return found;
}

/**
 * How many the highest stack of a row holds.
 * @example highest([100, 104, 150], 8) // 2
 */
export const highest = (sorted: readonly number[], step: number): number =>
  Math.max(0, ...runs(sorted, step).map(({ length }) => length));

const middleOf = (run: readonly number[]): number => ((run[0] ?? 0) + (run.at(-1) ?? 0)) / 2;

/**
 * Stacks of dots along an axis: what lies less than a step apart stands on top of each other, at most half a step from
 * its own place (Wilkinson, "Dot Plots", The American Statistician 53:276, 1999). A stack of more than `high` goes on
 * beside itself.
 * @param sorted layout pixels along the axis, ascending
 */
export function stack(sorted: readonly number[], step: number, high: number): readonly Dot[] {
  let edge = Number.NEGATIVE_INFINITY;
  return runs(sorted, step).flatMap((run) => {
    const columns = Math.ceil(run.length / high);
    const first = Math.max(middleOf(run) - ((columns - 1) / 2) * step, edge);
    edge = first + columns * step;
    return run.map((_value, index) => {
      const column = index % columns;
      const of = Math.ceil((run.length - column) / columns);
      return { along: first + column * step, level: Math.floor(index / columns), of };
    });
  });
}

/**
 * The stacks of several rows with dots of one size: the largest with which no stack is higher than `height` pixels.
 * Where even the least does not fit, stacks go on beside themselves.
 * @param rows each ascending
 */
export function stacks(
  rows: readonly (readonly number[])[],
  height: number,
  leastStep: number,
): { step: number; rows: readonly (readonly Dot[])[] } {
  const fits = (step: number) => rows.every((row) => highest(row, step) * step <= height);
  const step = STEPS.find((size) => size > leastStep && fits(size)) ?? leastStep;
  const high = Math.max(1, Math.floor(height / step));
  return { step, rows: rows.map((row) => stack(row, step, high)) };
}
