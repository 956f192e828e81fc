/** `/weigh`, where two careful people could read a line differently: nothing is kept before the press. */
import { describe, expect, test } from 'vitest';
import { type Rehearsing, rehearse } from '../rehearsing.ts';

const kept = async ({ stage }: Rehearsing): Promise<number> => {
  const before = stage.actions;
  const answer = await stage.desk.answer({
    ...stage.scene,
    id: stage.nextId(),
    kind: 'command',
    command: 'average',
    options: { cut: 'packer' },
  }).answer;
  stage.actions = before;
  const pieces = answer.kind === 'reply' ? answer.reply.figures.pieces : null;
  return typeof pieces === 'number' ? pieces : 0;
};

describe('asked before anything is kept', () => {
  test.each([
    ['bought:14.10 lb trim:1.10', 'decimals-or-ounces', '1 lb 10 oz', 'trim'],
    ['bought:148 lb trim:2 lb', 'size', 'It is 148 lb', null],
    ['bought:14 lb trim:9 lb', 'came-off-or-left', '9 lb came off', 'trim'],
    ['bought:14 lb trim:2 lb left:11 lb', 'gap', '2 lb came off', null],
    ['bought:14,123 g trim:1 kg', 'thousands-or-decimals', '14123', 'bought'],
  ])('%s: %s', async (told, code, button, option) => {
    const club = await rehearse();
    const asked = await club.say(`/weigh cut:packer ${told}`);
    expect(asked).toMatchObject({ ok: false, audience: 'member', error: { code }, figures: {} });
    if (option !== null) expect(asked.ask?.option).toBe(option);
    expect(await kept(club)).toBe(0);
    await club.play(`press ${button}`);
    expect(await kept(club)).toBe(1);
  });

  test('pressed twice it keeps one, and says so', async () => {
    const club = await rehearse();
    await club.say('/weigh cut:packer bought:148 lb trim:2 lb');
    const { actions } = club.stage;
    const first = await club.play('press It is 148 lb');
    club.stage.actions = actions;
    const second = await club.play('press It is 148 lb');
    expect(second.figures.id).toBe(first.figures.id);
    expect(second.text).toContain('kept already');
    expect(await kept(club)).toBe(1);
  });

  test('a unit told once is not asked again', async () => {
    const club = await rehearse();
    const asked = await club.say('/weigh cut:packer bought:14.10 trim:1 lb 8 oz');
    expect(asked.error?.code).toBe('decimals-or-ounces');
    const never = await rehearse();
    expect((await never.say('/weigh cut:packer bought:14.10')).error?.code).toBe('pounds-or-kilos');
    await never.play('press 14 lb 10 oz');
    expect((await never.play('/weigh cut:packer bought:14.83')).figures.boughtGrams).toBeCloseTo(6726.775, 3);
  });

  test('a habit is kept apart for labels and for the scale', async () => {
    const club = await rehearse();
    await club.play('/mine units units:lb');
    await club.say('/weigh cut:packer bought:14.8');
    const bought = await club.play('press Always ounces');
    expect(bought.figures.boughtGrams).toBeCloseTo(14.5 * 453.59237, 6);
    expect((await club.say('/weigh trim:2.9')).error?.code).toBe('decimals-or-ounces');
  });

  test('over 15 minutes later nothing is kept any more', async () => {
    const club = await rehearse();
    await club.say('/weigh cut:packer bought:148 lb');
    await club.play('at 2026-07-04T18:15:01Z');
    expect(await club.say('press It is 148 lb')).toMatchObject({
      ok: false,
      error: { code: 'question-expired' },
    });
    expect(await kept(club)).toBe(0);
  });

  test("somebody else's press is refused", async () => {
    const club = await rehearse();
    await club.say('/weigh cut:packer bought:148 lb');
    expect(await club.say('@bo press It is 148 lb')).toMatchObject({
      ok: false,
      error: { code: 'not-yours' },
    });
    expect(await club.say('@bo! press Fix it')).toMatchObject({ ok: false });
    expect(await kept(club)).toBe(0);
  });

  test('a confirmed doubt is not raised again by the next weight', async () => {
    const club = await rehearse();
    await club.say('/weigh cut:packer bought:4 lb trim:2 lb 8 oz');
    await club.say('press It is 4 lb');
    await club.play('press 2 lb 8 oz came off');
    const said = await club.play('/weigh cooked:1 lb');
    expect(said.figures.cookingYield).toBeCloseTo(16 / 24, 12);
    expect((await club.say('/weigh piece:1 bought:3 lb 8 oz')).error?.code).toBe('size');
  });

  test('parts that are more than the piece are asked in words that fit', async () => {
    const club = await rehearse();
    const asked = await club.say('/weigh cut:packer bought:14 lb trim:3 lb left:12 lb');
    expect(asked).toMatchObject({ error: { code: 'gap' } });
    expect(asked.text).not.toContain('-1 lb');
    expect(asked.text).toContain('1 lb more than 14 lb');
  });
});

describe('an extra does not hold up the weights', () => {
  test('a bare price is asked alone, and added when answered', async () => {
    const club = await rehearse();
    const said = await club.play('/weigh cut:packer bought:14.83 lb trim:2 lb price:4.99');
    expect(said.figures).toMatchObject({ piece: 1, paid: null });
    expect(said.privately?.text).toContain('Piece 1 is kept, without `price:` so far.');
    expect(said.ask).toEqual({ option: 'price', readings: ['$4.99/lb', '$4.99 in all'] });
    expect(await kept(club)).toBe(1);
    const added = await club.play('press $4.99/lb');
    expect(added).toMatchObject({ audience: 'member', figures: { piece: 1 } });
    expect(added.figures.paid).toBeCloseTo(14.83 * 4.99, 9);
    expect(await kept(club)).toBe(1);
  });

  test('a bare price alone is for the newest piece', async () => {
    const club = await rehearse();
    await club.play('/weigh cut:packer bought:14 lb');
    const said = await club.play('/weigh price:4.99');
    expect(said.ask).toEqual({ option: 'price', readings: ['$4.99/lb', '$4.99 in all'] });
    expect((await club.play('press $4.99/lb')).figures).toMatchObject({ piece: 1, paid: 69.86 });
  });

  test('an unknown grade too', async () => {
    const club = await rehearse();
    const said = await club.play('/weigh cut:packer bought:14.83 lb grade:lovely');
    expect(said.privately?.text).toContain('`grade:lovely` is no grade I know');
    expect(said.figures).toMatchObject({ piece: 1, grade: null });
  });

  test('two of them are asked one after the other', async () => {
    const club = await rehearse();
    await club.play(
      '/weigh cut:packer bought:14.83 lb trim:3 lb price:4.99 saved:tallow 1.8 lb @2, grind 0.15',
    );
    const next = await club.play('press $4.99/lb');
    expect(next.ask?.option).toBe('saved');
    const said = await club.play('press 15 oz');
    expect(said.figures).toMatchObject({ credit: 3.6 });
    expect(said.text).toContain('2 lb 11.8 oz of it saved');
  });
});
