/**
 * Butcher's yield tests and cooking-loss tests as published, cut into parts as a member would.
 * "Derived": exact arithmetic on what the source gives, where it prints no figure or one that it rounded before.
 */
import { describe, expect, test } from 'vitest';
import { type Rehearsing, rehearse, type Said } from '../rehearsing.ts';

const POUND = 453.59237;

/** A member who weighs in pounds. */
async function inPounds(): Promise<Rehearsing> {
  const club = await rehearse();
  await club.play('/mine units units:lb');
  return club;
}

const figure = ({ figures }: Said, name: string): number => Number(figures[name]);
/** In cents, halves up, as every source here prints money. */
const cents = (amount: number): string => (Math.round(amount * 100 + 1e-9) / 100).toFixed(2);
const perPound = (said: Said, name: 'costPerServedKg' | 'usableCostPerKg'): number =>
  (figure(said, name) * POUND) / 1000;

interface PartFigures {
  name: string;
  grams: number;
  share: number;
  credit: number | null;
}
const parts = ({ figures }: Said): readonly PartFigures[] => figures.parts as unknown as PartFigures[];
const shares = (said: Said): (readonly [string, string])[] =>
  parts(said).map(({ name, share }) => [name, (share * 100).toFixed(2)]);

describe('lamb loin, butcher test: exercise of a food-cost textbook', () => {
  const LOIN =
    '/piece parts cut:lamb shoulder bought:12 lb price:6.65/lb parts:fat 3 lb, kidneys 1 lb @6.10, flanks 1 lb 8 oz @4.60';

  test('ratios 25, 8.33, 12.50, 4.17 and 50 %; 66.80; 11.13 a pound, 0.70 an ounce; 3.48 a portion; 1.67 and 0.52', async () => {
    const said = await (await inPounds()).play(`${LOIN} usable:6 lb portion:5 oz`);
    expect(shares(said)).toEqual([
      ['fat', '25.00'],
      ['kidneys', '8.33'],
      ['flanks', '12.50'],
    ]);
    expect(figure(said, 'lossGrams')).toBeCloseTo(POUND / 2, 9);
    expect((figure(said, 'lossShare') * 100).toFixed(2)).toBe('4.17');
    expect(figure(said, 'usableShare')).toBe(0.5);
    expect(parts(said).map(({ credit }) => credit)).toEqual([null, 6.1, 6.9]);
    expect(figure(said, 'paid')).toBe(79.8);
    expect(figure(said, 'credit')).toBe(13);
    expect(figure(said, 'usableValue')).toBe(66.8);
    expect(cents(figure(said, 'usableCostPerLb'))).toBe('11.13');
    expect(cents(figure(said, 'usableCostPerOz'))).toBe('0.70');
    expect(cents(figure(said, 'portionCost'))).toBe('3.48');
    expect(figure(said, 'costFactorUsable').toFixed(2)).toBe('1.67');
    expect(figure(said, 'portionFactor').toFixed(2)).toBe('0.52');
    expect(said.text).toContain('$11.13 a pound usable: 6 lb of 12 lb, 50.0 %.');
    expect(said.text).toContain('$66.80 for the usable meat, 1.67 times the shelf price.');
    expect(said.text).toContain('A portion of 5 oz costs $3.48, 0.52 times the price of a pound; 19 from');
    expect(said.text).toContain('$0.70 an ounce');
  });

  test('the usable weight follows from the loss as well', async () => {
    const said = await (await inPounds()).play(`${LOIN} loss:8 oz`);
    expect(figure(said, 'usableGrams')).toBeCloseTo(6 * POUND, 9);
  });

  test('its cooking sheet: 15.96 a pound, 4.99 the portion, 2.4 and 0.75 follow from 5 lb', async () => {
    // The sheet spreads all that was paid, with nothing credited.
    const said = await (await inPounds()).play(
      '/piece parts bought:12 lb price:6.65/lb usable:6 lb cooked:5 lb 8 oz served:5 lb portion:5 oz',
    );
    expect(cents(perPound(said, 'costPerServedKg'))).toBe('15.96');
    expect(cents(figure(said, 'portionCost'))).toBe('4.99');
    expect(figure(said, 'costFactorServed')).toBeCloseTo(2.4, 12);
    expect(figure(said, 'portionFactor')).toBeCloseTo(0.75, 12);
  });

  test('but 5 lb 8 oz less 1 lb of bones is 4 lb 8 oz: the sheet contradicts itself, and that is said', async () => {
    const said = await (await inPounds()).say(
      `${LOIN} usable:6 lb cooked:5 lb 8 oz scraps:1 lb served:5 lb portion:5 oz`,
    );
    expect(said).toMatchObject({ ok: false, figures: {}, error: { code: 'parts-off' } });
    expect(said.text).toContain('are 6 lb, 8 oz more than the 5 lb 8 oz that came off the heat');
  });
});

