/** Drawing on another thread: the same bytes, while this one goes on; and a thread that breaks or hangs. */
import { Worker } from 'node:worker_threads';
import { describe, expect, test } from 'vitest';
import type { Picture } from '../../../shared/pictures/picture.ts';
import { drawElsewhere } from '../../../src/pictures/elsewhere.ts';
import { draw } from '../../../src/pictures/local.ts';
import { openTurns } from '../../../src/pictures/turns.ts';

const bars = (value: number): Picture => ({
  name: 'bars',
  config: { type: 'bar', data: { labels: ['a', 'b'], datasets: [{ data: [value, 2] }] } },
  width: 800,
  height: 600,
  alt: 'Bars.',
});

function openLog() {
  const lines: { about: object; text: string }[] = [];
  const write = (about: object, text: string) => void lines.push({ about, text });
  return { lines, info: write, warn: write, error: write };
}

describe('another thread', () => {
  test('draws the same as this one, and leaves this one to others meanwhile', async () => {
    const there = drawElsewhere({ log: openLog() });
    await there(bars(1));
    let turns = 0;
    const counting = setInterval(() => {
      turns += 1;
    }, 1);
    const all = await Promise.all([1, 2, 3, 4].map((value) => there(bars(value))));
    clearInterval(counting);
    expect(turns).toBeGreaterThan(10);
    for (const [at, bytes] of all.entries())
      expect(Buffer.from(bytes).equals(Buffer.from(await draw(bars(at + 1))))).toBe(true);
  });

  test('says what of a picture can not be drawn, and draws the next one', async () => {
    const log = openLog();
    const there = drawElsewhere({ log });
    await expect(
      there({ ...bars(1), config: { type: 'nonsense', data: { datasets: [{ data: [1] }] } } }),
    ).rejects.toThrow('"bars" could not be drawn');
    expect((await there(bars(1))).length).toBeGreaterThan(1000);
    expect(log.lines).toEqual([]);
  });

  test.each([
    ['breaks', 'process.exit(7)', /ended with 7/, 20_000],
    ['throws', `throw new Error('no ink')`, /no ink/, 20_000],
    ['hangs', 'for (;;);', /ended with 1/, 1500],
  ])('that %s fails its pictures alone, with a line for the host', async (_how, deed, says, withinMs) => {
    const log = openLog();
    let started = 0;
    const there = drawElsewhere({
      log,
      withinMs,
      start: () => {
        started += 1;
        const answers = `parentPort.postMessage({ id, result: Uint8Array.of(${started}) })`;
        return new Worker(
          `const { parentPort } = require('node:worker_threads');
           parentPort.on('message', ({ id }) => { ${started === 1 ? deed : answers} });`,
          { eval: true },
        );
      },
    });
    const turns = openTurns(there);
    const { signal } = new AbortController();
    const lost = ['a', 'b'].map((club) => turns.of(club)(bars(1), signal));
    for (const one of lost) await expect(one).rejects.toThrow(says);
    expect(await turns.of('a')(bars(1), signal)).toEqual(Uint8Array.of(2));
    expect(log.lines).toMatchObject([
      { about: { thread: 'pictures' }, text: expect.stringContaining('a thread ended') },
    ]);
  });
});
