/** `/shop`: labels side by side, through the desk and a real store. */
import { describe, expect, test } from 'vitest';
import { predictShare } from '../../shared/statistics/prediction.ts';
import { shareModel } from '../../shared/statistics/share-model.ts';
import { filled, type Rehearsing, rehearse } from '../rehearsing.ts';

const POUND = 0.45359237;

/** Twelve choice packers of four members, with their plates; as pounds off ten, and the factor at the board 0.6. */
const OFF = [2, 2.2, 2.4, 1.8, 2.1, 2.6, 3, 2.8, 3.1, 1.5, 1.6, 1.9];
const whoOf = (piece: number) => `m${piece % 4}`;
const WEIGHED = OFF.map(
  (off, piece) =>
    `@${whoOf(piece)} /weigh cut:packer bought:${10 + piece / 4} lb left:${(10 + piece / 4 - off).toFixed(2)} lb served:${((10 + piece / 4 - off) * 0.6).toFixed(4)} lb price:${(5 + piece / 10).toFixed(2)}/lb grade:choice`,
);

async function clubOfTwelve(): Promise<Rehearsing> {
  const rehearsing = await rehearse();
  await rehearsing.play(...WEIGHED);
  return rehearsing;
}

interface LabelFigures {
  grams: number;
  price: number;
  trimShare: number;
  trimLow: number;
  trimHigh: number;
  plateYield: number;
  kept: number;
  costPerServedKg: number;
  costLow: number;
  costHigh: number;
  chanceCheapest: number | null;
  levelPricePerKg: number | null;
  source: string;
}
const labelsOf = (figures: object) => (figures as { labels: LabelFigures[] }).labels;

describe('labels of one cut', () => {
  test('are reckoned with the club’s own trim and yield', async () => {
    const { play } = await clubOfTwelve();
    const { figures } = await play('@zoe /shop cut:packer one:14.2 lb @ 5.49 choice two:12.8 lb for 63.87');
    const model = shareModel({
      count: OFF.length,
      base: OFF.map((_off, piece) => 10 + piece / 4),
      loss: OFF,
      member: OFF.map((_off, piece) => piece % 4),
    });
    if (model === null) throw new Error('no model');
    const expected = predictShare(model, { grade: null, member: null });
    const [first, second] = labelsOf(figures);
    expect(first?.trimShare).toBeCloseTo(expected.share, 4);
    expect(first?.trimLow).toBeCloseTo(expected.low, 4);
    expect(first?.trimHigh).toBeCloseTo(expected.high, 4);
    expect(first?.kept).toBeCloseTo(0.6, 4);
    expect(first?.price).toBeCloseTo(5.49 / POUND, 9);
    expect(first?.costPerServedKg).toBeCloseTo(
      5.49 / POUND / ((1 - (first?.trimShare ?? 0)) * (first?.kept ?? 0)),
      9,
    );
    expect(first?.costHigh).toBeCloseTo(
      5.49 / POUND / ((1 - (first?.trimHigh ?? 0)) * (first?.kept ?? 0)),
      9,
    );
    expect(second?.price).toBeCloseTo(63.87 / (12.8 * POUND), 9);
    expect((first?.chanceCheapest ?? 0) + (second?.chanceCheapest ?? 0)).toBeCloseTo(1, 9);
    expect(figures).toMatchObject({ best: 1, source: 'club' });
    // It draws level where it costs the same on the plate.
    expect((first?.levelPricePerKg ?? 0) / (first?.plateYield ?? 1)).toBeCloseTo(
      second?.costPerServedKg ?? 0,
      9,
    );
    expect(second?.levelPricePerKg).toBeNull();
  });

  test('a member is reckoned with by their own pieces', async () => {
    const { play } = await clubOfTwelve();
    const line = '/shop cut:packer one:14.2 lb @ 5.49 choice';
    const [own, anybody] = [await play(`@m1 ${line}`), await play(`@zoe ${line}`)];
    expect(own.figures.source).toBe('member');
    expect(anybody.figures.source).toBe('club');
    expect(own.text).toContain('reckoned for you');
    const width = ({ trimLow, trimHigh }: LabelFigures) => trimHigh - trimLow;
    const [one] = labelsOf(own.figures);
    const [other] = labelsOf(anybody.figures);
    expect(width(one as LabelFigures)).toBeLessThan(width(other as LabelFigures));
  });

  test('the price alone decides between alike ones, and it is said', async () => {
    const { play } = await clubOfTwelve();
    const said = await play('/shop cut:packer one:14 lb @ 5.49 choice two:13 lb @ 5.29 choice');
    expect(said.text).toContain('Same cut, same grade: the price alone decides, so label 2');
    expect(said.figures.best).toBe(1);
    const same = await play('/shop cut:packer one:14 lb @ 5.29 choice two:13 lb @ 5.29 choice');
    expect(same.text).toContain('same price: no label is the better buy');
  });

  test('too close to call under 6 in 10, and of five each has its chance', async () => {
    const { play } = await clubOfTwelve();
    const close = await play('/shop cut:packer one:14 lb @ 5.49 choice two:13 lb @ 5.47 prime');
    expect(close.text).toContain('Too close to call');
    const five = await play(
      '/shop cut:packer one:14 lb @ 5.49 two:13 lb @ 5.39 choice three:12 lb @ 5.29 four:11 lb @ 5.19 five:10 lb @ 4.09',
    );
    expect(five.figures.best).toBe(4);
    const chances = labelsOf(five.figures).map(({ chanceCheapest }) => chanceCheapest ?? 0);
    expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
    expect(five.text).toContain('Label 5 is the cheapest');
  });

  test('one by itself beside the club’s last ten', async () => {
    const { play } = await clubOfTwelve();
    expect((await play('/shop cut:packer one:11 lb @ 3 choice')).text).toContain(
      'Cheaper on the plate than 10 of the last 10 here.',
    );
    expect((await play('/shop cut:packer one:11 lb @ 30 choice')).text).toContain(
      'Dearer on the plate than each of the last 10 here.',
    );
    const said = await play('/shop cut:packer one:19 lb @ 5.50');
    expect(said.text).toContain('Few pieces of that size were weighed in here.');
    expect(said.figures.lastCosts).toHaveLength(10);
    expect(said.picture).toBeUndefined();
  });
});

