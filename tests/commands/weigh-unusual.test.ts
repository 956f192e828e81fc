/** A piece that is unusual in its club is kept, waits out of every figure, and its poster alone is asked. */
import { describe, expect, test } from 'vitest';
import { type Rehearsing, rehearse } from '../rehearsing.ts';

/** Fourteen ordinary pieces of four people: 12 to 16 lb, about a fifth off. */
async function ordinaryClub(): Promise<Rehearsing> {
  const club = await rehearse();
  for (let piece = 0; piece < 14; piece += 1) {
    const [bought, share] = [12 + (piece % 5), 0.17 + 0.01 * (piece % 7)];
    await club.play(
      `@member-${piece % 4} /weigh cut:packer bought:${bought} lb trim:${(bought * share).toFixed(2)} lb`,
    );
  }
  return club;
}

/** Typed in kilos, called pounds. */
const SLIP = '@bo /weigh cut:packer bought:13.5 lb trim:1.25 lb';

describe('an unusual piece', () => {
  test('is kept and shown, waits out of every figure, and its poster is asked with the likely slip', async () => {
    const club = await ordinaryClub();
    const said = await club.play(SLIP);
    expect(said.figures).toMatchObject({ piece: 15, waiting: true });
    expect(said.text).toContain('Unusual here: it waits for a second look');
    expect(said.privately?.text).toContain('Piece 15 is kept, but what came off, for its weight, is unusual');
    expect(said.privately?.text).not.toContain('without');
    expect(said.privately?.actions).toEqual(['2 lb 12.1 oz came off', 'It is right', 'Fix it']);
    const average = await club.play('/average cut:packer');
    expect(average.figures).toMatchObject({ pieces: 14, waiting: 1 });
    expect(average.text).toContain('1 piece waits for a second look and is not counted.');
    expect((await club.play('/piece show piece:15')).text).toContain('waits for a second look');
  });

  test('is mended by a press on the slip, and counted', async () => {
    const club = await ordinaryClub();
    await club.play(SLIP);
    const mended = await club.play('@bo press 2 lb 12.1 oz came off');
    expect(mended.figures).toMatchObject({ piece: 15, waiting: false });
    expect(mended.figures.trimShare).toBeCloseTo((1.25 * 2.20462262) / 13.5, 3);
    expect((await club.play('/average cut:packer')).figures).toMatchObject({ pieces: 15, waiting: 0 });
  });

  test('is counted for good once its poster stands by it, whatever comes later', async () => {
    const club = await ordinaryClub();
    await club.play(SLIP);
    await club.play('@bo press It is right');
    expect((await club.play('/average cut:packer')).figures).toMatchObject({ pieces: 15, waiting: 0 });
    const again = await club.play('@bo /weigh cooked:7 lb');
    expect(again.figures.waiting).toBe(false);
    expect(again.privately).toBeUndefined();
  });

  test('can be stood by on its card as well, by its member alone', async () => {
    const club = await ordinaryClub();
    const card = await club.play(SLIP);
    expect(card.actions).toContain('It is right');
    const stranger = await club.say('@member-1 press It is right');
    expect(stranger.error?.code).toBe('not-yours');
  });

  test('the first twelve of a cut are never called unusual', async () => {
    const club = await rehearse();
    await club.play('/weigh cut:packer bought:14 lb trim:2.5 lb');
    const said = await club.play(SLIP);
    expect(said.figures.waiting).toBe(false);
  });
});
