/** Stopping when the host says so. */
import { constants } from 'node:os';
import type { Log } from './log.ts';

const SIGNALS = ['SIGINT', 'SIGTERM'] as const;

const LINGER_MS = 2000;

export interface Running {
  /** Takes nothing new, finishes what is on its way, and lets everything go. */
  close(): Promise<void>;
  /** Ends at once what would outlive this process. */
  kill?(): void;
}

/**
 * Starts something that the first signal closes; a second one, or one while it still starts, ends the process at once.
 * Nobody else ends it then: in a container it is the first process, which no signal ends by itself.
 */
export async function untilStopped(log: Log, start: () => Promise<Running>): Promise<void> {
  let running: Running | null = null;
  let closing = false;
  const end = (signal: NodeJS.Signals): never => {
    running?.kill?.();
    process.exit(128 + constants.signals[signal]);
  };
  const stop = async ({ close }: Running, signal: NodeJS.Signals): Promise<void> => {
    closing = true;
    log.info({ signal }, 'stopping: finishing what is on its way');
    try {
      await close();
      log.info({ signal }, 'stopped');
    } catch (err) {
      log.error({ err }, 'could not stop well');
      process.exitCode = 1;
    }
    for (const each of SIGNALS) process.off(each, take);
    // Nothing is left to do. What still hangs somewhere must not keep the host waiting.
    setTimeout(() => process.exit(), LINGER_MS).unref();
  };
  const take = (signal: NodeJS.Signals): void => {
    if (running === null || closing) end(signal);
    else void stop(running, signal);
  };
  for (const signal of SIGNALS) process.on(signal, take);
  try {
    running = await start();
  } catch (problem) {
    for (const signal of SIGNALS) process.off(signal, take);
    throw problem;
  }
}
