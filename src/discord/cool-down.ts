/** A member who does very much at once is asked for a moment, so that their club and others are answered. */

export interface CoolDownOptions {
  /** Of one member in one club, within `withinMs`. */
  most: number;
  withinMs: number;
}

export interface Deed {
  club: string;
  member: string;
  /** The interaction's id. */
  id: string;
}

export interface CoolDown {
  /** Whether to take it. What is delivered once more is told the same again. */
  takes(deed: Deed): boolean;
}

/** Nobody at a scale types two lines a second for ten seconds. */
const USUAL: CoolDownOptions = { most: 30, withinMs: 10_000 };
/** Longer than the platform delivers anything again. */
const REMEMBERED_MS = 15 * 60_000;

/** @param clock milliseconds that only go forward, whatever the time of day does */
export function openCoolDown(
  { most, withinMs }: CoolDownOptions = USUAL,
  clock: () => number = () => performance.now(),
): CoolDown {
  /** What was taken of whom, and when; whoever did something last stands last. */
  const taken = new Map<string, { id: string; at: number }[]>();
  const turnedAway = new Map<string, number>();

  const forget = (now: number): void => {
    for (const [who, deeds] of taken) {
      if (now - (deeds.at(-1)?.at ?? 0) < withinMs) break;
      taken.delete(who);
    }
    for (const [id, at] of turnedAway) {
      if (now - at < REMEMBERED_MS) break;
      turnedAway.delete(id);
    }
  };

  return {
    takes: ({ club, member, id }) => {
      const now = clock();
      forget(now);
      if (turnedAway.has(id)) return false;
      const who = `${club} ${member}`;
      const lately = (taken.get(who) ?? []).filter(({ at }) => now - at < withinMs);
      if (lately.some((deed) => deed.id === id)) return true;
      if (lately.length >= most) {
        turnedAway.set(id, now);
        return false;
      }
      taken.delete(who);
      taken.set(who, [...lately, { id, at: now }]);
      return true;
    },
  };
}
