/** Drawing on another thread: a picture takes some hundredths of a second, in which nobody else would be answered. */
import type { Worker } from 'node:worker_threads';
import type { Draw, Picture } from '../../shared/pictures/picture.ts';
import type { Log } from '../log.ts';
import { openThread, startWorker } from '../thread.ts';

/** Far beyond what a picture takes, and what the first one waits for. */
const WITHIN_MS = 15_000;

export interface DrawElsewhereOptions {
  log: Log;
  start?: () => Worker;
  /** Milliseconds until a thread that says nothing is ended. */
  withinMs?: number;
}

/** A pen on another thread. Where that breaks or hangs its pictures fail, and the next one has a new thread. */
export function drawElsewhere({
  log,
  start = () => startWorker(import.meta.url, './worker'),
  withinMs = WITHIN_MS,
}: DrawElsewhereOptions): Draw {
  const { ask } = openThread<Picture, Uint8Array>({ start, withinMs, log, name: 'pictures' });
  return ask;
}
