/** Laying out pictures by rank and cards of a season: every text inside, apart, and large enough for a phone. */
import { describe, expect, test } from 'vitest';
import type { CalendarDay } from '../../../shared/measure/day.ts';
import type { Currency } from '../../../shared/measure/money.ts';
import { shows } from '../../../shared/measure/show.ts';
import { SIZE } from '../../../shared/pictures/frame.ts';
import type { Picture } from '../../../shared/pictures/picture.ts';
import { rankCountsOf } from '../../../shared/pictures/rank-counts.ts';
import { ranksOf } from '../../../shared/pictures/ranks.ts';
import { seasonCardOf } from '../../../shared/pictures/season.ts';
import { pictures } from '../../../shared/words/en/pictures.ts';
import { draw, layOut } from '../../../src/pictures/local.ts';
import { overlap } from '../../../src/pictures/placement.ts';
import { lb } from '../../store/samples.ts';

const FORMS = [
  ['pounds', shows({ locale: 'en-US', units: 'lb', currency: 'USD' as Currency })],
  ['kilos', shows({ locale: 'de', units: 'kg', currency: 'USD' as Currency })],
] as const;
const LONG = 'Pork spareribs, St. Louis style, the last 12 months';

async function expectReadable(picture: Picture): Promise<void> {
  const lines = await layOut(picture);
  for (const [index, line] of lines.entries()) {
    expect((line.size * 400) / picture.width, line.text).toBeGreaterThan(11);
    expect(line.left, line.text).toBeGreaterThanOrEqual(0);
    expect(line.left + line.width, line.text).toBeLessThanOrEqual(picture.width);
    expect(line.top + line.height, line.text).toBeLessThanOrEqual(picture.height);
    if (line.size !== SIZE.title) expect(line.text).not.toContain('…');
    for (const other of lines.slice(index + 1))
      expect(overlap(line, other), `${line.text} on ${other.text}`).toBe(false);
  }
}

const expectDrawn = async (picture: Picture): Promise<void> =>
  expect((await draw(picture)).length).toBeGreaterThan(1000);

describe.each(FORMS)('in %s', (_name, show) => {
  const words = pictures(show);

  test.each([
    [1, 0, 0.44],
    [12, 12, 0.02],
    [12, 7, 0.5],
    [15, 3, 0.97],
  ])('%i by rank, %i of them placed, from %f on', async (count, placed, share) => {
    const rows = Array.from({ length: count }, (_none, index) => ({
      place: index + 1,
      share: share + index / 500,
      low: share - 0.01,
      high: share + 0.03,
      pieces: 1200 - index,
      separable: index > 4,
      provisional: index >= placed,
    }));
    for (const measure of ['trim', 'plate', 'cooking', 'carving', 'cost'] as const) {
      const ranks = ranksOf({ measure, about: LONG, rows, all: 40 }, words.ranks);
      await expectReadable(ranks);
      if (measure === 'trim') await expectDrawn(ranks);
    }
    const counts = rankCountsOf({ about: LONG, rows, all: 40 }, words.rankCounts, show);
    await expectReadable(counts);
    await expectDrawn(counts);
  });

  const dollars = (amount: number) => ({
    numerator: BigInt(amount),
    denominator: 1n,
    currency: 'USD' as Currency,
  });
  const span = (from: string, to: string) => ({ from: from as CalendarDay, to: to as CalendarDay });

  test.each([
    ['a season', span('2026-01-01', '2026-12-31'), 12],
    ['twelve months', span('2025-07-05', '2026-07-04'), 1200],
    ['a month', span('2026-07-01', '2026-07-31'), 1],
    ['thirty years', span('1996-03-01', '2026-07-31'), 4000],
  ])('a card of %s', async (_time, time, pieces) => {
    for (const measure of ['plate', 'trim'] as const) {
      const card = {
        season: 'year',
        span: time,
        time,
        measure,
        dots: [time.from, time.to].map((day, at) => ({ day, share: 0.4 + at / 10, best: at === 1 })),
        totals: {
          pieces,
          bought: lb(pieces * 4.71),
          trim: { weight: lb(pieces), of: lb(pieces * 4.71), pieces },
          plate: { weight: lb(pieces * 2.3), of: lb(pieces * 4), pieces: Math.ceil(pieces * 0.9) },
          saved: { weight: lb(pieces * 0.11), worth: dollars(pieces * 2) },
          paid: dollars(pieces * 9),
          priced: pieces,
          foreign: 0,
          plateCost: { cost: dollars(pieces * 60), weight: lb(pieces * 7) },
        },
      } as const;
      const picture = seasonCardOf(card, words.season, show);
      await expectReadable(picture);
      if (measure === 'plate') await expectDrawn(picture);
    }
  });
});
