import { createCanvas, loadImage } from '@napi-rs/canvas';
import { Chart } from 'chart.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shows } from '../../../shared/measure/show.ts';
import { NANOGRAMS, type Nanograms } from '../../../shared/measure/units.ts';
import { averagesOf } from '../../../shared/pictures/averages.ts';
import type { Group } from '../../../shared/pictures/averages-rows.ts';
import { options, SIZE } from '../../../shared/pictures/frame.ts';
import type { Note } from '../../../shared/pictures/notes.ts';
import { GROUND, INK } from '../../../shared/pictures/palette.ts';
import type { Picture } from '../../../shared/pictures/picture.ts';
import { whereItStands } from '../../../shared/pictures/stands.ts';
import { whereItWent } from '../../../shared/pictures/where.ts';
import { pictures } from '../../../shared/words/en/pictures.ts';
import { pieceFigures } from '../../../shared/yield/piece.ts';
import { draw, layOut } from '../../../src/pictures/local.ts';
import { overlap, type PlacedLine, placeNotes } from '../../../src/pictures/placement.ts';
import { CLUBS, groupOf, standingOf } from '../../shared/pictures/clubs.ts';

const POUNDS = shows({ locale: 'en-US', units: 'lb' });
const KILOS = shows({ locale: 'de', units: 'kg' });

const grams = (value: number) => Math.round(value * NANOGRAMS.g) as Nanograms;
const UNWEIGHED = {
  bagged: null,
  trim: null,
  left: null,
  added: null,
  cooked: null,
  scraps: null,
  served: null,
};
const STAGES = {
  bought: {},
  trim: { trim: grams(1174) },
  tiny: { bagged: grams(6720), trim: grams(20) },
  injected: { trim: grams(100), added: grams(900) },
  cooked: { trim: grams(1174), cooked: grams(3357) },
  huge: { trim: grams(4100), cooked: grams(1300), scraps: grams(20) },
  all: {
    bagged: grams(6600),
    trim: grams(1174),
    added: grams(400),
    cooked: grams(3357),
    served: grams(2900),
  },
};

function pictureOf(
  stage: keyof typeof STAGES,
  show = POUNDS,
  about = 'Whole brisket, piece 128',
  bought = 6727,
) {
  const weighed = {
    pieces: 1,
    saved: [],
    price: null,
    bought: grams(bought),
    ...UNWEIGHED,
    ...STAGES[stage],
  };
  return whereItWent(pieceFigures(weighed), about, pictures(show).whereItWent, show);
}

/** A picture of one text on an empty ground. */
const pictureOfText = (text: string, more: Partial<Note> = {}): Picture => ({
  name: 'a-text',
  width: 300,
  height: 60,
  alt: text,
  config: {
    type: 'bar',
    data: { labels: [], datasets: [] },
    options: {
      ...options(0, 0, [{ text, x: 10, y: 30, size: 24, colour: INK, ...more }]),
      scales: { x: { display: false }, y: { display: false } },
    },
  },
});

async function pixels(png: Uint8Array): Promise<Uint8ClampedArray> {
  const image = await loadImage(Buffer.from(png));
  const context = createCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  return context.getImageData(0, 0, image.width, image.height).data;
}

/** How many pixels are darker than the middle between ink and ground. */
async function inked(picture: Picture): Promise<number> {
  const data = await pixels(await draw(picture));
  return data.filter((value, index) => index % 4 === 0 && value < 128).length;
}

const size = (png: Uint8Array) => {
  const view = new DataView(png.buffer, png.byteOffset);
  return [view.getUint32(16), view.getUint32(20)];
};

