/** The lines of the calibration as tests, on fewer clubs than a full run draws. */
import { describe, expect, test } from 'vitest';
import { LINES, type Line } from './lines.ts';
import { type Figure, figuresOf, simulate } from './tally.ts';

const SEED = 1;
/** With few clubs a figure is rough. The clubs are the same in each run, so that luck is not drawn again. */
const ERRORS_ALLOWED = 4;

const named = ({ what, scenario, pieces, members }: Line): string =>
  `${what}: ${scenario}, ${pieces} pieces of ${members} members`;

/** @param pieces in all the clubs of a line: few large clubs, or many small ones */
export function expectLines(pieces: number): void {
  describe('the bound holds', () => {
    test.each(LINES.map((line) => [named(line), line] as const))('%s', (_name, line) => {
      const figures = figuresOf(simulate(line, SEED, 0, Math.ceil(pieces / line.pieces)));
      expect(figures).not.toEqual([]);
      expect(figures.filter((figure) => !isNear(line, figure))).toEqual([]);
    });
  });
}

/** Whether the figure is within its bound, or no farther from it than luck takes one that is on it. */
function isNear({ least, most }: Line, { count, mean, standardError }: Figure): boolean {
  const reach = (bound: number) =>
    ERRORS_ALLOWED * Math.max(standardError, Math.sqrt((Math.abs(bound) * (1 - Math.abs(bound))) / count));
  return mean >= least - reach(least) && mean <= most + reach(most);
}
