/** Published yield tests and cooking-loss tests, weighed in as a member would; in parts, see `butchers-tests.test.ts`. */
import { describe, expect, test } from 'vitest';
import { type Rehearsing, rehearse, type Said } from '../rehearsing.ts';

const POUND = 0.45359237;

/** Types a line; a question about the size or about how much came off is answered "as typed". */
async function weigh({ say }: Rehearsing, line: string): Promise<Said> {
  let said = await say(`/weigh ${line}`);
  while (said.error?.code === 'size' || said.error?.code === 'came-off-or-left') {
    const label = said.ask?.readings.find((reading) => /^It is|came off$/.test(reading));
    if (label === undefined) throw new Error(said.text);
    said = await say(`press ${said.error.code === 'size' ? label : said.ask?.readings.at(-1)}`);
  }
  return said;
}

const perPound = (said: Said, figure: 'costPerLeftKg' | 'costPerServedKg'): number =>
  Number(said.figures[figure]) * POUND;

describe('BCcampus, Basic Kitchen and Food Service Management (CC BY 4.0): yield testing', () => {
  // The second is printed cut off, as 64.51 %.
  test.each([
    ['picnic', '2.5 kg', '1.75 kg', 70],
    ['packer', '7.75 kg', '5.0 kg', 64.516],
    ['tri-tip', '750 g', '400 g', 53.33],
  ])('%s: %s to %s is %d %%', async (cut, bought, left, percent) => {
    const said = await weigh(await rehearse(), `cut:${cut} bought:${bought} left:${left}`);
    expect(100 * (1 - Number(said.figures.trimShare))).toBeCloseTo(percent, 2);
  });

  test('a striploin of 5.2 kg at 11.95 yields 4.6 kg, 88.5 %', async () => {
    const said = await weigh(await rehearse(), 'cut:striploin bought:5.2 kg left:4.6 kg price:11.95/kg');
    expect(Math.round(1000 * (1 - Number(said.figures.trimShare))) / 10).toBe(88.5);
    // From the weights; through the rounded per cent it would be 13.50.
    expect(said.figures.costPerLeftKg).toBeCloseTo(13.51, 2);
    expect(said.figures.costPerLeftKg).toBeCloseTo((5.2 * 11.95) / 4.6, 9);
  });
});

