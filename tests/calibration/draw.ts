/** A process that draws clubs for the one that started it. */
import { LINES } from './lines.ts';
import { simulate, type Tally } from './tally.ts';

/** Of the line at this place, the clubs from one number to another. */
export interface Task {
  place: number;
  seed: number;
  from: number;
  to: number;
}

export interface Drawn {
  place: number;
  tally: Tally;
}

process.on('message', ({ place, seed, from, to }: Task) => {
  const line = LINES[place];
  const drawn: Drawn = { place, tally: line === undefined ? {} : simulate(line, seed, from, to) };
  process.send?.(drawn);
});
