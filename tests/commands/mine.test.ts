/** `/mine`: what is remembered of a member, told to them alone. */
import { describe, expect, test } from 'vitest';
import { rehearse } from '../rehearsing.ts';

describe('units', () => {
  test('are told and kept', async () => {
    const { play } = await rehearse();
    expect(await play('/mine units')).toMatchObject({ audience: 'member', figures: { units: null } });
    expect((await play('/mine units units:kg')).figures).toEqual({ units: 'kg' });
    expect((await play('/weigh cut:packer bought:6.72')).figures.boughtGrams).toBe(6720);
    expect((await play('@bo /mine units')).figures).toEqual({ units: null });
  });

  test('are refused where they are none', async () => {
    const { say } = await rehearse();
    expect((await say('/mine units units:stone')).error?.code).toBe('choice-unknown');
  });
});

describe('pans', () => {
  test('are kept, weighed anew, listed and forgotten', async () => {
    const { play } = await rehearse();
    expect((await play('/mine pans')).text).toContain('You have no pans yet.');
    await play('/mine pans name:blue pan weight:14.2 oz', '/mine pans name:Blue pan weight:15 oz');
    const { figures } = await play('/mine pans');
    expect(figures).toEqual({ pans: [{ name: expect.stringMatching(/^blue pan$/i), grams: 425.242846875 }] });
    expect((await play('@bo /mine pans')).figures).toEqual({ pans: [] });
    expect((await play('/mine pans remove:BLUE PAN')).figures).toEqual({ removed: true });
    expect((await play('/mine pans remove:blue pan')).figures).toEqual({ removed: false });
  });

  test.each([
    ['name:blue pan', 'pan-weight-missing'],
    ['weight:14.2 oz', 'pan-name-missing'],
    ['name:kilo weight:14.2 oz', 'pan-reads-as-weight'],
    ['name:<@42> weight:14.2 oz', 'pan-no-letter'],
    ['name:<b> weight:14.2 oz', 'pan-signs'],
    [`name:${'x'.repeat(31)} weight:14.2 oz`, 'too-long'],
  ])('%s: %s', async (told, code) => {
    const { say } = await rehearse();
    const refused = await say(`/mine pans ${told}`);
    expect(refused.ok).toBe(false);
    expect(refused.error?.code).toMatch(new RegExp(`${code}$`));
  });
});

describe('habits', () => {
  test('are told, kept and given up', async () => {
    const { say, play } = await rehearse();
    const before = { labelDecimals: null, scaleDecimals: null, priceUnit: 'lb' };
    expect((await play('/mine habits')).figures).toEqual(before);
    const told = await play('/mine habits label:decimal scale:ounces price-unit:kg');
    expect(told.figures).toEqual({ labelDecimals: 'decimal', scaleDecimals: 'ounces', priceUnit: 'kg' });
    await play('/mine units units:lb');
    const said = await play('/weigh cut:packer bought:14.8 trim:2.9 price:@ 11');
    expect(said.figures.boughtGrams).toBeCloseTo(14.8 * 453.59237, 6);
    expect(said.figures.trimGrams).toBeCloseTo((2 + 9 / 16) * 453.59237, 6);
    expect(said.figures.pricePerKg).toBeCloseTo(11, 12);
    await play('/mine habits scale:ask');
    expect((await say('/weigh cooked:7.9')).error?.code).toBe('decimals-or-ounces');
  });

  test('another member has their own', async () => {
    const { play } = await rehearse();
    await play('/mine habits label:decimal');
    expect((await play('@bo /mine habits')).figures.labelDecimals).toBeNull();
  });
});