describe('without enough pieces', () => {
  test('a whole packer by the rule of thumb, a flat by the book', async () => {
    const { play } = await rehearse();
    const { figures, text } = await play('/shop cut:packer one:14 lb @ 4 choice two:8 lb @ 5 flat choice');
    const [packer, flat] = labelsOf(figures);
    expect(packer).toMatchObject({ source: 'rule of thumb', trimShare: expect.closeTo(0.2, 12) });
    expect(packer?.plateYield).toBeCloseTo(0.45, 12);
    expect(flat).toMatchObject({ source: 'book', kept: 0.69 });
    expect(figures.source).toBe('rule of thumb');
    expect(text).toContain('common practice, no source');
  });

  test('few pieces are told beside it', async () => {
    const { play } = await rehearse();
    await play('/weigh cut:packer bought:14 lb trim:4 lb');
    const { text, figures } = await play('/shop cut:packer one:14 lb @ 4');
    expect(text).toContain('1 piece here (28.6 % to 28.6 %) is too few by itself');
    // Drawn towards that piece, and not there yet.
    expect(labelsOf(figures)[0]?.trimShare).toBeGreaterThan(0.2);
    expect(labelsOf(figures)[0]?.trimShare).toBeLessThan(4 / 14);
  });

  test('a cut that nobody trims is told by its plate', async () => {
    const { play } = await rehearse();
    for (const [piece, served] of [4.8, 5, 5.2, 4.6, 5.1, 4.9, 5.3, 4.7, 5, 4.9].entries())
      await play(`@m${piece % 3} /weigh cut:butt bought:8 lb trim:0 served:${served} lb bone:in`);
    const { figures, text } = await play('/shop cut:butt one:8 lb @ 2.49');
    expect(labelsOf(figures)[0]).toMatchObject({ trimShare: null, source: 'club' });
    expect(labelsOf(figures)[0]?.plateYield).toBeCloseTo(4.95 / 8, 2);
    expect(text).toContain('of it gets to the plate');
  });
});

