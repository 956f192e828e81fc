/** What the launcher and its processes tell each other. */
import type { Looked } from '../health/checks.ts';

export type Order = { trimtally: 'look'; id: number } | { trimtally: 'stop' };

export interface Report {
  trimtally: 'looked';
  /** Of the order that it answers. */
  id: number;
  health: Looked[];
  /** As prom-client tells it in JSON. */
  metrics: object[];
}

const kindOf = (message: unknown): unknown =>
  typeof message === 'object' && message !== null && 'trimtally' in message ? message.trimtally : null;

export const isOrder = (message: unknown): message is Order =>
  kindOf(message) === 'look' || kindOf(message) === 'stop';

export const isReport = (message: unknown): message is Report => kindOf(message) === 'looked';
