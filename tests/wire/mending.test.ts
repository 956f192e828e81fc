import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isDone } from './bot.ts';
import { type ClubBot, DAY, openClubBot } from './club-bot.ts';
import type { Member } from './stand-in.ts';

let at: ClubBot;
let ines: Member;

beforeEach(async () => {
  at = await openClubBot();
  ines = at.club.addMember();
});
afterEach(() => at.close());

const PACKER = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz', price: '4.99/lb' };
const BUTT = { cut: 'Boston butt', bought: '8 lb 4 oz', trim: '6 oz' };
const piece = (seq: number) => at.bot.store.club(at.club.id).piece({ seq });

describe('the menus under a card', () => {
  test('fill in the grade in place: one message, with its picture', async () => {
    const { message } = await ines.types('/weigh', PACKER);
    const chosen = await ines.selects(message, 'The grade on its label?', 'Choice');
    expect([chosen.steps, message.edits, at.club.messages().length]).toEqual([['update'], 1, 1]);
    expect(message.text).toContain('Piece 1, Whole packer brisket, Choice, Jul 4, 2026');
    expect(message.labels).not.toContain('The grade on its label?');
    expect(message.pictures).toHaveLength(1);
    expect((await piece(1))?.grade).toBe('usda/choice');
  });

  test('fill in the bone and the shop of a cut that is sold both ways', async () => {
    await ines.types('/weigh', { ...PACKER, shop: 'Market hall' });
    const { message } = await ines.types('/weigh', BUTT);
    expect(message.labels.slice(0, 2)).toEqual(['Bone in, or boneless?', 'Bought where?']);
    await ines.selects(message, 'Bone in, or boneless?', 'bone in');
    await ines.selects(message, 'Bought where?', 'Market hall');
    expect(message.labels.filter((label) => label.endsWith('?'))).toEqual([]);
    expect([message.edits, message.pictures.length]).toEqual([2, 1]);
    expect(await piece(2)).toMatchObject({ bone: 'in', shop: 'Market hall', revision: 2 });
  });
});

describe('Fix it on a piece that is kept', () => {
  test('opens its form filled, and what is sent changes every card of it in place', async () => {
    const first = await ines.types('/weigh', { ...PACKER, note: 'see trim: "lean" end', style: 'quarter' });
    at.clock.now += DAY;
    const second = await ines.types('/weigh', { cooked: '7 lb 11 oz', scraps: '12 oz' });
    const { form } = await ines.presses(second.message, 'Fix it');
    expect(form.inputs.map(({ value }) => value)).toEqual([
      'packer',
      '14.83 lb',
      '2 lb 9.4 oz',
      '4.99/lb',
      "note: \"see trim: ''lean'' end\"\nstyle: quarter\ncooked: 7 lb 11 oz\nscraps: 12 oz",
    ]);
    const sent = await ines.submits(form, { Cut: 'packer', 'Came off': '3 lb' });
    expect([sent.message.isPrivate, at.club.messages().length]).toEqual([true, 2]);
    await expect.poll(() => [first.message.edits, second.message.edits]).toEqual([1, 1]);
    for (const { message } of [first, second]) {
      expect(message.pictures.map(({ alt }) => alt)).toEqual([
        expect.stringContaining('Came off: 3 lb, 20.2 %'),
      ]);
    }
    expect(await piece(1)).toMatchObject({ note: "see trim: ''lean'' end", day: '2026-07-04', revision: 2 });
  });

  test('takes back what the form does not hold any more', async () => {
    const { message } = await ines.types('/weigh', PACKER);
    const { form } = await ines.presses(message, 'Fix it');
    await ines.submits(form, { 'Came off': '', Price: '' });
    await expect.poll(() => message.text).toContain('kept. Weigh what comes off next.');
    expect(await piece(1)).toMatchObject({ trim: null, price: null, typed: { bought: '14.83 lb' } });
  });

  test('asks where it must, and the press changes the posted card too', async () => {
    const { message } = await ines.types('/weigh', PACKER);
    const { form } = await ines.presses(message, 'Fix it');
    const asked = await ines.submits(form, { 'Weight on the label': '14.10', Price: '' });
    expect([asked.message.isPrivate, message.edits]).toEqual([true, 0]);
    const taken = await ines.presses(asked.message, '14 lb 10 oz');
    expect([taken.steps, taken.message.isPrivate]).toEqual([['update'], true]);
    await expect.poll(() => message.text).toContain('2 lb 9.4 oz of 14 lb 10 oz.');
    expect([await piece(1), await piece(2)]).toMatchObject([{ price: null, revision: 1 }, null]);
    expect(at.club.messages()).toHaveLength(1);
  });

  test('comes back filled after an error, and still stands for the whole piece', async () => {
    const { message } = await ines.types('/weigh', PACKER);
    const { form } = await ines.presses(message, 'Fix it');
    const refused = await ines.submits(form, { 'Came off': '20 lb', Price: '' });
    expect(refused.message.text).toContain("That can't be");
    const again = await ines.presses(refused.message, 'Fix it');
    expect(again.form.inputs.map(({ value }) => value)).toEqual([
      'packer',
      '14.83 lb',
      '20 lb',
      '',
      'piece: 1',
    ]);
    const sent = await ines.submits(again.form, { 'Came off': '2 lb' });
    expect([sent.message.isPrivate, at.club.messages().length]).toEqual([true, 1]);
    await expect.poll(() => message.text).toContain('13.5 % came off');
    expect((await piece(1))?.price).toBeNull();
  });

  test('keeps what the pan weighed under the weight that was in it', async () => {
    await ines.types('/mine pans', { name: 'blue pan', weight: '1 lb' });
    await ines.types('/weigh', { cut: 'packer', bought: '14.83 lb', trim: '3 lb', pan: 'blue pan' });
    const { message } = await ines.types('/weigh', { cooked: '9 lb', pan: 'blue pan' });
    const { form } = await ines.presses(message, 'Fix it');
    expect(form.inputs.map(({ value }) => value).slice(2)).toEqual([
      '3 lb - blue pan',
      '',
      'cooked: 9 lb - blue pan',
    ]);
    const before = await piece(1);
    await ines.submits(form, {});
    const { trim, cooked } = (await piece(1)) ?? {};
    expect({ trim, cooked }).toEqual({ trim: before?.trim, cooked: before?.cooked });
  });

  test('delivered twice, is one change', async () => {
    const { message } = await ines.types('/weigh', PACKER);
    const { form } = await ines.presses(message, 'Fix it');
    const sent = await ines.submits(form, { 'Came off': '3 lb' }, { twice: true });
    await isDone(at.log, sent);
    sent.again();
    await expect.poll(() => sent.steps).toEqual(['reply', 'refused 40060']);
    expect((await piece(1))?.revision).toBe(1);
  });
});

