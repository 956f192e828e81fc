/** Timing for the bench: many runs, percentiles, and how long the event loop was held. */
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';

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

export const median = async (runs: number, work: (run: number) => unknown): Promise<number> =>
  percentile(await timed(runs, work), 0.5);

export const milliseconds = (time: number): string =>
  time < 0.1 ? `${(time * 1000).toFixed(1)} µs` : `${time.toFixed(time < 10 ? 2 : 0)} ms`;

/** `0.61 ms, p99 1.20 ms` */
export const spread = (sorted: Float64Array): string =>
  `${milliseconds(percentile(sorted, 0.5))}, p99 ${milliseconds(percentile(sorted, 0.99))}`;

export interface Watched {
  /** Milliseconds. */
  took: number;
  /** The longest that nothing else could be done meanwhile, in milliseconds. */
  held: number;
}

const LOOKED_AT_EVERY_MS = 1;

/** Does it once, and watches the event loop meanwhile. */
export async function watched(work: () => Promise<unknown>): Promise<Watched> {
  const delay = monitorEventLoopDelay({ resolution: LOOKED_AT_EVERY_MS });
  delay.enable();
  // The first look is only taken down with the next one.
  await wait(2 * LOOKED_AT_EVERY_MS);
  const from = performance.now();
  await work();
  const took = performance.now() - from;
  await wait(2 * LOOKED_AT_EVERY_MS);
  delay.disable();
  return { took, held: Math.max(0, delay.max / 1e6 - LOOKED_AT_EVERY_MS) };
}

/** The longest of both. */
export const worst = (all: readonly Watched[]): Watched => ({
  took: Math.max(...all.map(({ took }) => took)),
  held: Math.max(...all.map(({ held }) => held)),
});
