/** `/feed`: how much to buy, and how many it feeds, through the desk and a real store. */
import { describe, expect, test } from 'vitest';
import { type Rehearsing, rehearse } from '../rehearsing.ts';

const GRAMS = 453.59237;

/** Nine packers of three members to the plate: the least that a club is reckoned with has eight. */
const SERVED = [4.9, 5.1, 5.4, 4.6, 4.7, 5, 5.3, 4.8, 5.2];
const WEIGHED = SERVED.map(
  (served, piece) =>
    `@m${piece % 3} /weigh cut:packer bought:${10 + (piece % 3)} lb served:${served} lb price:5.00/lb`,
);

async function clubOfNine(pieces = SERVED.length): Promise<Rehearsing> {
  const rehearsing = await rehearse();
  await rehearsing.play(...WEIGHED.slice(0, pieces));
  return rehearsing;
}

describe('how much to buy', () => {
  test('by the club’s own pieces, from eight of three members on', async () => {
    const { play } = await clubOfNine();
    const { figures, text, audience } = await play('@zoe /feed people:40 cut:packer');
    expect(audience).toBe('club');
    expect(figures).toMatchObject({ source: 'club', feeds: 40, people: 40, children: 0 });
    const { buyGrams, plateLow, plateYield, servedGrams, pieces, cost } = figures as Record<string, number>;
    expect(servedGrams).toBeCloseTo((40 * GRAMS) / 3, 4);
    expect(buyGrams).toBeCloseTo((servedGrams ?? 0) / (plateLow ?? 1), 6);
    expect(plateLow).toBeLessThan(plateYield ?? 0);
    // The usual piece has 11 lb.
    expect((pieces ?? 0) * 11 * GRAMS).toBeGreaterThanOrEqual(buyGrams ?? 0);
    expect(cost).toBeCloseTo(((buyGrams ?? 0) / GRAMS) * 5, 6);
    const [, printed = ''] = /buy (\d+\.\d\d) lb/.exec(text) ?? [];
    expect((Number(printed) * 4) % 1).toBe(0);
    expect(Number(printed)).toBeGreaterThanOrEqual((buyGrams ?? 0) / GRAMS);
    expect(text).toContain('enough 9 times in 10');
    expect(text).toContain('Thaw in the fridge');
  });

  test('who asks is reckoned with as the cook, if they have pieces', async () => {
    const { play } = await clubOfNine();
    expect((await play('@m1 /feed people:40 cut:packer')).figures.source).toBe('member');
  });

  test('fewer pieces: by the rule of thumb, whose spread is known', async () => {
    const { play } = await clubOfNine(7);
    const { figures, text } = await play('/feed people:40 cut:packer');
    expect(figures).toMatchObject({ source: 'rule of thumb', plateYield: 0.45 });
    expect(figures.plateLow).toBeCloseTo(0.45 - 1.2815515655446004 * 0.06, 9);
    expect(text).toContain('rule of thumb');
  });

  test.each([
    // USDA Food Buying Guide, method 1, example C: 30 of 2 oz and 45 of 1.5 oz at 61 % are 13.06 lb, 13 1/4 to buy.
    ['people:30 children:45 cut:bottom round portion:2 oz', 13.06, '13.25 lb', 'book'],
    // Common practice: thirty of four ounces from shoulder at 60 %, sixty from twice that.
    ['people:30 cut:butt portion:4 oz', 12.5, '12.50 lb', 'rule of thumb'],
    ['people:60 cut:butt portion:4 oz', 25, '25.00 lb', 'rule of thumb'],
  ])('%s', async (line, pounds, printed, source) => {
    const { play } = await rehearse();
    const { figures, text } = await play(`/feed ${line}`);
    expect(Number(figures.buyGrams) / GRAMS).toBeCloseTo(pounds, 2);
    expect(text).toContain(`buy ${printed}`);
    expect(text).toContain('enough on average');
    expect(figures).toMatchObject({ source, plateLow: null });
  });

  test('two cuts make half of it each', async () => {
    const { play } = await clubOfNine();
    const { figures, text } = await play(
      '/feed people:40 children:4 cut:packer second:butt portion:sandwiches',
    );
    const need = (40 + 4 * 0.75) * (GRAMS / 4);
    expect(figures.servedGrams).toBeCloseTo(need, 6);
    const cuts = figures.cuts as { cut: string; buyGrams: number; plateYield: number }[];
    expect(cuts.map(({ cut }) => cut)).toEqual(['beef/brisket-whole', 'pork/butt']);
    expect(cuts[1]?.buyGrams).toBeCloseTo(need / 2 / 0.6, 6);
    expect(text).toContain('For 40 people and 4 children buy');
  });

  test('in kilos, rounded up to 100 g', async () => {
    const { play } = await rehearse({ club: 'hofladen', locale: 'de' });
    const { text } = await play('/feed people:10 cut:butt');
    // 10 plates of 150 g at 60 %.
    expect(text).toContain('buy 2,50 kg');
  });
});

describe('how many it feeds', () => {
  test('published: 36 lb of whole turkey at 47 % are 90 of three ounces', async () => {
    // USDA Food Buying Guide.
    const { play } = await rehearse();
    const { figures, text } = await play('/feed have:36 lb cut:turkey portion:3 oz');
    expect(figures).toMatchObject({ feeds: 90, source: 'book', plateYield: 0.47 });
    expect(text).toContain('feeds 90 people, on average');
  });

  test('at the least, 9 times in 10, rounded down; and what is short', async () => {
    const { play } = await clubOfNine();
    const { figures, text } = await play('@zoe /feed have:14 lb cut:packer people:40');
    const least = 14 * Number(figures.plateLow) * 3;
    expect(figures.feeds).toBe(Math.floor(least));
    expect(text).toContain('short of 40 people');
    expect((await play('@zoe /feed have:14 lb cut:packer people:4')).text).not.toContain('short of');
  });

  test('children first', async () => {
    const { play } = await rehearse();
    const { figures, text } = await play('/feed have:10 lb cut:butt portion:4 oz children:8');
    // 6 lb on the plate: 8 of 3 oz, and 18 of 4 oz.
    expect(figures.feeds).toBe(8 + 18);
    expect(text).toContain('feeds 18 people and 8 children');
    expect((await play('/feed have:1 lb cut:butt portion:4 oz children:8')).figures.feeds).toBe(3);
  });
});

describe('is refused', () => {
  test.each([
    ['/feed cut:packer', 'people-missing'],
    ['/feed cut:packer people:0', 'people-missing'],
    ['/feed cut:packer people:many', 'number-unreadable'],
    ['/feed cut:packer people:60000', 'number-unreadable'],
    ['/feed people:40', 'cut-to-buy'],
    ['/feed people:40 cut:packer portion:5 kg', 'portion-too-large'],
    ['/feed people:40 cut:packer portion:0', 'weight-zero'],
    ['/feed people:40 cut:packer portion:plenty', 'weight-unreadable'],
    ['/feed have:0 cut:packer', 'weight-zero'],
    ['/feed people:40 cut:brisket', 'which-cut'],
  ])('%s', async (line, code) => {
    const { say } = await rehearse();
    expect(await say(line)).toMatchObject({ ok: false, error: { code } });
  });
});

test('the portions are offered while typing', async () => {
  const { say } = await rehearse();
  const said = await say('complete /feed portion:sand');
  expect(said.choices).toEqual([{ label: 'Sandwiches', value: 'sandwiches' }]);
});