describe('the buttons', () => {
  test('show the club, for a day', async () => {
    const { play, say } = await clubOfTwelve();
    const own = await play('@zoe /shop cut:packer one:14.2 lb @ 5.49 choice two:12.8 lb @ 4.99 select');
    expect(own.audience).toBe('member');
    expect(own.actions?.slice(0, 2)).toEqual(['Bought it', 'Show the club']);
    const shown = await play('@zoe press Show the club');
    expect(shown.audience).toBe('club');
    expect(shown.text).toContain('<@zoe> in the shop');
    expect(shown.figures).toEqual(own.figures);
    await play('@zoe /shop cut:packer one:14.2 lb @ 5.49 choice');
    await say('at 2026-07-06T18:00:00Z');
    expect(await say('@zoe press Show the club')).toMatchObject({ error: { code: 'question-expired' } });
  });

  test('what was bought is weighed in from its label', async () => {
    const { play } = await clubOfTwelve();
    await play('@zoe /shop cut:packer one:14.2 lb @ 5.49 choice two:8 lb for 31.92 flat prime');
    const form = await play('@zoe select Bought another one: 2');
    expect(filled(form)).toMatchObject({ cut: 'Brisket flat', bought: '8 lb', price: '$31.92 in all' });
    expect(filled(form).more).toContain('grade: prime');
    const kept = await play('@zoe submit trim:1 lb');
    expect(kept.figures.boughtGrams).toBeCloseTo(8 * POUND * 1000, 6);
    expect(kept.figures.paid).toBeCloseTo(31.92, 9);
  });
});

test('the card for a shop without signal', async () => {
  const { play } = await clubOfTwelve();
  const { figures, picture, text } = await play('/shop cut:packer card:yes');
  const rows = figures.rows as { pricePerKg: number; costPerServedKg: number; trimmedPerKg: number }[];
  expect(rows).toHaveLength(10);
  for (const { pricePerKg, costPerServedKg, trimmedPerKg } of rows) {
    expect(trimmedPerKg).toBeCloseTo(pricePerKg / (1 - Number(figures.trimShare)), 9);
    expect(costPerServedKg).toBeCloseTo(trimmedPerKg / Number(figures.kept), 9);
  }
  expect(picture?.alt).toContain('Whole packer brisket');
  expect(text).toContain('works in a shop without signal');
});

describe('is refused, or asked', () => {
  test.each([
    ['/shop cut:packer', 'labels-missing'],
    ['/shop one:14 lb @ 5.49', 'cut-to-buy'],
    ['/shop card:yes', 'cut-to-buy'],
    ['/shop cut:packer one:14 lb @ 5.49 two:6 kg @ EUR 12/kg', 'label-currencies'],
    ['/shop cut:packer one:14 lb @ 5, 13 lb @ 6, 12 lb @ 4', 'label-several'],
    ['/shop cut:packer one:14 lb', 'label-price'],
    ['/shop cut:packer one:choice @ 5.49', 'label-weight'],
    ['/shop cut:packer one:14 lb @ 5 dragon', 'label-words'],
    ['/shop cut:packer one:14 lb 5.49', 'per-weight-or-in-all'],
    ['/shop cut:turkey one:14 lb @ 2 style:thin', 'styles-none'],
    ['/shop cut:unicorn one:14 lb @ 2', 'cut-unknown'],
  ])('%s', async (line, code) => {
    const { say } = await rehearse();
    expect(await say(line)).toMatchObject({ ok: false, audience: 'member', error: { code } });
  });

  test('a press on a reading goes on with the label', async () => {
    const { play, say } = await rehearse();
    await say('/shop cut:packer one:14 lb 5.49 choice');
    const said = await play('press $5.49 in all');
    expect(labelsOf(said.figures)[0]?.price).toBeCloseTo(5.49 / (14 * POUND), 9);
  });
});
