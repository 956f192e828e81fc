import { describe, test } from 'vitest';
import { killInTheMiddle } from './kill.ts';

/** Park and Miller's generator: the same moments in each run. */
function* numbers(seed: number): Generator<number, never> {
  for (let state = seed; ; ) {
    state = (state * 48_271) % 2_147_483_647;
    yield state / 2_147_483_647;
  }
}

const random = numbers(20_260_704);
const moment = (): [number, number] => [
  1 + Math.floor(random.next().value * 150),
  Math.floor(random.next().value * 120),
];

describe('a bot killed at a random moment', () => {
  test.each(Array.from({ length: 10 }, moment))(
    'after %i answers and %i ms has kept whole what it answered for, and keeps nothing twice',
    (answers, afterMs) => killInTheMiddle(answers, afterMs),
  );
});
