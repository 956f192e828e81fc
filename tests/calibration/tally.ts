/** Sums of what many clubs add, so that parts of a run can be put together in any order. */
import { habitsOf, type Line } from './lines.ts';
import { chanceOf } from './random.ts';

export interface Sums {
  count: number;
  sum: number;
  squares: number;
}

/** By the figure's name. */
export type Tally = Record<string, Sums>;

export interface Figure {
  name: string;
  /** How many clubs gave a value. */
  count: number;
  mean: number;
  standardError: number;
}

/** Draws the clubs of a line from one number to another. The same seed and number give the same club. */
export function simulate(line: Line, seed: number, from: number, to: number): Tally {
  const tally: Tally = {};
  const name = `${line.scenario} ${line.pieces} ${line.measure.name}`;
  for (let draw = from; draw < to; draw++) {
    const found = line.measure(habitsOf(line), line.pieces, line.members, chanceOf(seed, name, draw));
    for (const [figure, value] of found) add(tally, figure, { count: 1, sum: value, squares: value ** 2 });
  }
  return tally;
}

export function addTally(to: Tally, more: Tally): void {
  for (const [figure, sums] of Object.entries(more)) add(to, figure, sums);
}

function add(tally: Tally, figure: string, { count, sum, squares }: Sums): void {
  const before = tally[figure] ?? { count: 0, sum: 0, squares: 0 };
  tally[figure] = {
    count: before.count + count,
    sum: before.sum + sum,
    squares: before.squares + squares,
  };
}

/** In the order of their names. A figure that fewer than 5 in 100 of the values went to is left out. */
export function figuresOf(tally: Tally): Figure[] {
  const entries = Object.entries(tally).sort(([one], [two]) => (one < two ? -1 : 1));
  const most = entries.reduce((sum, [, { count }]) => sum + count, 0);
  return entries.flatMap(([name, { count, sum, squares }]) => {
    const mean = sum / count;
    const variance = Math.max(0, squares / count - mean ** 2);
    return count < 0.05 * most ? [] : [{ name, count, mean, standardError: Math.sqrt(variance / count) }];
  });
}

/** Whether a figure keeps its line's bound, with the standard errors that the line allows. */
export function holds({ least, most, allowed }: Line, { mean, standardError }: Figure): boolean {
  const reach = allowed * standardError;
  return mean >= least - reach && mean <= most + reach;
}