describe('a drawn picture', () => {
  test.each(Object.keys(STAGES) as (keyof typeof STAGES)[])(
    '%s is a PNG at double density',
    async (stage) => {
      const picture = pictureOf(stage);
      const png = await draw(picture);
      expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
      expect(size(png)).toEqual([2 * picture.width, 2 * picture.height]);
    },
  );

  test('is opaque to its corners', async () => {
    const data = await pixels(await draw(pictureOf('trim')));
    expect([...data.subarray(0, 4)]).toEqual([255, 255, 255, 255]);
    expect(data.every((value, index) => index % 4 !== 3 || value === 255)).toBe(true);
    expect(GROUND).toBe('#FFFFFF');
  });

  test('shows its bars in their colours', async () => {
    const data = await pixels(await draw(pictureOf('trim')));
    const seen = new Set<string>();
    for (let at = 0; at < data.length; at += 4) seen.add(data.subarray(at, at + 3).join());
    expect(seen).toContain('0,114,178');
    expect(seen).toContain('213,94,0');
  });

  test('is left as it was, so that it can be drawn again', async () => {
    const picture = pictureOf('all');
    const before = structuredClone(picture);
    const [first, second] = [await draw(picture), await draw(picture)];
    expect(picture).toStrictEqual(before);
    expect(Buffer.from(first).equals(second)).toBe(true);
  });
});

describe('the font', () => {
  test('inks texts, each otherwise', async () => {
    const counts = await Promise.all(
      ['', 'l', 'brisket', 'brisket brisket', 'Łódź'].map((text) => inked(pictureOfText(text))),
    );
    expect(counts[0]).toBe(0);
    expect(new Set(counts).size).toBe(counts.length);
    expect(Math.min(...counts.slice(1))).toBeGreaterThan(20);
  });

  test('inks bold texts more', async () => {
    const plain = await inked(pictureOfText('brisket'));
    expect(await inked(pictureOfText('brisket', { bold: true }))).toBeGreaterThan(plain * 1.2);
  });

  test.each(['ŁĄĘŚŹŻ', 'ŐŰőű', 'ĞİŞğış', 'ČĎĚŇŘŠŤŮŽ'])(
    'has a shape for each letter of %s',
    async (letters) => {
      const shapes = await Promise.all(
        [...letters].map(async (letter) => Buffer.from(await draw(pictureOfText(letter)))),
      );
      expect(new Set(shapes.map((png) => png.toString('base64'))).size).toBe(letters.length);
    },
  );
});

describe('the queue', () => {
  test('draws many at a time, each its own', async () => {
    const stages = ['bought', 'trim', 'cooked', 'all'] as const;
    const alone: Uint8Array[] = [];
    for (const stage of stages) alone.push(await draw(pictureOf(stage)));
    const together = await Promise.all(stages.map((stage) => draw(pictureOf(stage))));
    expect(together.map((png) => Buffer.from(png).toString('base64'))).toEqual(
      alone.map((png) => Buffer.from(png).toString('base64')),
    );
  });

  test.each([
    [
      'of an unknown kind',
      { type: 'nonsense', data: { datasets: [{ data: [1] }] } },
      /"a-text" could not be drawn.*nonsense/,
    ],
    ['without data', { type: 'bar', data: 7 }, /"a-text" could not be drawn/],
    [
      'with a note that is none',
      { type: 'bar', data: { datasets: [] }, options: { plugins: { notes: [null] } } },
      /could not be drawn/,
    ],
    [
      'with a note at no place',
      { ...pictureOfText('x', { x: { at: Number.NaN } }).config },
      /could not be drawn.*"x"/,
    ],
  ])('goes on after a picture %s', async (_name, config, message) => {
    const broken = { ...pictureOfText(''), config } as Picture;
    const all = await Promise.allSettled([broken, broken, broken, pictureOf('trim')].map(draw));
    for (const one of all.slice(0, 3)) {
      expect(one).toMatchObject({ status: 'rejected', reason: { message: expect.stringMatching(message) } });
    }
    expect(all[3]?.status).toBe('fulfilled');
    expect(Object.keys(Chart.instances)).toEqual([]);
  });

  test('holds the event loop for a while that is printed', async () => {
    let longest = 0;
    let last = performance.now();
    const timer = setInterval(() => {
      longest = Math.max(longest, performance.now() - last);
      last = performance.now();
    }, 1);
    const from = performance.now();
    for (let times = 0; times < 5; times += 1) await draw(pictureOf('all'));
    clearInterval(timer);
    const each = (performance.now() - from) / 5;
    console.log(`a picture: ${each.toFixed(0)} ms, longest hold ${longest.toFixed(0)} ms`);
  });
});

