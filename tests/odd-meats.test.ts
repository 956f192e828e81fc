/**
 * Odd meats, told in the rehearsal as a member would tell them, with their figures worked out by hand beside each.
 * The weights are made up; how each is told is common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { type Rehearsing, rehearse } from './rehearsing.ts';

const LB = 453.59237;
const OZ = LB / 16;

/** Plays the lines and compares the figures of the last one, weights in pounds. */
async function figuresOf(club: Rehearsing, ...lines: string[]) {
  return (await club.play(...lines)).figures;
}

describe('two butts in a bag', () => {
  test('are one lot: their sum is asked about, and their size is that of one', async () => {
    const club = await rehearse();
    const asked = await club.say(
      '/weigh cut:Boston butt bought:8.41 lb + 7.96 lb bagged:16 lb 2 oz trim:11 oz bone:in',
    );
    expect(asked.ask?.readings).toEqual(['2 pieces', 'One piece']);
    const figures = await figuresOf(club, 'press 2 pieces', '/weigh cooked:9 lb 8 oz scraps:1 lb 4 oz');
    // 8.41 + 7.96 = 16.37; juice 16.37 - 16.125; into the heat 16.125 - 0.6875 = 15.4375; on the plate 9.5 - 1.25 = 8.25.
    expect(figures.pieces).toBe(2);
    expect(figures.boughtGrams).toBeCloseTo(16.37 * LB, 6);
    expect(figures.juiceGrams).toBeCloseTo(0.245 * LB, 6);
    expect(figures.trimShare).toBeCloseTo(0.6875 / 16.37, 12);
    expect(figures.cookingYield).toBeCloseTo(9.5 / 15.4375, 12);
    expect(figures.plateYield).toBeCloseTo(8.25 / 16.37, 12);
    expect(figures.club).toMatchObject({ pieces: 1 });
  });
});

describe('injected and pumped meat', () => {
  const plain = '/weigh cut:Boston butt bought:8 lb trim:8 oz cooked:4 lb 8 oz bone:in';

  test('what was put in goes into the heat, and is no gain', async () => {
    const club = await rehearse();
    const figures = await figuresOf(
      club,
      '/weigh cut:Boston butt bought:8 lb trim:8 oz added:12 oz cooked:5 lb 8 oz bone:in',
    );
    // Left 7.5 and 0.75 put in make 8.25.
    expect(figures.cookingYield).toBeCloseTo(5.5 / 8.25, 12);
  });

  test('is a group of its own from the heat on, but not under the knife', async () => {
    const club = await rehearse();
    await club.play(
      plain,
      '/weigh cut:Boston butt bought:8 lb trim:8 oz added:12 oz cooked:5 lb 8 oz bone:in',
      '/weigh cut:Boston butt bought:8 lb trim:1 lb cooked:5 lb bone:in pumped:yes',
    );
    const cooking = await club.say('/average cut:Boston butt measure:cooking');
    expect(cooking.figures).toMatchObject({ pieces: 1, injected: { pieces: 2 } });
    expect(cooking.figures.meanShare).toBeCloseTo(4.5 / 7.5, 12);
    expect(cooking.figures.injected).toHaveProperty('meanShare');
    expect((cooking.figures.injected as { meanShare: number }).meanShare).toBeCloseTo(
      (5.5 / 8.25 + 5 / 7) / 2,
      12,
    );
    expect(cooking.text).toContain('Injected or pumped: 69.0 % (2 pieces, 1 person), a group of its own.');
    const trim = await club.say('/average cut:Boston butt');
    expect(trim.figures).toMatchObject({ pieces: 3, injected: null });
  });

  test('its card stands beside others like it', async () => {
    const club = await rehearse();
    await club.play(plain, '/weigh cut:Boston butt bought:8 lb trim:1 lb cooked:5 lb bone:in pumped:yes');
    const card = await club.say(
      '/weigh cut:Boston butt bought:9 lb trim:1 lb cooked:6 lb bone:in pumped:yes',
    );
    expect(card.figures.club).toMatchObject({ measure: 'cooking', pieces: 2 });
  });
});

describe('point and flat apart', () => {
  test('come off the heat one after the other, and burnt ends count with the slices', async () => {
    const club = await rehearse();
    const figures = await figuresOf(
      club,
      '/weigh cut:packer bought:15 lb trim:3 lb',
      '/weigh cooked:4 lb 9 oz + 2 lb 15 oz served:4 lb 2 oz + 2 lb 6 oz',
    );
    // Off the heat 7.5 of 12; slices 4.125 and burnt ends 2.375 make 6.5 of 15.
    expect(figures.cookingYield).toBeCloseTo(7.5 / 12, 12);
    expect(figures.scrapsGrams).toBeCloseTo(1 * LB, 6);
    expect(figures.plateYield).toBeCloseTo(6.5 / 15, 12);
  });

  test('a point that was frozen is saved: off this piece, not lost', async () => {
    const club = await rehearse();
    // More than half came off, which is asked about once.
    await club.say('/weigh cut:packer bought:15 lb trim:8 lb price:4.00/lb saved:point 5 lb @4.00');
    const figures = await figuresOf(club, 'press 8 lb came off');
    // 60.00 paid, 20.00 of it for the point: 40.00 for the 7 lb that are left.
    expect(figures.credit).toBeCloseTo(20, 9);
    expect(figures.costPerLeftKg).toBeCloseTo((40 / (7 * LB)) * 1000, 9);
  });
});

