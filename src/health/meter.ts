/** What is counted while the bot runs: times and outcomes, never whose, nor in which club. */
import type { Answer } from '../../shared/chat/request.ts';
import type { Draw } from '../../shared/pictures/picture.ts';

/** `late`: the platform no longer waited, or had an answer already; `fault`: something of ours broke. */
export type Outcome = 'answered' | 'asked' | 'refused' | 'form' | 'late' | 'fault';

export interface Told {
  /** The command alone, as it is registered: `weigh`, `mine units`. */
  command: string;
  outcome: Outcome;
  /** Milliseconds until the platform knew that there is an answer; null where it never did. */
  acknowledgedMs: number | null;
  /** Milliseconds until all was said. */
  ms: number;
}

export interface Meter {
  told(told: Told): void;
  drew(outcome: 'drawn' | 'failed', ms: number): void;
}

export const UNMETERED: Meter = { told: () => {}, drew: () => {} };

/** The code of what broke, as the desk tells it. */
const FAULT = 'fault';

export function outcomeOf(answer: Answer): Outcome {
  if (answer.kind === 'form') return 'form';
  if (answer.failed === undefined) return 'answered';
  if (answer.failed.code === FAULT) return 'fault';
  return answer.failed.asks ? 'asked' : 'refused';
}

/** The same pen, with a look at the clock before and after. */
export const metered =
  (draw: Draw, meter: Pick<Meter, 'drew'>): Draw =>
  async (picture) => {
    const startedAt = performance.now();
    let outcome: 'drawn' | 'failed' = 'failed';
    try {
      const drawn = await draw(picture);
      outcome = 'drawn';
      return drawn;
    } finally {
      meter.drew(outcome, performance.now() - startedAt);
    }
  };
