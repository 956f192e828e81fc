import { createCanvas, loadImage } from '@napi-rs/canvas';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { encodePng } from '../../../src/pictures/png.ts';

/** As the canvas's own reader of PNG, Skia, which refuses a file whose checks fail, sees them. */
async function pixelsOf(png: Uint8Array) {
  const image = await loadImage(Buffer.from(png));
  const { width, height } = image;
  const context = createCanvas(width, height).getContext('2d');
  context.drawImage(image, 0, 0);
  return { width, height, pixels: new Uint8Array(context.getImageData(0, 0, width, height).data) };
}

const SIDES = { min: 1, max: 40 };
const drawings = fc
  .tuple(fc.integer(SIDES), fc.integer(SIDES))
  .chain(([width, height]) =>
    fc
      .uint8Array({ minLength: 3 * width * height, maxLength: 3 * width * height })
      .map((colours) => ({ width, height, pixels: opaque(colours) })),
  );

/** Pictures are drawn on a ground: where nothing shines through, no reader may round. */
const opaque = (colours: Uint8Array) =>
  Uint8Array.from({ length: (colours.length / 3) * 4 }, (_, at) =>
    at % 4 === 3 ? 255 : (colours[Math.floor(at / 4) * 3 + (at % 4)] ?? 0),
  );

test('pixels come back as they were', async () => {
  await fc.assert(
    fc.asyncProperty(drawings, async (drawing) => {
      const { width, height, pixels } = drawing;
      expect(await pixelsOf(encodePng(pixels, width, height))).toEqual(drawing);
    }),
    { numRuns: 200 },
  );
});

test('a canvas looks the same by its own encoder, Skia', async () => {
  const canvas = createCanvas(300, 200);
  const context = canvas.getContext('2d');
  const gradient = context.createLinearGradient(0, 0, 300, 200);
  gradient.addColorStop(0, '#c04020');
  gradient.addColorStop(1, '#2040c0');
  context.fillStyle = gradient;
  context.fillRect(0, 0, 300, 200);
  context.fillStyle = 'white';
  context.font = '40px sans-serif';
  context.fillText('Brisket', 40, 120);
  const ours = encodePng(canvas.data(), canvas.width, canvas.height);
  expect(await pixelsOf(ours)).toEqual(await pixelsOf(canvas.toBuffer('image/png')));
});

test('one red pixel', async () => {
  const png = encodePng(Buffer.from([255, 0, 0, 255]), 1, 1);
  expect(png.length).toBe(70);
  expect((await pixelsOf(png)).pixels).toEqual(Uint8Array.of(255, 0, 0, 255));
});