describe('beef tenderloin: exercise of the same kind', () => {
  test('35.615 paid, printed 35.62; 55.88, 8.82 and 35.29 %', async () => {
    const said = await (await inPounds()).play(
      '/piece parts cut:beef tenderloin bought:8 lb 8 oz price:4.19/lb parts:fat 4 lb 12 oz, tidbits 12 oz @2.49 usable:3 lb portion:8 oz',
    );
    expect(said.text).toContain('$35.62 paid');
    expect(shares(said)).toEqual([
      ['fat', '55.88'],
      ['tidbits', '8.82'],
    ]);
    expect((figure(said, 'usableShare') * 100).toFixed(2)).toBe('35.29');
    expect(figure(said, 'lossGrams')).toBe(0);
    // Derived.
    expect(figure(said, 'usableValue')).toBe(33.7475);
    expect(figure(said, 'usableCostPerLb')).toBeCloseTo(11.2492, 4);
    expect(cents(figure(said, 'portionCost'))).toBe('5.62');
    expect(figure(said, 'costFactorUsable')).toBeCloseTo(2.6848, 4);
  });
});

describe('rib: exercise of the same kind', () => {
  test('123.61 paid; derived: 10.1775 credited, 5.1561 a pound, 5.9703 cooked, 3.73 a portion, 49.03 %', async () => {
    const said = await (await inPounds()).play(
      '/piece parts bought:38 lb 12 oz price:3.19/lb parts:fat 6 lb 8 oz, bones 4 lb 4 oz @0.32, short ribs 3 lb 4 oz @1.49, chopped 2 lb 8 oz @1.59 loss:4 oz usable:22 lb cooked:20 lb 4 oz scraps:1 lb 4 oz portion:10 oz',
    );
    expect(said.text).toContain('$123.61 paid');
    expect(figure(said, 'credit')).toBe(10.1775);
    expect(figure(said, 'usableCostPerLb')).toBeCloseTo(5.1561, 4);
    expect(perPound(said, 'costPerServedKg')).toBeCloseTo(5.9703, 4);
    expect(cents(figure(said, 'portionCost'))).toBe('3.73');
    expect((figure(said, 'plateYield') * 100).toFixed(2)).toBe('49.03');
    expect(said.figures.portionOf).toBe('served');
  });
});

describe('BCcampus, Basic Kitchen and Food Service Management (CC BY 4.0): yield testing', () => {
  const rounded = (percent: number) => percent.toFixed(2);
  /** The second figure is printed cut off, where it is 64.516. */
  const cutOff = (percent: number) => (Math.floor(percent * 100) / 100).toFixed(2);

  test.each([
    ['2.5 kg', '1.75 kg', rounded, '70.00'],
    ['7.75 kg', '5.0 kg', cutOff, '64.51'],
    ['750 g', '400 g', rounded, '53.33'],
  ])('%s to %s', async (bought, usable, print, printed) => {
    const said = await (await rehearse()).play(`/piece parts bought:${bought} usable:${usable}`);
    expect(print(100 * figure(said, 'usableShare'))).toBe(printed);
  });
});

describe('striploin of 5.2 kg at 11.95 a kilo', () => {
  test('4.6 kg are 88.5 %; 85 portions of 170 g take 16.33 kg; derived: 13.51 a kilo', async () => {
    const { play } = await rehearse();
    await play('/mine units units:kg');
    const said = await play(
      '/piece parts cut:striploin bought:5.2 kg price:11.95/kg usable:4.6 kg portion:170 g portions:85',
    );
    expect((figure(said, 'usableShare') * 100).toFixed(1)).toBe('88.5');
    expect(cents(figure(said, 'usableCostPerKg'))).toBe('13.51');
    // Through the per cent as it is printed it would be another cent.
    expect(cents(11.95 / 0.885)).toBe('13.50');
    expect((figure(said, 'buyGrams') / 1000).toFixed(2)).toBe('16.33');
  });
});

test('two pieces together: 12 lb for 120.00 less 36.00 is 84.00, 21.00 a pound of the 4 lb left', async () => {
  const said = await (await inPounds()).play(
    '/piece parts bought:12 lb price:for 120 pieces:2 parts:trim 3 lb @2, steaks 5 lb @6 usable:4 lb',
  );
  expect(said.figures).toMatchObject({ pieces: 2, credit: 36, usableValue: 84, lossGrams: 0 });
  expect(figure(said, 'usableCostPerLb')).toBeCloseTo(21, 12);
  expect(said.text).toContain('$21.00 a pound usable');
});

test('28 lb at 1.30 less 0.30, 1.20 and 6.50 is 28.40, where a page prints 22.40', async () => {
  // The page gives what the parts are worth and that 12 lb came off; how the 12 lb divide is made up.
  const said = await (await inPounds()).play(
    '/piece parts bought:28 lb price:1.30/lb parts:bones 5 lb for 0.30, fat 4 lb for 1.20, stew 3 lb for 6.50',
  );
  expect(figure(said, 'paid')).toBe(36.4);
  expect(figure(said, 'credit')).toBe(8);
  expect(cents(figure(said, 'usableValue'))).toBe('28.40');
  expect(cents(figure(said, 'usableValue'))).not.toBe('22.40');
  expect(figure(said, 'usableCostPerLb')).toBeCloseTo(1.775, 12);
  expect(figure(said, 'costFactorUsable')).toBeCloseTo(1.3654, 4);
  expect((figure(said, 'usableShare') * 100).toFixed(2)).toBe('57.14');
});
