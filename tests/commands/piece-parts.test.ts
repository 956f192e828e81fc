/** `/piece parts`: of typed weights and of pieces that are kept, in a line and in the form. */
import { describe, expect, test } from 'vitest';
import { ask } from '../../src/rehearsal/stage.ts';
import { filled, rehearse, type Said } from '../rehearsing.ts';

const POUND = 453.59237;
const LOIN =
  '/piece parts bought:12 lb price:6.65/lb parts:fat 3 lb, kidneys 1 lb @6.10, flanks 1 lb 8 oz @4.60 usable:6 lb';

async function inPounds() {
  const club = await rehearse();
  await club.play('/mine units units:lb');
  return club;
}
const names = ({ figures }: Said) => (figures.parts as readonly { name: string }[]).map(({ name }) => name);

describe('of typed weights', () => {
  test('it answers the club, or its member alone', async () => {
    const { play } = await inPounds();
    expect(await play(LOIN)).toMatchObject({ audience: 'club', figures: { piece: null, cut: null } });
    expect(await play(`${LOIN} quiet:yes`)).toMatchObject({ audience: 'member' });
  });

  test('it keeps nothing', async () => {
    const { say, play } = await inPounds();
    await play(LOIN);
    expect((await play('/piece list')).figures.pieces).toEqual([]);
    expect((await say('/piece show')).error?.code).toBe('no-pieces');
  });

  test('every figure has its name', async () => {
    const { play } = await inPounds();
    const { figures, picture } = await play(
      `${LOIN} cut:lamb shoulder portion:5 oz portions:40 again:7.15/lb`,
    );
    expect(figures).toMatchObject({
      cut: 'lamb/shoulder',
      currency: 'USD',
      pieces: 1,
      portions: 19,
      portionOf: 'left',
      factorUnit: 'lb',
      paid: 79.8,
      credit: 13,
      usableValue: 66.8,
    });
    expect(figures.parts).toHaveLength(3);
    expect(Number(figures.usableCostPerKg)).toBeCloseTo((66.8 / 6 / POUND) * 1000, 9);
    expect(Number(figures.buyGrams)).toBeCloseTo((40 * 5 * 2 * POUND) / 16, 6);
    const again = figures.again as { portionCost: number; usableCostPerKg: number; pricePerKg: number };
    expect(again.portionCost).toBeCloseTo((Number(figures.portionCost) * 7.15) / 6.65, 9);
    expect(again.pricePerKg).toBeCloseTo((7.15 / POUND) * 1000, 9);
    expect(picture?.alt).toContain('Paid: $79.80.');
  });

  test('without a price it is about weights alone', async () => {
    const { play } = await inPounds();
    const said = await play('/piece parts bought:12 lb usable:7 lb parts:fat 3 lb portion:8 oz');
    expect(said.text).toContain('58.3 % is usable: 7 lb of 12 lb.');
    expect(said.text).toContain('Portions of 8 oz: 14 from the 7 lb usable.');
    expect(said.picture).toBeUndefined();
    expect(said.figures).toMatchObject({
      paid: null,
      usableCostPerKg: null,
      portionCost: null,
      portions: 14,
    });
  });

  test('what it read is echoed in both systems', async () => {
    const { play } = await inPounds();
    expect((await play(`${LOIN} portion:150 g`)).text).toContain(
      '12 lb (12.00 lb, 5.44 kg) bought; 6 lb (6.00 lb, 2.72 kg) usable; a portion of 5.3 oz (0.33 lb, 150 g).',
    );
  });

  test('in kilos and euros', async () => {
    const { play } = await rehearse({ locale: 'de', club: 'hofladen' });
    const said = await play(
      '/piece parts bought:6,72 kg price:11,95/kg parts:Talg 500 g @3; Hack 340 g @9,50 usable:5,4 kg portion:180 g',
    );
    expect(said.text).toContain('14,00 € a kilo usable: 5,40 kg of 6,72 kg, 80,4 %.');
    expect(names(said)).toEqual(['Talg', 'Hack']);
    expect(said.figures).toMatchObject({ currency: 'EUR', factorUnit: 'kg' });
  });

  test('a price without its basis is asked, and nothing said before', async () => {
    const { say, play } = await inPounds();
    const asked = await say('/piece parts bought:12 lb usable:6 lb price:79.80');
    expect(asked).toMatchObject({ ok: false, error: { code: 'per-weight-or-in-all' }, figures: {} });
    expect((await play('press $79.80 in all')).figures.usableCostPerLb).toBeCloseTo(13.3, 9);
    // So is another price.
    expect((await say(`${LOIN} again:7.15`)).error?.code).toBe('per-weight-or-in-all');
    expect((await play('press $7.15/lb')).text).toContain('At $7.15/lb: $11.97 a pound usable.');
  });

  test('a part that can be read in two ways is asked, and the answer stands among the others', async () => {
    const { say, play } = await inPounds();
    const asked = await say('/piece parts bought:12 lb parts:fat 1.8, ribs 1 lb @4');
    expect(asked.error?.code).toBe('decimals-or-ounces');
    const said = await play('press 1 lb 8 oz');
    expect(names(said)).toEqual(['fat', 'ribs']);
    expect((said.figures.parts as { grams: number }[])[0]?.grams).toBeCloseTo(1.5 * POUND, 9);
  });

  test.each([
    ['/piece parts bought:12 lb', 'parts-missing'],
    ['/piece parts cut:packer usable:6 lb', 'bought-missing'],
    [`${LOIN} portions:20`, 'portion-missing'],
    [`${LOIN} portion:0`, 'weight-zero'],
    [`${LOIN} portion:5 kg`, 'portion-too-large'],
    [`${LOIN} again:CAD 7.15/lb`, 'currency-mixed'],
    ['/piece parts bought:12 lb usable:6 lb again:7/lb', 'price-missing'],
    ['/piece parts bought:12 lb usable:6 lb price:£7/lb', 'price-sign'],
    ['/piece parts bought:12 lb usable:-6 lb', 'weight-negative'],
    ['/piece parts bought:12 lb usable:6 lb pieces:0', 'number-unreadable'],
    ['/piece parts parts:fat 1 lb', 'no-pieces'],
    ['/piece parts piece:9 parts:fat 1 lb', 'piece-unknown'],
  ])('%s: %s', async (line, code) => {
    const { say } = await inPounds();
    expect(await say(line)).toMatchObject({ ok: false, audience: 'member', figures: {}, error: { code } });
  });

  test.each(['@everyone', '**fat**', '<@42>', '[fat](https://example.org)', '`fat`', '||fat||'])(
    'a part called %s is refused, and quoted',
    async (name) => {
      const { say } = await inPounds();
      const said = await say(`/piece parts bought:12 lb parts:${name} 3 lb`);
      expect(said.error?.code).toBe('saved-unreadable');
      const unquoted = said.text.replace(/`[^`]*`/g, '');
      expect(unquoted).not.toMatch(/@|\*|<|\[|\|/);
    },
  );
});

describe('of a piece that is kept', () => {
  const WEIGHED = [
    '/weigh cut:packer bought:14 lb trim:3 lb price:5/lb saved:tallow 1 lb @3, grind 8 oz @6',
    '/weigh cooked:8 lb scraps:12 oz',
  ];

  test('its weights and what was saved of it are the parts', async () => {
    const { play } = await inPounds();
    await play(...WEIGHED);
    const said = await play('/piece parts portion:6 oz');
    expect(names(said)).toEqual(['tallow', 'grind']);
    expect(said.figures).toMatchObject({
      piece: 1,
      cut: 'beef/brisket-whole',
      credit: 6,
      portionOf: 'served',
    });
    expect(Number(said.figures.lossGrams)).toBeCloseTo(1.5 * POUND, 9);
    expect(said.figures.usableCostPerLb).toBeCloseTo(64 / 11, 9);
    expect(said.text).toContain('Piece 1, Whole packer brisket');
    // As its card has it.
    const card = await play('/weigh piece:1 note:same');
    for (const name of ['costPerLeftKg', 'costPerServedKg', 'costFactorServed', 'plateYield'])
      expect(said.figures[name]).toBe(card.figures[name]);
  });

  test('what is typed stands over it, for this answer alone', async () => {
    const { play } = await inPounds();
    await play(...WEIGHED);
    const said = await play('/piece parts piece:1 parts:fat 2 lb, lean 1 lb @5 price:4/lb');
    expect(said.figures).toMatchObject({ credit: 5, paid: 56, lossGrams: 0 });
    expect((await play('/piece parts piece:1')).figures).toMatchObject({ credit: 6, paid: 70 });
  });

  test("another member's can be asked about; one's newest is meant otherwise", async () => {
    const { play } = await inPounds();
    await play(...WEIGHED, '@bo /weigh cut:flat bought:7 lb trim:1 lb');
    expect((await play('@bo /piece parts portion:5 oz')).figures.piece).toBe(2);
    expect((await play('@bo /piece parts piece:1 portion:5 oz')).figures.piece).toBe(1);
  });

  test('parts that do not add up with its weights are pointed out', async () => {
    const { say, play } = await inPounds();
    await play(...WEIGHED);
    const said = await say('/piece parts piece:1 parts:fat 4 lb');
    expect(said.error?.code).toBe('parts-sum');
    expect(said.text).toContain(
      '4 lb in parts, 11 lb usable: 15 lb together. That is 1 lb more than the 14 lb',
    );
    expect((await say('/piece parts piece:1 bought:15 lb')).error?.code).toBe('already-weighed');
  });

  test('a gain in the heat that its member stands by is no refusal', async () => {
    const { play, say } = await inPounds();
    await play('/weigh cut:packer bought:14 lb trim:2 lb');
    expect((await say('/weigh cooked:12 lb 8 oz')).error?.code).toBe('gain');
    await play('press Nothing was put in');
    expect((await play('/piece parts piece:1')).figures.portionOf).toBeNull();
    expect((await say('/piece parts piece:1 cooked:12 lb 8 oz')).error?.code).toBe('part-above-whole');
  });

  test('bag juice is neither a part nor lost in cutting', async () => {
    const { play } = await inPounds();
    await play('/weigh cut:packer bought:15 lb bagged:14 lb 8 oz trim:2 lb 8 oz saved:tallow 2 lb');
    const said = await play('/piece parts piece:1');
    expect(Number(said.figures.juiceGrams)).toBeCloseTo(POUND / 2, 9);
    expect(Number(said.figures.lossGrams)).toBeCloseTo(POUND / 2, 9);
    expect(said.text).toMatch(/bag juice\s+8 oz/);
  });
});

describe('the form', () => {
  test('opens by itself, of the newest piece or of a new one', async () => {
    const { say, play } = await inPounds();
    expect(Object.keys(filled(await say('/piece parts')))).toEqual([
      'bought',
      'price',
      'parts',
      'usable',
      'more',
    ]);
    await play('/weigh cut:packer bought:14 lb trim:3 lb');
    expect(filled(await say('/piece parts'))).toMatchObject({ piece: '1', parts: '' });
  });

  test('takes one part a line', async () => {
    const { stage, say } = await inPounds();
    await say('/piece parts');
    const { form } = stage;
    if (form === null) throw new Error('no form');
    expect(form.inputs.find(({ name }) => name === 'parts')?.paragraph).toBe(true);
    const { writeActionId } = await import('../../shared/chat/action-id.ts');
    const answer = await ask(stage, {
      kind: 'submit',
      action: writeActionId(form.id),
      fields: {
        bought: '12 lb',
        price: '6.65/lb',
        parts: 'fat 3 lb\nkidneys 1 lb @6.10\n\nflanks: 1 lb 8 oz @4.60\n',
        usable: '6 lb',
        more: 'portion: 5 oz\nagain: 7.15/lb',
      },
    });
    if (answer.kind !== 'reply') throw new Error('no reply');
    expect(answer.reply.figures).toMatchObject({ usableValue: 66.8, portions: 19 });
  });

  test('a refusal is mended in it, with what was typed', async () => {
    const { say, play } = await inPounds();
    await say('/piece parts bought:12 lb price:6.65/lb parts:fat 7 lb usable:6 lb portion:5 oz');
    expect(filled(await say('press Fix it'))).toEqual({
      bought: '12 lb',
      price: '6.65/lb',
      parts: 'fat 7 lb',
      usable: '6 lb',
      more: 'portion: 5 oz',
    });
    expect((await play('submit parts:fat 6 lb')).figures).toMatchObject({ portions: 19, lossGrams: 0 });
  });
});
