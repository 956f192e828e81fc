/** Timing for the bench: many runs, percentiles, and one table. */

export interface Row {
  what: string;
  value: string;
  /** What it is to be read beside: a floor, a plain way of doing the same. */
  beside: string;
}

/** Milliseconds of each run, in rising order. */
export async function timed(runs: number, work: (run: number) => unknown): Promise<Float64Array> {
  const times = new Float64Array(runs);
  for (let run = 0; run < runs; run++) {
    const from = performance.now();
    await work(run);
    times[run] = performance.now() - from;
  }
  return times.sort();
}

export const percentile = (sorted: Float64Array, share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;

export const milliseconds = (time: number): string =>
  time < 0.1 ? `${(time * 1000).toFixed(1)} µs` : `${time.toFixed(time < 10 ? 2 : 0)} ms`;

/** `0.61 ms, p99 1.20 ms` */
export const spread = (sorted: Float64Array): string =>
  `${milliseconds(percentile(sorted, 0.5))}, p99 ${milliseconds(percentile(sorted, 0.99))}`;

export function printTable(rows: readonly Row[]): void {
  const width = (of: keyof Row) => Math.max(...rows.map((row) => row[of].length));
  const [what, value] = [width('what'), width('value')];
  for (const row of rows)
    console.log(`${row.what.padEnd(what)}  ${row.value.padEnd(value)}  ${row.beside}`.trimEnd());
}