function expectClean(
  lines: readonly PlacedLine[],
  { width, height }: { width: number; height: number },
): void {
  for (const [index, line] of lines.entries()) {
    expect(line.left, line.text).toBeGreaterThanOrEqual(0);
    expect(line.left + line.width, line.text).toBeLessThanOrEqual(width);
    expect(line.top, line.text).toBeGreaterThanOrEqual(0);
    expect(line.top + line.height, line.text).toBeLessThanOrEqual(height);
    for (const other of lines.slice(index + 1)) {
      expect(overlap(line, other), `${line.text} on ${other.text}`).toBe(false);
    }
  }
}

describe('the texts of a picture', () => {
  const abouts = [
    'Butt, piece 1',
    'Pork spareribs, St. Louis style, piece 128',
    "Grandmother's very own double-cut shoulder clod heart, trimmed by the butcher, 12 pieces, piece 12841",
    'W'.repeat(80),
  ];
  const cases = (Object.keys(STAGES) as (keyof typeof STAGES)[]).flatMap((stage) =>
    abouts.flatMap((about) =>
      [POUNDS, KILOS].map((show) => ({ stage, about, show, units: show.form.units })),
    ),
  );

  test.each(cases)('$stage in $units of $about are inside it and apart', async ({ stage, about, show }) => {
    const picture = pictureOf(stage, show, about);
    expectClean(await layOut(picture), picture);
  });

  test.each(cases)('$stage in $units of $about stand in rows', async ({ stage, about, show }) => {
    const lines = await layOut(pictureOf(stage, show, about));
    const shares = lines.filter(({ text, size }) => text.endsWith(' %') && size === SIZE.label);
    expect(shares.length).toBeGreaterThan(0);
    // None had to give way to another text: each share is level with the name of its stage.
    for (const share of shares) {
      expect(lines.some(({ left, top }) => left < 100 && top === share.top)).toBe(true);
    }
  });

  test('of the heaviest lot are inside it and apart', async () => {
    const picture = pictureOf('all', POUNDS, abouts[2], 999_000);
    expectClean(await layOut(picture), picture);
  });

  test('say a catalogue name whole', async () => {
    const lines = await layOut(pictureOf('all', POUNDS, abouts[1]));
    expect(lines.map(({ text }) => text).join(' ')).toContain(abouts[1]);
  });

  test('are 11 pixels or more on a phone of 400', async () => {
    for (const line of await layOut(pictureOf('all'))) expect((line.size * 400) / 720).toBeGreaterThan(11);
  });

  test('stand over the bars that they name', async () => {
    const lines = await layOut(pictureOf('bought'));
    const tops = ['bought', 'came off', 'on the plate'].map(
      (name) => lines.find(({ text }) => text === name)?.top ?? 0,
    );
    expect([...tops].sort((a, b) => a - b)).toEqual(tops);
  });
});

