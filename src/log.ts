/** The log: ids and timings only, never what a member weighed or wrote. */
import { type DestinationStream, pino } from 'pino';
import { adviceOn } from './advice.ts';

export interface Log {
  info(about: object, text: string): void;
  warn(about: object, text: string): void;
  error(about: object, text: string): void;
}

/**
 * Of an error what finds the bug, and what to do. Its other fields stay out: the platform's errors carry the whole message that was
 * refused, the driver's the values that were bound.
 */
function errorFacts(error: unknown): object {
  if (!(error instanceof Error)) return { type: typeof error };
  const { name, message, stack } = error;
  const code = 'code' in error ? error.code : undefined;
  return { type: name, message, code, todo: adviceOn(error), stack };
}

/** Writes lines of JSON to standard output, or to `destination`. */
export const openLog = (level: string, destination?: DestinationStream): Log => {
  const options = { level, serializers: { err: errorFacts } };
  return destination === undefined ? pino(options) : pino(options, destination);
};

export const SILENT: Log = { info: () => {}, warn: () => {}, error: () => {} };
