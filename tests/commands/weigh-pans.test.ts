/** Pans: weighed once, taken off whenever they are named. */
import { describe, expect, test } from 'vitest';
import { filled, rehearse } from '../rehearsing.ts';

const START = '/weigh cut:packer bought:14 lb';

async function withPans() {
  const club = await rehearse();
  await club.play('/mine pans name:blue pan weight:10 oz', '/mine pans name:tray weight:2 lb');
  return club;
}

describe('a pan', () => {
  test.each([
    ['trim:3 lb 2 oz - blue pan', 2.5],
    ['trim:3 lb 2 oz pan:blue pan', 2.5],
    ['trim:3 lb 2 oz pan:Blue  Pan', 2.5],
    ['trim:3 lb 2 oz pan:10 oz', 2.5],
    ['trim:4 lb pans:2 pan:blue pan', 2.75],
  ])('%s leaves %d lb', async (told, pounds) => {
    const { play } = await withPans();
    const said = await play(`${START} ${told}`);
    expect(said.figures.trimGrams).toBeCloseTo(pounds * 453.59237, 6);
  });

  test('says what it took off', async () => {
    const { play } = await withPans();
    expect((await play(`${START} trim:3 lb 2 oz pan:blue pan`)).text).toContain('10 oz of pan taken off');
  });

  test('with two weights on the scale, which of them is asked', async () => {
    const { say, play } = await withPans();
    await play(`${START} trim:2 lb`);
    const asked = await say('/weigh cooked:9 lb scraps:1 lb pan:blue pan');
    expect(asked).toMatchObject({ error: { code: 'which-weight-in-pan' } });
    expect(asked.ask?.readings).toEqual(['Under cooked', 'Under scraps', 'Under each']);
    const said = await play('press Under cooked');
    expect(said.figures.cookedGrams).toBeCloseTo(8.375 * 453.59237, 6);
    expect(said.figures.scrapsGrams).toBeCloseTo(453.59237, 6);
  });

  test('heavier than what was weighed is refused', async () => {
    const { say } = await withPans();
    expect((await say(`${START} trim:1 lb pan:tray`)).error?.code).toBe('pan-above-weight');
  });

  test('stays under its own weight when another is told, moved or mended', async () => {
    const { say, play } = await withPans();
    await play(`${START} trim:3 lb 2 oz pan:blue pan`);
    await play('/weigh cooked:10 lb pan:tray');
    expect(filled(await say('press Fix it')).trim).toBe('3 lb 2 oz - blue pan');
    const said = await play('submit price: 4.99/lb');
    expect(said.figures.trimGrams).toBeCloseTo(2.5 * 453.59237, 6);
    expect(said.figures.cookedGrams).toBeCloseTo(8 * 453.59237, 6);
  });

  test('a pan of its own weight is mended with its weight', async () => {
    const { say, play } = await withPans();
    await play(`${START} trim:4 lb pan:10 oz pans:2`);
    await say('press Fix it');
    expect((await play('submit price: 4.99/lb')).figures.trimGrams).toBeCloseTo(2.75 * 453.59237, 6);
  });

  test('twenty of them, whose names would not fit, too', async () => {
    const { say, play } = await withPans();
    await play('/mine pans name:bowl weight:1 oz', `${START} trim:4 lb pan:bowl pans:20`);
    await say('press Fix it');
    expect((await play('submit price: 4.99/lb')).figures.trimGrams).toBeCloseTo(2.75 * 453.59237, 6);
  });
});
