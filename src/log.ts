/** The log: ids and timings only, never what a member weighed or wrote. */
import { type DestinationStream, pino } from 'pino';
import { adviceOn } from './advice.ts';

export interface Log {
  info(about: object, text: string): void;
  warn(about: object, text: string): void;
  error(about: object, text: string): void;
}

/**
 * What a line says of its `err`: what finds the bug, and what to do. Its other fields stay out: the platform's errors
 * carry the whole message that was refused, the driver's the values that were bound.
 */
export function errorFacts(error: unknown): object {
  if (!(error instanceof Error)) return { type: typeof error };
  const { name, message, stack } = error;
  const code = 'code' in error ? error.code : undefined;
  const status = 'status' in error ? error.status : undefined;
  return { type: name, message, code, status, todo: adviceOn(error), stack };
}

/** Writes lines of JSON to standard output, or to `destination`. */
export const openLog = (level: string, destination?: DestinationStream): Log => {
  const options = { level, serializers: { err: errorFacts } };
  return destination === undefined ? pino(options) : pino(options, destination);
};

export const SILENT: Log = { info: () => {}, warn: () => {}, error: () => {} };
