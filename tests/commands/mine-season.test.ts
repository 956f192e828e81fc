/** `/mine season`: a member's own pieces added up, for them alone until they show them. */
import { describe, expect, test } from 'vitest';
import { type Rehearsing, rehearse } from '../rehearsing.ts';

const POUND = 453.59237;
const OUNCE = POUND / 16;

/** Two briskets of this season on the plate, a butt under the knife, and one brisket of the season before. */
const PIECES = [
  'at 2025-11-15T18:00:00Z',
  '/weigh cut:packer bought:13 lb trim:2 lb',
  'at 2026-05-23T18:00:00Z',
  '/weigh cut:packer bought:15 lb trim:3 lb saved:tallow 1 lb @ 3, grind 8 oz price:5/lb style:quarter',
  '/weigh cooked:8 lb scraps:12 oz',
  '/weigh cut:packer bought:12 lb trim:2 lb price:60 in all',
  '/weigh cooked:7 lb scraps:8 oz',
  'at 2026-07-04T18:00:00Z',
  '/weigh cut:Boston butt bought:8 lb trim:6 oz price:CAD 12.50/kg',
];
const OTHERS = ['@bo /weigh cut:packer bought:14 lb trim:4 lb', '@bo /weigh cooked:6 lb scraps:1 lb'];

async function club(...lines: readonly string[]): Promise<Rehearsing> {
  const rehearsing = await rehearse();
  for (const line of lines) await rehearsing.say(line);
  return rehearsing;
}

describe('a season', () => {
  test('adds up what was weighed and paid in it', async () => {
    const { play } = await club(...PIECES);
    const { audience, figures } = await play('/mine season');
    expect(audience).toBe('member');
    expect(figures).toMatchObject({
      season: 'season',
      from: '2026-01-01',
      to: '2026-12-31',
      pieces: 3,
      boughtGrams: expect.closeTo(35 * POUND, 6),
      trimPieces: 3,
      platePieces: 2,
      currency: 'USD',
      paid: 135,
      priced: 2,
      foreign: 1,
      credit: 3,
      usual: { cut: 'beef/brisket-whole', style: 'brisket/quarter' },
    });
    expect(figures.trimGrams).toBeCloseTo(5 * POUND + 6 * OUNCE, 6);
    expect(figures.trimShare).toBeCloseTo((5 + 6 / 16) / 35, 12);
    expect(figures.servedGrams).toBeCloseTo(13.75 * POUND, 6);
    expect(figures.plateYield).toBeCloseTo(13.75 / 27, 12);
    expect(figures.savedGrams).toBeCloseTo(1.5 * POUND, 6);
    // 75 + 60 - 3 paid for 13.75 lb on the plate.
    expect(figures.costPerServedKg).toBeCloseTo(132 / ((13.75 * POUND) / 1000), 9);
  });

  test('says so in a few lines, with a picture that names nobody', async () => {
    const { play } = await club(...PIECES, ...OTHERS);
    const { text, picture } = await play('/mine season');
    expect(text).toContain('This season: 3 pieces, 35 lb bought, 50.9 % on the plate.');
    expect(text).toContain('13 lb 12 oz on the plate, of 27 lb bought (2 pieces).');
    expect(text).toContain(
      '$135.00 paid, $9.60 a pound on the plate. 1 lb 8 oz of trimmings saved, worth $3.00.',
    );
    expect(text).toContain('Best: piece 3, whole packer brisket, 54.2 % on the plate.');
    expect(text).toContain('1 piece in another currency is not in the money.');
    expect(picture?.alt).toContain('13 lb 12 oz on the plate, 50.9 %.');
    expect(picture?.alt).not.toContain('ines');
  });

  test.each([
    ['last', 1, '2025-01-01', '2025-12-31'],
    ['year', 4, '2025-07-05', '2026-07-04'],
    ['always', 4, null, null],
  ])('%s: %i pieces, from %s to %s', async (season, pieces, from, to) => {
    const { play } = await club(...PIECES);
    expect((await play(`/mine season season:${season}`)).figures).toMatchObject({ season, pieces, from, to });
  });

  test('is empty where there is nothing in it', async () => {
    const { play } = await club();
    const said = await play('/mine season');
    expect(said.text).toContain('This season: no pieces of yours yet.');
    expect(said.figures).toMatchObject({
      pieces: 0,
      boughtGrams: 0,
      paid: null,
      plateYield: null,
      best: null,
    });
    expect(said.picture).toBeUndefined();
    expect(said.actions ?? []).toEqual([]);
  });

  test('is one of those that there are, or refused', async () => {
    const { say } = await club();
    expect((await say('/mine season season:summer')).error?.code).toBe('choice-unknown');
  });

  test('leaves out what was taken back, and what others weighed', async () => {
    const { play } = await club(...PIECES, ...OTHERS, '/piece remove piece:4', 'press Take piece 4 back');
    expect((await play('/mine season')).figures).toMatchObject({
      pieces: 2,
      boughtGrams: expect.closeTo(27 * POUND, 6),
      foreign: 0,
    });
  });
});