describe('another piece', () => {
  test('moves what was told to the piece that was meant, and mends the card of the other', async () => {
    const packer = await ines.types('/weigh', PACKER);
    await ines.types('/weigh', BUTT);
    const wrong = await ines.types('/weigh', { cooked: '7 lb 11 oz', scraps: '12 oz' });
    expect(wrong.message.text).toContain('Added to piece 2, your pork butt');
    const choice = await ines.presses(wrong.message, 'Another piece');
    expect([choice.message.isPrivate, choice.message.labels]).toEqual([true, ['Choose the piece']]);
    const moved = await ines.selects(
      choice.message,
      'Choose the piece',
      '1: Whole packer brisket, 14 lb 13.3 oz, Jul 4, 2026',
      { twice: true },
    );
    expect(moved.message.text).toContain('46.8 % is on the plate');
    expect(moved.message.isPrivate).toBe(false);
    expect([await piece(1), await piece(2)]).toMatchObject([
      { id: packer.id, typed: { cooked: '7 lb 11 oz', scraps: '12 oz' } },
      { cooked: null, scraps: null, typed: { trim: '6 oz' } },
    ]);
    await expect.poll(() => wrong.message.edits).toBeGreaterThan(0);
    expect(wrong.message.text).toContain('4.5 % came off: 6 oz of 8 lb 4 oz.');
    expect(wrong.message.text).not.toContain('plate');
  });

  test('is refused kindly when the time to say so is over', async () => {
    await ines.types('/weigh', PACKER);
    await ines.types('/weigh', BUTT);
    const { message } = await ines.types('/weigh', { cooked: '5 lb' });
    const choice = await ines.presses(message, 'Another piece');
    at.clock.now += DAY;
    const [, label = ''] = /(1: .*)/.exec('1: Whole packer brisket, 14 lb 13.3 oz, Jul 4, 2026') ?? [];
    const late = await ines.selects(choice.message, 'Choose the piece', label);
    expect([late.message.isPrivate, (await piece(1))?.cooked]).toEqual([true, null]);
    expect(late.message.text).toContain('over 15 minutes old');
  });
});
