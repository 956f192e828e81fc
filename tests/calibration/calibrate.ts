/**
 * `npm run calibrate`: how often the methods are right in made-up clubs of which the truth is known, as a table. 10 to
 * 15 minutes on two cores. `-- --draws 400` draws fewer clubs a line, `--seed 2` other ones.
 */
import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Drawn, Task } from './draw.ts';
import { LINES, type Line } from './lines.ts';
import { addTally, type Figure, figuresOf, holds, type Tally } from './tally.ts';

/** Clubs in one task. */
const TOGETHER = 50;

const { values } = parseArgs({
  options: { draws: { type: 'string', default: '4000' }, seed: { type: 'string', default: '1' } },
});
const [draws, seed] = [wholeNumber('draws', values.draws), wholeNumber('seed', values.seed)];

const from = performance.now();
const tallies = await drawAll();
const minutes = (performance.now() - from) / 60_000;
const lines = LINES.flatMap((line, place) =>
  figuresOf(tallies[place] ?? {}).map((figure) => ({
    cells: cellsOf(line, figure),
    kept: holds(line, figure),
  })),
);
console.log('| what | clubs | pieces / members | of | values | found | s.e. | bound | holds |');
console.log('|---|---|--:|---|--:|--:|--:|---|---|');
for (const { cells, kept } of lines) console.log(`| ${[...cells, kept ? 'yes' : '**no**'].join(' | ')} |`);
const broken = lines.filter(({ kept }) => !kept).length;
console.log(
  `\n${draws} clubs a line, seed ${seed}, Node ${process.version}, ${minutes.toFixed(1)} minutes. ${lines.length - broken} figures hold, ${broken} do not.`,
);
process.exitCode = broken > 0 ? 1 : 0;

function wholeNumber(name: string, text: string): number {
  const number = Number(text);
  if (!Number.isSafeInteger(number) || number < 1)
    throw new RangeError(`--${name} takes a whole number from 1`);
  return number;
}

/** By line. Every club has a chance of its own, so that it does not matter which process draws it. */
async function drawAll(): Promise<Tally[]> {
  const tasks: Task[] = LINES.flatMap((_line, place) =>
    Array.from({ length: Math.ceil(draws / TOGETHER) }, (_, part) => ({
      place,
      seed,
      from: part * TOGETHER,
      to: Math.min(draws, (part + 1) * TOGETHER),
    })),
  );
  const found: Tally[] = LINES.map(() => ({}));
  const waiting = tasks.values();
  await Promise.all(Array.from({ length: availableParallelism() }, () => drawTasks(waiting, found)));
  return found;
}

/** One process, until there are no more tasks. */
function drawTasks(waiting: Iterator<Task>, found: Tally[]): Promise<void> {
  const child = fork(join(import.meta.dirname, 'draw.ts'));
  const next = () => {
    const { value } = waiting.next();
    if (value === undefined) child.disconnect();
    else child.send(value);
  };
  return new Promise((done, failed) => {
    child.on('message', ({ place, tally }: Drawn) => {
      addTally(found[place] ?? {}, tally);
      next();
    });
    child.on('error', failed);
    child.on('exit', (code) => (code === 0 ? done() : failed(new Error(`a process ended with ${code}`))));
    next();
  });
}

function cellsOf(line: Line, { name, count, mean, standardError }: Figure): string[] {
  const { what, scenario, pieces, members } = line;
  const size = `${pieces.toLocaleString('en')} / ${members}`;
  return [what, scenario, size, name, `${count}`, percent(mean), percent(standardError), boundOf(line)];
}

function percent(share: number): string {
  // Adding 0 takes the sign off a rounded -0.
  return `${(Number((100 * share).toFixed(1)) + 0).toFixed(1)} %`;
}

function boundOf({ least, most, allowed }: Line): string {
  const whole = (share: number) => `${Math.round(100 * share)}`;
  const bounds = [
    ...(least === 0 ? [] : [most === 1 ? `at least ${whole(least)} %` : whole(least)]),
    ...(most === 1 ? [] : [least === 0 ? `at most ${whole(most)} %` : `${whole(most)} %`]),
  ];
  return `${bounds.join(' to ')}${allowed === 0 ? '' : `, ${allowed} s.e. allowed`}`;
}
