/** Laying out the pictures of debates: every text inside, apart, and large enough; and the band really is filled. */
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { describe, expect, test } from 'vitest';
import { scatterOf } from '../../../shared/findings/scatter.ts';
import { shows } from '../../../shared/measure/show.ts';
import { type Bigger, biggerOf } from '../../../shared/pictures/bigger.ts';
import { SIZE } from '../../../shared/pictures/frame.ts';
import { pairsOf } from '../../../shared/pictures/pairs.ts';
import { PALE_VERMILLION } from '../../../shared/pictures/palette.ts';
import type { Picture } from '../../../shared/pictures/picture.ts';
import { pictures } from '../../../shared/words/en/pictures.ts';
import { draw, layOut } from '../../../src/pictures/local.ts';
import { overlap } from '../../../src/pictures/placement.ts';
import { spread } from '../../shared/pictures/clubs.ts';

const FORMS = [
  ['pounds', shows({ locale: 'en-US', units: 'lb' })],
  ['kilos', shows({ locale: 'de', units: 'kg' })],
] as const;
const MEASURES = ['trim', 'cooking', 'plate', 'carving'] as const;

async function expectReadable(picture: Picture): Promise<void> {
  const lines = await layOut(picture);
  for (const [index, line] of lines.entries()) {
    expect((line.size * 400) / picture.width, line.text).toBeGreaterThan(11);
    expect(line.left, line.text).toBeGreaterThanOrEqual(0);
    expect(line.left + line.width, line.text).toBeLessThanOrEqual(picture.width);
    expect(line.top + line.height, line.text).toBeLessThanOrEqual(picture.height);
    if (line.size === SIZE.small) expect(line.text).not.toContain('…');
    for (const other of lines.slice(index + 1))
      expect(overlap(line, other), `${line.text} on ${other.text}`).toBe(false);
  }
}

function biggerClub(count: number, members: number, grams: number, wide: number): Bigger {
  const weights = spread(count, grams, wide);
  return {
    ...scatterOf({
      count,
      base: weights,
      loss: weights.map((weight, row) => weight * (spread(count)[(row * 7) % count] ?? 0)),
      member: weights.map((_weight, row) => row % members),
    }),
    measure: 'trim',
    about: 'Pork spareribs, St. Louis style, without those that were injected',
    finding: {
      smallGrams: grams - wide * 0.7,
      bigGrams: grams + wide * 0.7,
      difference: -0.122,
      low: -0.2,
      high: -0.04,
    },
    settled: true,
  };
}

/** How many pixels of a picture are of a colour. */
async function pixelsOf(picture: Picture, colour: string): Promise<number> {
  const image = await loadImage(Buffer.from(await draw(picture)));
  const context = createCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  let found = 0;
  for (let at = 0; at < data.length; at += 4)
    if (data[at] === red && data[at + 1] === green && data[at + 2] === blue) found += 1;
  return found;
}

describe.each(FORMS)('in %s', (_name, show) => {
  const words = pictures(show);

  test.each([
    [1, 1, 5000, 0],
    [12, 4, 6000, 2000],
    [150, 25, 6000, 200],
    [5000, 60, 40_000, 30_000],
    [40, 9, 90, 30],
  ])('%i pieces of %i people around %i g', async (count, members, grams, wide) => {
    const club = biggerClub(count, members, grams, wide);
    for (const measure of MEASURES) await expectReadable(biggerOf({ ...club, measure }, words.bigger, show));
    await expectReadable(biggerOf({ ...club, finding: null }, words.bigger, show));
  });

  test.each([
    [1, 0.01],
    [3, 0.015],
    [14, 0.2],
  ])('%i pairs with a margin of %f', async (count, margin) => {
    const pairs = Array.from({ length: count }, (_none, index) => {
      const early = index % 4 === 3;
      return {
        name:
          index % 2 === 0 ? 'Prime against Choice' : 'cut down to a quarter inch against not trimmed at all',
        own: false,
        difference: early ? null : index / 50 - 0.06,
        low: early ? null : index / 50 - 0.06 - 0.121 - index / 9,
        high: early ? null : index / 50 - 0.06 + 0.121 + index / 9,
      };
    });
    const about = 'Pork spareribs, St. Louis style, by the fat left on';
    for (const measure of MEASURES)
      await expectReadable(pairsOf({ measure, about, margin, count: 150, members: 25, pairs }, words.pairs));
  });
});

test('the band of a finding is filled, and of none there is none', async () => {
  const [, show] = FORMS[0];
  const club = { ...biggerClub(12, 4, 6000, 2000), settled: false };
  const words = pictures(show).bigger;
  expect(await pixelsOf(biggerOf(club, words, show), PALE_VERMILLION)).toBeGreaterThan(5000);
  expect(await pixelsOf(biggerOf({ ...club, finding: null }, words, show), PALE_VERMILLION)).toBe(0);
});
