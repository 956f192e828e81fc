/** `/weigh`: one member's weekend, with figures worked out here from the pounds and the price alone. */
import { describe, expect, test } from 'vitest';
import { filled, rehearse } from '../rehearsing.ts';

const POUND = 453.59237;
const START = '/weigh cut:packer bought:14.83 trim:2:9.4 price:4.99/lb';

describe('a weekend', () => {
  const bought = 14.83;
  const trim = 2 + 9.4 / 16;
  const cooked = 7 + 11 / 16;
  const served = cooked - 12 / 16;

  test('starts with what was bought and what came off', async () => {
    const { play } = await rehearse();
    const said = await play(START);
    expect(said).toMatchObject({ ok: true, audience: 'club', command: 'weigh' });
    expect(said.text).toContain('17.4 % came off: 2 lb 9.4 oz of 14 lb 13.3 oz.');
    expect(said.text).toContain('$6.04 a pound to cook, 1.2 times the shelf price.');
    expect(said.figures).toMatchObject({ piece: 1, cut: 'beef/brisket-whole', cookingYield: null });
    expect(said.figures.boughtGrams).toBeCloseTo(bought * POUND, 9);
    expect(said.figures.trimGrams).toBeCloseTo(trim * POUND, 9);
    expect(said.figures.leftGrams).toBeCloseTo((bought - trim) * POUND, 9);
    expect(said.figures.trimShare).toBeCloseTo(trim / bought, 12);
    expect(said.figures.paid).toBeCloseTo(bought * 4.99, 9);
    expect(said.figures.costFactorLeft).toBeCloseTo(bought / (bought - trim), 9);
  });

  test('ends on the plate', async () => {
    const { play } = await rehearse();
    const said = await play(START, 'at 2026-07-05T20:00:00Z', '/weigh cooked:7 lb 11 oz scraps:12 oz');
    expect(said.text.split('\n')[0]).toBe('46.8 % is on the plate: 6 lb 15 oz of the 14 lb 13.3 oz bought.');
    expect(said.text).toContain('Added to piece 1, your whole packer brisket of Jul 4, 2026.');
    expect(said.text).toContain('$10.67 a pound on the plate, 2.1 times the shelf price.');
    expect(said.figures.cookingYield).toBeCloseTo(cooked / (bought - trim), 12);
    expect(said.figures.carvingYield).toBeCloseTo(served / cooked, 12);
    expect(said.figures.plateYield).toBeCloseTo(served / bought, 12);
    expect(said.figures.costPerServedKg).toBeCloseTo((bought * 4.99) / served / (POUND / 1000), 6);
    expect(said.figures.costFactorServed).toBeCloseTo(bought / served, 9);
    expect(said.figures.club).toMatchObject({ measure: 'plate', pieces: 1, members: 1 });
  });

  test('no figure is ever NaN', async () => {
    const { play } = await rehearse();
    const said = await play('/weigh cut:packer bought:14.83 lb');
    expect(Object.values(said.figures).filter((figure) => Number.isNaN(figure))).toEqual([]);
    expect(said.figures).toMatchObject({
      trimShare: null,
      plateYield: null,
      paid: null,
      costFactorServed: null,
    });
  });
});

describe('the first time in a club', () => {
  test('is greeted once, with what was taken for granted', async () => {
    const { play } = await rehearse();
    expect((await play(START)).welcome).toContain('weighs in pounds and ounces and pays in USD');
    expect((await play('/weigh cut:flat bought:7.2 lb')).welcome).toBeUndefined();
  });
});

describe('what is not on the scale', () => {
  test('a bare line opens a form, which is filled in and sent', async () => {
    const { say, play } = await rehearse();
    const opened = await say('/weigh');
    expect(opened.form?.title).toBe('Weigh a piece in');
    expect(filled(opened)).toEqual({ cut: '', bought: '', trim: '', price: '', more: '' });
    const said = await play(
      'submit cut: Boston butt bought: 8 lb 4 oz trim: 14 oz price: 2.49/lb shop: Corner store grade: choice',
    );
    expect(said.figures.trimShare).toBeCloseTo(14 / 132, 12);
    expect(said.figures).toMatchObject({ cut: 'pork/butt', grade: 'usda/choice' });
    expect(filled(await say('/weigh')).cut).toBe('Pork butt');
  });

  test('a lot that was weighed together counts once', async () => {
    const { say, play } = await rehearse();
    const asked = await say('/weigh cut:Boston butt bought:8.41 lb + 7.96 lb trim:1 lb');
    expect(asked).toMatchObject({ ok: false, error: { code: 'two-pieces-or-two-goes' } });
    const said = await play('press 2 pieces');
    expect(said.figures.pieces).toBe(2);
    expect(said.figures.boughtGrams).toBeCloseTo(16.37 * POUND, 9);
    expect(said.figures.club).toMatchObject({ pieces: 1 });
    expect(said.text).toContain('2 together');
  });

  test('one piece in two goes is one piece', async () => {
    const { say, play } = await rehearse();
    await say('/weigh cut:packer bought:8.41 lb + 7.96 lb');
    expect((await play('press One piece')).figures.pieces).toBe(1);
  });

  test('what was left gives what came off', async () => {
    const { play } = await rehearse();
    const { figures } = await play('/weigh cut:packer bought:12 lb left:9 lb');
    expect(figures.trimShare).toBeCloseTo(0.25, 12);
  });

  test('bag juice stands by itself', async () => {
    const { play } = await rehearse();
    const said = await play('/weigh cut:packer bought:10 kg bagged:9.8 kg trim:1.8 kg');
    expect(said.figures).toMatchObject({
      juiceGrams: 200,
      trimGrams: 1800,
      leftGrams: 8000,
      trimShare: 0.18,
    });
    expect(said.text).toContain('was bag juice (2.0 %)');
  });

  test('an injection is put in, and a gain without one is asked', async () => {
    const { say, play } = await rehearse();
    const asked = await say('/weigh cut:Boston butt bought:4 kg trim:0 cooked:4.2 kg');
    expect(asked).toMatchObject({ ok: false, error: { code: 'gain' } });
    expect(asked.ask?.readings).toEqual(['Tell what was put in', 'Nothing was put in']);
    expect(filled(await say('press Tell'))).toHaveProperty('added');
    const said = await play('submit added: 400 g');
    expect(said.figures).toMatchObject({ addedGrams: 400, cookedGrams: 4200 });
    expect(said.figures.cookingYield).toBeCloseTo(4200 / 4400, 12);
  });

  test('on the plate and thrown away give each other', async () => {
    const { play } = await rehearse();
    const { figures } = await play('/weigh cut:picnic bought:4 kg trim:0 cooked:3 kg served:2.1 kg');
    expect(figures).toMatchObject({ scrapsGrams: 900, servedGrams: 2100 });
  });

  test('quiet is for its member alone, and counts', async () => {
    const { play } = await rehearse();
    expect(await play(`${START} quiet:yes`)).toMatchObject({ audience: 'member' });
    expect((await play('/average cut:packer')).figures.pieces).toBe(1);
  });
});
