/** Whose picture is drawn next: one club's many never hold up another's one. */
import { setTimeout as wait } from 'node:timers/promises';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Draw, Picture } from '../../../shared/pictures/picture.ts';
import { openTurns } from '../../../src/pictures/turns.ts';

const named = (name: string): Picture => ({ name, config: {}, width: 1, height: 1, alt: name });
const never = (): AbortSignal => new AbortController().signal;
/** Of a picture that a test does not wait for: it is given up when the test is over. */
const dropped = (): void => {};

/** A pen that draws what it is told to finish, and knows what it began. */
function pen() {
  const begun: string[] = [];
  const finishing = new Map<string, () => void>();
  const draw: Draw = (picture) => {
    begun.push(picture.name);
    return new Promise((resolve) => finishing.set(picture.name, () => resolve(Buffer.from(picture.name))));
  };
  const finish = async (name: string): Promise<void> => {
    finishing.get(name)?.();
    await wait(0);
  };
  return { begun, draw, finish };
}

describe('turns', () => {
  test('go from club to club, and within one in their order', async () => {
    const { begun, draw, finish } = pen();
    const turns = openTurns(draw, { atOnce: 1 });
    const drawn = ['a1', 'a2', 'a3', 'a4', 'b1', 'c1', 'b2'].map((name) =>
      turns.of(name.slice(0, 1))(named(name), never()),
    );
    for (let at = 0; at < drawn.length; at += 1) await finish(begun[at] ?? '');
    expect(begun).toEqual(['a1', 'a2', 'b1', 'c1', 'a3', 'b2', 'a4']);
    const all = await Promise.all(drawn);
    expect(all.map(String)).toEqual(['a1', 'a2', 'a3', 'a4', 'b1', 'c1', 'b2']);
  });

  test('are as many at once as told, and count what is before a club', async () => {
    const { begun, draw, finish } = pen();
    const turns = openTurns(draw, { atOnce: 2 });
    for (let at = 0; at < 12; at += 1)
      turns
        .of('busy')(named(`busy-${at}`), never())
        .catch(dropped);
    expect([begun.length, turns.before('busy'), turns.before('other')]).toEqual([2, 12, 3]);
    turns.of('other')(named('other'), never()).catch(dropped);
    await finish('busy-0');
    await finish('busy-1');
    expect(begun.slice(2)).toEqual(['busy-2', 'other']);
  });

  test('are left by whoever can wait no longer: nothing is drawn for them', async () => {
    const { begun, draw, finish } = pen();
    const turns = openTurns(draw, { atOnce: 1 });
    const over = new AbortController();
    const first = turns.of('a')(named('first'), never());
    const given = turns.of('a')(named('given up'), over.signal);
    const last = turns.of('a')(named('last'), never());
    over.abort();
    await expect(given).rejects.toThrow();
    await finish('first');
    await finish('last');
    await Promise.all([first, last]);
    expect(begun).toEqual(['first', 'last']);
  });

  test('of one club are a hundred at most', async () => {
    const turns = openTurns(pen().draw, { atOnce: 1 });
    const all = Array.from({ length: 102 }, (_, at) => turns.of('a')(named(`${at}`), never()));
    for (const one of all) one.catch(dropped);
    await expect(all.at(-1)).rejects.toThrow('too many pictures of this club');
    expect(turns.before('b')).toBe(2);
  });
});

describe('a pen', () => {
  test('that never comes back is given up, again and again, and the next picture begun', async () => {
    let stuck = true;
    const draw: Draw = () => (stuck ? new Promise(() => {}) : Promise.resolve(Uint8Array.of(1)));
    const turns = openTurns(draw, { atOnce: 2, stuckAfterMs: 30 });
    const lost = ['a', 'b', 'c'].map((club) => turns.of(club)(named(club), never()));
    for (const one of lost) await expect(one).rejects.toThrow('not drawn after 30 ms');
    stuck = false;
    expect(await turns.of('a')(named('next'), never())).toHaveLength(1);
  });

  test('that throws, at once or later, holds nobody up', async () => {
    const draw: Draw = (picture) => {
      if (picture.name === 'now') throw new Error('no ink');
      return picture.name === 'later'
        ? Promise.reject(new Error('no paper'))
        : Promise.resolve(new Uint8Array());
    };
    const turns = openTurns(draw, { atOnce: 1 });
    const all = await Promise.allSettled(
      ['now', 'later', 'now', 'fine'].map((name) => turns.of('a')(named(name), never())),
    );
    expect(all.map(({ status }) => status)).toEqual(['rejected', 'rejected', 'rejected', 'fulfilled']);
  });
});

test('whatever clubs ask for, each picture is drawn once, and none waits for more than its round of the others', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.constantFrom('a', 'a', 'a', 'b', 'c'), { maxLength: 40 }),
      fc.integer({ min: 1, max: 3 }),
      async (clubs, atOnce) => {
        const order: string[] = [];
        const turns = openTurns(
          async ({ name }) => {
            order.push(name);
            await wait(0);
            return new Uint8Array();
          },
          { atOnce },
        );
        await Promise.all(clubs.map((club, at) => turns.of(club)(named(`${club}${at}`), never())));
        expect(order.toSorted()).toEqual(clubs.map((club, at) => `${club}${at}`).toSorted());
        const place = order.findIndex((name) => name.startsWith('b'));
        // The busiest club has at most one turn between two of another, besides those that were begun before.
        const before = order.slice(0, Math.max(place, 0)).filter((name) => name.startsWith('a')).length;
        expect(before).toBeLessThanOrEqual(atOnce + 1);
      },
    ),
    { numRuns: 100 },
  );
});