describe('the texts of pictures of dots', () => {
  const abouts = ['Butt, piece 1', 'Pork spareribs, St. Louis style, piece 12841', 'W'.repeat(80)];
  const shown = [POUNDS, KILOS].map((show) => ({ show, words: pictures(show) }));
  const standing = (losses: readonly number[], about: string) =>
    shown.map(({ show, words }) => whereItStands(standingOf(losses), about, words.stands, show));
  const grouped = (groups: readonly Group[], about: string, mean: number | null) =>
    shown.map(({ words }) => averagesOf({ measure: 'carving', about, mean, groups }, words.averages));

  async function expectReadable(some: readonly Picture[]): Promise<void> {
    for (const picture of some) {
      const lines = await layOut(picture);
      expectClean(lines, picture);
      for (const { size: high } of lines) expect((high * 400) / picture.width).toBeGreaterThan(11);
      // The figures of the axis stand in one line, and the small print is said whole.
      expect(new Set(lines.filter(({ text }) => /^\d+ %$/.test(text)).map(({ top }) => top)).size).toBe(1);
      for (const { text, size: high } of lines) if (high === SIZE.small) expect(text).not.toContain('…');
    }
  }

  test.each(Object.entries(CLUBS))('one piece among %s', async (_name, losses) => {
    for (const about of abouts) await expectReadable(standing(losses, about));
  });

  test.each(Object.entries(CLUBS))('one group, three and twelve of %s', async (_name, losses) => {
    const groups = Array.from({ length: 12 }, (_none, index) =>
      groupOf(index === 0 ? 'W'.repeat(60) : `Pork spareribs, St. Louis style ${index}`, losses, {
        ...(index % 2 === 0 ? { low: 0.1, high: 0.3 } : {}),
      }),
    );
    for (const count of [1, 3, 12]) {
      await expectReadable(
        grouped(groups.slice(0, count), abouts[count % 3] ?? '', count === 1 ? 0.5 : null),
      );
    }
  });

  test('hold the event loop for a while that is printed', async () => {
    const [picture] = standing(CLUBS[5000], 'Whole packer brisket, piece 1');
    if (picture === undefined) throw new Error('no picture');
    let longest = 0;
    let last = performance.now();
    const timer = setInterval(() => {
      longest = Math.max(longest, performance.now() - last);
      last = performance.now();
    }, 1);
    const from = performance.now();
    for (let times = 0; times < 5; times += 1) await draw(picture);
    clearInterval(timer);
    const each = (performance.now() - from) / 5;
    console.log(`400 dots: ${each.toFixed(0)} ms, longest hold ${longest.toFixed(0)} ms`);
  });
});

describe('placing notes', () => {
  const measure = (text: string, high: number) => [...text].length * high * 0.5;
  const place = (notes: readonly Note[], area = { width: 300, height: 200 }) =>
    placeNotes(notes, (_axis, value) => value, measure, area);
  const note = (text: string, more: Partial<Note> = {}): Note => ({
    text,
    x: 100,
    y: 100,
    size: 20,
    colour: INK,
    ...more,
  });

  test.each([
    ['left', 100],
    ['center', 75],
    ['right', 50],
  ] as const)('stands with its %s at x', (align, left) => {
    expect(place([note('12345', { align })])).toMatchObject([{ left, top: 87.5, width: 50, height: 25 }]);
  });

  test('stands at a value of an axis, and some pixels from there', () => {
    expect(place([note('12345', { x: { at: 60, shift: 5 }, y: { at: 50 } })])).toMatchObject([
      { left: 65, top: 37.5 },
    ]);
  });

  test('stays inside', () => {
    expect(place([note('12345', { x: 290, y: 199 })])).toMatchObject([{ left: 246, top: 171 }]);
    expect(place([note('12345', { x: -20, y: -5 })])).toMatchObject([{ left: 4, top: 4 }]);
  });

  test.each([
    [1, ['one two…']],
    [2, ['one two', 'three fo…']],
    [4, ['one two', 'three', 'four five']],
  ])('goes on in %i lines and ends in an ellipsis', (lines, expected) => {
    const placed = place([note('one two three four five', { width: 92, lines })]);
    expect(placed.map(({ text }) => text)).toEqual(expected);
  });

  test('breaks no word in two where a line is left for it, but shortens one that is too long', () => {
    expect(place([note('abcdefghijklmnop', { width: 92, lines: 3 })]).map(({ text }) => text)).toEqual([
      'abcdefgh…',
    ]);
  });

  test('goes out of the way of an earlier one', () => {
    const [first, second, third] = place([note('first'), note('second'), note('third')]);
    expect(first?.top).toBe(87.5);
    expect(second?.top).toBe(112.5);
    expect(third?.top).toBe(62.5);
  });

  test('any few notes are inside and apart', () => {
    const any = fc.record({
      text: fc.string({ maxLength: 60 }),
      x: fc.integer({ min: -50, max: 800 }),
      y: fc.integer({ min: -50, max: 600 }),
      size: fc.constantFrom(20, 24, 36),
      align: fc.constantFrom('left' as const, 'center' as const, 'right' as const),
      colour: fc.constant(INK),
    });
    const area = { width: 720, height: 560 };
    fc.assert(fc.property(fc.array(any, { maxLength: 3 }), (notes) => expectClean(place(notes, area), area)));
  });
});
