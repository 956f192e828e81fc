/** Where the money went: its bars add up, its words hold the figures, and no member's word goes to a chart host. */
import { describe, expect, test } from 'vitest';
import { shows } from '../../../shared/measure/show.ts';
import type { Nanograms } from '../../../shared/measure/units.ts';
import { whereTheMoneyWent } from '../../../shared/pictures/money.ts';
import type { Note } from '../../../shared/pictures/notes.ts';
import type { Picture } from '../../../shared/pictures/picture.ts';
import { pictures } from '../../../shared/words/en/pictures.ts';
import { type Part, partedOf } from '../../../shared/yield/parts.ts';
import { forQuickChart } from '../../../src/pictures/for-quickchart.ts';
import { draw } from '../../../src/pictures/local.ts';
import { lb, perUnit } from '../yield/samples.ts';

const POUNDS = shows({ locale: 'en-US', units: 'lb' });
const part = (name: string, weight: number, worth: number | null): Part => ({
  name,
  weight: lb(weight),
  price: worth === null ? null : perUnit(worth, 'lb'),
});
const LOIN = [part('fat', 3, null), part('kidneys', 1, 6.1), part('flanks', 1.5, 4.6)];

function pictureOf(parts: readonly Part[], usable = 6, price: number | null = 6.65, show = POUNDS) {
  const parted = partedOf({
    pieces: 1,
    bought: lb(12),
    bagged: null,
    price: price === null ? null : perUnit(price, 'lb'),
    parts,
    usable: lb(usable),
    loss: null,
    added: null,
    cooked: null,
    scraps: null,
    served: null,
    gained: false,
  });
  return whereTheMoneyWent(parted, 'Lamb loin, 12 lb', pictures(show).moneyWent, show);
}

interface Config {
  data: { labels: string[][]; datasets: { data: ([number, number] | null)[]; backgroundColor: string }[] };
  options: { plugins: { notes: Note[] } };
}
const configOf = (picture: Picture | null): Config => {
  if (picture === null) throw new Error('no picture');
  return picture.config as unknown as Config;
};
const notesOf = (picture: Picture | null) => configOf(picture).options.plugins.notes.map(({ text }) => text);

describe('of a lamb loin', () => {
  const picture = pictureOf(LOIN);

  test('what was paid is split into usable, each part that is worth something, and what came off', () => {
    const { datasets } = configOf(picture).data;
    const stretches = datasets.slice(0, -1).map(({ data }) => data[0]?.map((end) => end.toFixed(2)));
    expect(stretches).toEqual([
      ['0.00', '39.90'],
      ['39.90', '46.00'],
      ['46.00', '52.90'],
      ['52.90', '79.80'],
    ]);
    expect(new Set(datasets.map(({ backgroundColor }) => backgroundColor)).size).toBe(4);
    // Each has a row of its own as well, at the same place.
    for (const [index, { data }] of datasets.slice(0, -1).entries()) expect(data[index + 1]).toEqual(data[0]);
  });

  test('each stands in words beside its bar, and in the alt text', () => {
    const pairs = [
      ['paid', '$79.80'],
      ['usable, at the shelf price', '$39.90'],
      ['kidneys', '$6.10'],
      ['flanks', '$6.90'],
      ['paid for what came off', '$26.90'],
    ];
    const notes = notesOf(picture);
    for (const [name = '', money = ''] of pairs) {
      expect(notes[notes.indexOf(name) + 1]).toBe(money);
      expect(picture?.alt.toLowerCase()).toContain(`${name}: ${money}`);
    }
    expect(notes).toContain('$11.13');
    expect(notes).toContain('Usable meat and what came off together: $66.80');
    expect(picture?.alt).toContain('6 lb of 12 lb, 50.0 % of the weight, at $11.13 a pound.');
  });

  test('parts without worth are among what came off', () => expect(notesOf(picture)).not.toContain('fat'));

  test('a chart host sees no name of a part', () => {
    if (picture === null) throw new Error('no picture');
    const sent = JSON.stringify(forQuickChart(picture));
    expect(sent).not.toMatch(/kidneys|flanks|Lamb/);
    expect(sent).toContain('part 1');
    expect(sent).toContain('$6.10, 7.6 %');
  });

  test('it can be drawn', async () => {
    if (picture === null) throw new Error('no picture');
    expect((await draw(picture)).length).toBeGreaterThan(5000);
  });
});

test('where the parts are worth more than what came off cost, the usable meat bears nothing', () => {
  const picture = pictureOf([part('liver', 6, 9)], 6);
  expect(notesOf(picture)).toContain('usable');
  expect(notesOf(picture)).not.toContain('paid for what came off');
  expect(configOf(picture).data.datasets[0]?.data[0]?.[1]).toBeCloseTo(79.8 - 54, 9);
});

test('without a price, or where nothing was paid, there is none', () => {
  expect(pictureOf([], 6, null)).toBeNull();
  expect(pictureOf([], 6, 0)).toBeNull();
});

test('eight parts with long names keep the limits', () => {
  const name = 'odds and ends for the old dog';
  const picture = pictureOf(Array.from({ length: 8 }, () => part(name, 0.5, 12.345)));
  expect(picture?.alt.length).toBeLessThanOrEqual(1024);
  expect(picture?.height).toBeLessThan(900);
});

test('a long amount is drawn smaller', () => {
  const key = (show: typeof POUNDS) =>
    configOf(pictureOf(LOIN, 6, 6.65, show)).options.plugins.notes.find(({ text }) =>
      /11[.,]13|24[.,]54/.test(text),
    );
  const euros = shows({ locale: 'de', units: 'kg', currency: 'EUR' as never });
  expect(key(POUNDS)?.size).toBe(60);
  expect(key(euros)?.size).toBeLessThan(60);
  expect(key(euros)?.size).toBeGreaterThanOrEqual(20);
});

test('no weight is drawn as if it were money', () => {
  expect(pictureOf([part('fat', 0 as Nanograms, null)], 12)).not.toBeNull();
});
