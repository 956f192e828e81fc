/** Which change of a message is its newest: what was begun before it, and comes later, must not stand in its place. */

export interface Change {
  isNewest(): boolean;
}

export interface Changes {
  /** This moment among those at which changes begin: each comes after the one before, however close. */
  moment(): number;
  /** A change of `message` begins; one that was begun before, where its message became known only now, says since when. */
  begin(message: string, since?: number): Change;
}

/** Longer than any answer and any picture is on its way. */
const REMEMBERED_MS = 120_000;

export function openChanges(clock: () => number = () => performance.now()): Changes {
  /** By message, the one that was begun last is the last. */
  const newest = new Map<string, { change: Change; moment: number; at: number }>();
  let last = 0;
  const moment = (): number => {
    last += 1;
    return last;
  };

  const forget = (now: number): void => {
    for (const [message, { at }] of newest) {
      if (now - at < REMEMBERED_MS) break;
      newest.delete(message);
    }
  };

  return {
    moment,
    begin: (message, since) => {
      const now = clock();
      forget(now);
      const change: Change = { isNewest: () => newest.get(message)?.change === change };
      const before = newest.get(message);
      if (since !== undefined && before !== undefined && before.moment > since) return change;
      newest.delete(message);
      newest.set(message, { change, moment: moment(), at: now });
      return change;
    },
  };
}