describe('fat cut off after cooking', () => {
  test('is thrown away at the board, not trimmed', async () => {
    const club = await rehearse();
    const figures = await figuresOf(
      club,
      '/weigh cut:brisket flat bought:7 lb trim:0',
      '/weigh cooked:5 lb scraps:10 oz',
    );
    expect(figures.trimShare).toBe(0);
    expect(figures.carvingYield).toBeCloseTo((5 - 0.625) / 5, 12);
    expect(figures.plateYield).toBeCloseTo(4.375 / 7, 12);
  });
});

describe('ribs squared', () => {
  test('the tips are saved, and what they are worth is taken off the cost', async () => {
    const club = await rehearse();
    const figures = await figuresOf(
      club,
      '/weigh cut:spares style:squared bought:4 lb trim:1 lb 4 oz saved:tips 12 oz @2/lb, cartilage 4 oz price:3.29/lb',
    );
    // 13.16 paid less 1.50 for the tips, over 2.75 lb left.
    expect(figures.style).toBe('ribs/squared');
    expect(figures.paid).toBeCloseTo(13.16, 9);
    expect(figures.credit).toBeCloseTo(1.5, 9);
    expect(figures.costPerLeftKg).toBeCloseTo((11.66 / (2.75 * LB)) * 1000, 9);
  });
});

describe('dry-aged meat', () => {
  test.each(['dry-aged ribeye', 'Dry Aged strip loin', 'dryaged packer', 'dry age brisket'])(
    '%s is refused, with the reason',
    async (cut) => {
      const club = await rehearse();
      const said = await club.say(`/weigh cut:${cut} bought:12 lb trim:3 lb`);
      expect(said).toMatchObject({ ok: false, error: { code: 'dry-aged' } });
      expect(said.text).toContain('lost its water before it was sold');
    },
  );
});

describe('a turkey with its neck and giblets', () => {
  test('they come off raw and are saved; the bones belong to the plate', async () => {
    const club = await rehearse();
    const figures = await figuresOf(
      club,
      '/weigh cut:turkey bought:14 lb trim:1 lb 4 oz saved:neck 8 oz, giblets 12 oz',
      '/weigh cooked:9 lb 9 oz scraps:3 lb 9 oz',
    );
    expect(figures.trimShare).toBeCloseTo(1.25 / 14, 12);
    expect(figures.cookingYield).toBeCloseTo(9.5625 / 12.75, 12);
    expect(figures.plateYield).toBeCloseTo(6 / 14, 12);
  });
});

describe('a thawed piece', () => {
  test('its drip is bag juice: neither trim nor lost in the heat', async () => {
    const club = await rehearse();
    const said = await club.play('/weigh cut:packer bought:14 lb bagged:13 lb 4 oz left:11 lb');
    expect(said.figures.juiceGrams).toBeCloseTo(12 * OZ, 6);
    expect(said.figures.trimGrams).toBeCloseTo(2.25 * LB, 6);
    expect(said.figures.trimShare).toBeCloseTo(2.25 / 14, 12);
    expect(said.text).toContain('12 oz was bag juice (5.4 %)');
  });
});

describe('what was saved', () => {
  test('comes with its caution, and fat with that of rendering', async () => {
    const club = await rehearse();
    const grind = await club.play('/weigh cut:packer bought:14 lb trim:3 lb saved:grind 1 lb');
    expect(grind.text).toContain('Raw trimmings: cold within 2 hours');
    expect(grind.text).not.toContain('Rendering fat');
    const fat = await club.play('/weigh cut:packer bought:14 lb trim:3 lb saved:fat 2 lb');
    expect(fat.text).toContain('Rendering fat: stay with it');
  });

  test('and a grade of another animal is kept with a note', async () => {
    const club = await rehearse();
    const said = await club.play('/weigh cut:Boston butt bought:8 lb trim:1 lb grade:choice bone:in');
    expect(said.figures.grade).toBe('usda/choice');
    expect(said.text).toContain('That is a grade of beef');
    const lamb = await club.play('/weigh cut:lamb shoulder bought:5 lb trim:1 lb grade:choice bone:in');
    expect(lamb.figures.grade).toBe('usda-lamb/choice');
  });
});