describe('beside the club', () => {
  test('the average pieces of one cut are compared, in one measure and of one time', async () => {
    const { play } = await club(...PIECES, ...OTHERS);
    const { figures } = await play('/mine season');
    expect(figures.beside).toMatchObject({
      cut: 'beef/brisket-whole',
      measure: 'plate',
      own: { pieces: 2, members: 1 },
      club: { pieces: 3, members: 2 },
    });
    const { own, club: all } = figures.beside as Record<string, { meanShare: number }>;
    expect(own?.meanShare).toBeCloseTo((7.25 / 15 + 6.5 / 12) / 2, 12);
    expect(all?.meanShare).toBeCloseTo((7.25 / 15 + 6.5 / 12 + 5 / 14) / 3, 12);
    expect((await play('/mine season season:last')).figures.beside).toBeNull();
  });

  test('there is nothing to compare where nobody else has such a piece', async () => {
    const { play } = await club(...PIECES);
    expect((await play('/mine season')).figures.beside).toBeNull();
  });
});

describe('the best piece', () => {
  test('is the one that lost least, before any got to the plate', async () => {
    const { play } = await club(
      '/weigh cut:packer bought:12 lb trim:3 lb',
      '/weigh cut:packer bought:12 lb trim:2 lb',
    );
    const { text, figures } = await play('/mine season');
    expect(figures.best).toMatchObject({ piece: 2, measure: 'trim', share: expect.closeTo(2 / 12, 12) });
    expect(text).toContain('Least came off piece 2, whole packer brisket: 16.7 %.');
  });

  test('is no injected one, and none that nothing came off', async () => {
    const { play } = await club(
      '/weigh cut:packer bought:12 lb trim:0',
      '/weigh cut:packer bought:12 lb trim:1 lb added:1 lb cooked:9 lb scraps:8 oz',
      '/weigh cut:packer bought:12 lb trim:2 lb cooked:6 lb scraps:8 oz',
    );
    expect((await play('/mine season')).figures.best).toMatchObject({ piece: 3, measure: 'plate' });
  });
});

describe('showing the club', () => {
  test('posts the same card for all, with the member’s id in the text alone', async () => {
    const { play } = await club(...PIECES, ...OTHERS);
    const own = await play('/mine season');
    expect(own.actions).toEqual(['Show the club']);
    const { audience, text, figures, picture, actions } = await play('press Show the club');
    expect(audience).toBe('club');
    expect(text).toContain('<@ines>, this season: 3 pieces');
    expect(figures).toEqual(own.figures);
    expect(picture?.alt).toBe(own.picture?.alt);
    expect(actions ?? []).toEqual([]);
  });

  test('shows the season that was asked for, also in the next one', async () => {
    const { say, play } = await club(...PIECES);
    const { figures } = await play('/mine season');
    await say('at 2027-01-02T18:00:00Z');
    expect((await play('press Show the club')).figures).toEqual(figures);
  });
});
