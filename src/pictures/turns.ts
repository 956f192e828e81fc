/** Whose picture is drawn next: of clubs that wait, each has its turn, so that a busy one holds up itself alone. */
import type { Draw, Picture } from '../../shared/pictures/picture.ts';

/** Draws when the turn comes; where `over` is told before that, nothing is drawn and it rejects. */
export type DrawInTurn = (picture: Picture, over: AbortSignal) => Promise<Uint8Array>;

export interface Turns {
  of(club: string): DrawInTurn;
  /** How many pictures are drawn before another one of `club`. */
  before(club: string): number;
}

export interface TurnsOptions {
  atOnce?: number;
  /** Milliseconds until a picture in work is given up, and the next one begun. */
  stuckAfterMs?: number;
}

interface Place {
  picture: Picture;
  resolve(bytes: Uint8Array): void;
  reject(problem: unknown): void;
}

/** One is drawn while the other comes and goes: the thread draws one after the other. */
const MOST_AT_ONCE = 2;
/** A thousand times what a picture takes. */
const STUCK_AFTER_MS = 20_000;
/** Of one club. Each holds its chart's data, some 20 kB. */
const MOST_WAITING = 100;

export function openTurns(
  draw: Draw,
  { atOnce = MOST_AT_ONCE, stuckAfterMs = STUCK_AFTER_MS }: TurnsOptions = {},
): Turns {
  /** Only clubs that wait, the next one first. */
  const lines = new Map<string, Place[]>();
  let inWork = 0;

  const begin = async ({ picture, resolve, reject }: Place): Promise<void> => {
    inWork += 1;
    await unstuck(draw, picture, stuckAfterMs).then(resolve, reject);
    inWork -= 1;
    beginNext();
  };

  const beginNext = (): void => {
    for (const [club, line] of lines) {
      if (inWork >= atOnce) return;
      const place = line.shift();
      // Its next one comes after one of each other club: the loop meets it again at the end.
      lines.delete(club);
      if (line.length > 0) lines.set(club, line);
      if (place !== undefined) void begin(place);
    }
  };

  const leave = (club: string, place: Place): boolean => {
    const line = lines.get(club) ?? [];
    const at = line.indexOf(place);
    if (at < 0) return false;
    line.splice(at, 1);
    if (line.length === 0) lines.delete(club);
    return true;
  };

  return {
    of: (club) => (picture, over) =>
      new Promise((resolve, reject) => {
        const line = lines.get(club) ?? [];
        if (line.length >= MOST_WAITING) throw new Error('too many pictures of this club wait already');
        const place: Place = { picture, resolve, reject };
        lines.set(club, line);
        line.push(place);
        over.addEventListener('abort', () => {
          if (leave(club, place)) reject(over.reason);
        });
        beginNext();
      }),
    before: (club) => {
      const rounds = (lines.get(club)?.length ?? 0) + 1;
      return [...lines].reduce(
        (count, [of, { length }]) => count + (of === club ? length : Math.min(length, rounds)),
        inWork,
      );
    },
  };
}

/** An engine that never comes back must not keep all others waiting. */
async function unstuck(draw: Draw, picture: Picture, afterMs: number): Promise<Uint8Array> {
  let timer: NodeJS.Timeout | undefined;
  const stuck = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error(`not drawn after ${afterMs} ms: given up`)), afterMs);
  });
  try {
    return await Promise.race([draw(picture), stuck]);
  } finally {
    clearTimeout(timer);
  }
}
