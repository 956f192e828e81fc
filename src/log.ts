/** The log: ids and timings only, never what a member weighed or wrote. */
import { pino } from 'pino';

export interface Log {
  info(about: object, text: string): void;
  warn(about: object, text: string): void;
  error(about: object, text: string): void;
}

export const openLog = (level: string): Log => pino({ level });

export const SILENT: Log = { info: () => {}, warn: () => {}, error: () => {} };