describe('butcher’s tests of food-cost textbooks', () => {
  test('lamb loin, 12 lb at 6.65: usable 66.80, 11.13 a pound, factor 1.67', async () => {
    const said = await weigh(
      await rehearse(),
      'cut:lamb shoulder bought:12 lb left:6 lb price:6.65/lb saved:kidneys 1 lb @6.10, flanks 1 lb 8 oz @4.60',
    );
    expect(said.figures.paid).toBeCloseTo(79.8, 9);
    expect(Number(said.figures.paid) - Number(said.figures.credit)).toBeCloseTo(66.8, 9);
    expect(perPound(said, 'costPerLeftKg')).toBeCloseTo(11.13, 2);
    expect(said.figures.costFactorLeft).toBeCloseTo(1.67, 2);
    expect(said.text).toContain('$11.13 a pound to cook, 1.7 times the shelf price.');
  });

  test('its cooking sheet contradicts itself, and that is said', async () => {
    const said = await weigh(
      await rehearse(),
      'cut:lamb shoulder bought:12 lb left:6 lb cooked:5 lb 8 oz scraps:1 lb served:5 lb',
    );
    expect(said).toMatchObject({ ok: false, error: { code: 'parts-off' } });
  });

  test('beef tenderloin, 8 lb 8 oz at 4.19: 35.62, 11.2492 a pound, factor 2.6848', async () => {
    const club = await rehearse();
    // Paid is 35.615 exactly: binary arithmetic would print 35.61.
    expect((await weigh(club, 'cut:beef tenderloin bought:8 lb 8 oz price:4.19/lb')).text).toContain(
      '$35.62 paid',
    );
    const said = await weigh(
      club,
      'cut:beef tenderloin bought:8 lb 8 oz trim:5 lb 8 oz price:4.19/lb saved:tidbits 12 oz @2.49',
    );
    expect(said.figures.paid).toBeCloseTo(35.615, 12);
    expect(Number(said.figures.paid) - Number(said.figures.credit)).toBeCloseTo(33.7475, 9);
    expect(perPound(said, 'costPerLeftKg')).toBeCloseTo(11.2492, 4);
    expect(perPound(said, 'costPerLeftKg') / 2).toBeCloseTo(5.62, 2);
    expect(said.figures.costFactorLeft).toBeCloseTo(2.6848, 4);
    expect(1 - Number(said.figures.trimShare)).toBeCloseTo(0.3529, 4);
  });

  test('a rib of 38 lb 12 oz at 3.19: 5.1561 a pound oven-ready, 5.9703 cooked, 49.03 % in the end', async () => {
    const club = await rehearse();
    const raw = await weigh(
      club,
      'cut:chuck roll bought:38 lb 12 oz left:22 lb price:3.19/lb saved:bones 4 lb 4 oz @0.32, short ribs 3 lb 4 oz @1.49, chopped 2 lb 8 oz @1.59',
    );
    expect(raw.figures.paid).toBeCloseTo(123.61, 2);
    expect(raw.figures.credit).toBeCloseTo(10.1775, 9);
    expect(perPound(raw, 'costPerLeftKg')).toBeCloseTo(5.1561, 4);
    const cooked = await weigh(club, 'cooked:20 lb 4 oz scraps:1 lb 4 oz');
    expect(perPound(cooked, 'costPerServedKg')).toBeCloseTo(5.9703, 4);
    expect((perPound(cooked, 'costPerServedKg') * 10) / 16).toBeCloseTo(3.73, 2);
    expect(cooked.figures.plateYield).toBeCloseTo(0.4903, 4);
  });

  test('12 lb for 120.00 less 36.00 of by-products is 21.00 a pound of the 4 lb left', async () => {
    const said = await weigh(
      await rehearse(),
      'cut:packer bought:12 lb trim:8 lb price:for 120 saved:trimmings 3 lb @2, steaks 5 lb @6',
    );
    expect(said.figures.credit).toBeCloseTo(36, 9);
    expect(perPound(said, 'costPerLeftKg')).toBeCloseTo(21, 9);
  });

  test('28 lb at 1.30 less credits of 8.00 is 28.40, where a page prints 22.40', async () => {
    const said = await weigh(
      await rehearse(),
      'cut:packer bought:28 lb trim:12 lb price:1.30/lb saved:bones 1 lb @0.30, fat 1 lb @1.20, stew 1 lb @6.50',
    );
    expect(Number(said.figures.paid) - Number(said.figures.credit)).toBeCloseTo(28.4, 9);
    expect(perPound(said, 'costPerLeftKg')).toBeCloseTo(1.775, 9);
    expect(said.figures.costFactorLeft).toBeCloseTo(1.3654, 4);
    expect(1 - Number(said.figures.trimShare)).toBeCloseTo(0.5714, 4);
  });
});

test('UF/IFAS FCS8718: 3.19 over 2 is printed 1.60, not 1.59', async () => {
  const said = await weigh(await rehearse(), 'cut:tri-tip bought:2 lb trim:0 price:for 3.19');
  expect(said.text).toContain('$1.60 a pound to cook');
});

describe('USDA SR28: edible grams and refuse make the cooked total', () => {
  test.each([
    ['Boston butt', 262, 0.24, 344.7, 0.31, 238],
    ['packer', 314, 0.01, 317.2, 0.17, 264],
    ['short ribs', 225, 0.29, 316.9, 0.62, 121],
  ])('%s: %d g, refuse %d, of 453.6 g raw', async (cut, edible, refuse, total, leanRefuse, lean) => {
    expect(edible / (1 - refuse)).toBeCloseTo(total, 1);
    const said = await weigh(
      await rehearse(),
      `cut:${cut} bought:453.6 g trim:0 cooked:${total} g served:${edible} g`,
    );
    expect(said.figures.cookingYield).toBeCloseTo(total / 453.6, 9);
    expect(said.figures.carvingYield).toBeCloseTo(1 - refuse, 3);
    expect(said.figures.plateYield).toBeCloseTo(
      Number(said.figures.cookingYield) * Number(said.figures.carvingYield),
      12,
    );
    // The lean alone is the other refuse off the same total, stored to the gram.
    expect(Math.abs(Number(said.figures.cookedGrams) * (1 - leanRefuse) - lean)).toBeLessThan(1);
  });
});
