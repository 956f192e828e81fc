/** Long work in short turns: everybody else gets theirs in between. */
import { setImmediate as others } from 'node:timers/promises';

const TURN_MS = 8;

/** To be awaited often: lets the others go first once this turn has lasted long enough. */
export type Breather = () => Promise<void>;

export function breather(turnMs = TURN_MS): Breather {
  let began = performance.now();
  return async () => {
    if (performance.now() - began < turnMs) return;
    await others();
    began = performance.now();
  };
}
