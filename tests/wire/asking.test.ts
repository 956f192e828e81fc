import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ClubBot, openClubBot } from './club-bot.ts';
import type { Member } from './stand-in.ts';

let at: ClubBot;
let ines: Member;
let bo: Member;

beforeEach(async () => {
  at = await openClubBot();
  ines = at.club.addMember();
  bo = at.club.addMember();
});
afterEach(() => at.close());

const MINUTE = 60_000;
const piece = (seq: number) => at.bot.store.club(at.club.id).piece({ seq });
const firstLine = (text: string) => text.split('\n')[0];

describe('a weight that two careful people would read differently', () => {
  test.each([
    [
      '14.10',
      ['14.10 lb', '14 lb 10 oz', 'Always decimals for me', 'Always ounces for me', 'Fix it'],
      '14 lb 10 oz',
      '14 lb 10 oz (14.63 lb, 6.63 kg)',
    ],
    [
      '148',
      ['14 lb 12.8 oz', '11 pieces', 'It is 148 lb', 'Fix it'],
      '14 lb 12.8 oz',
      '14 lb 12.8 oz (14.80 lb, 6.71 kg)',
    ],
  ])('is asked about privately, and kept once it is pressed: %s', async (bought, labels, label, kept) => {
    const asked = await ines.types('/weigh', { cut: 'packer', bought, trim: '3 lb 1 oz' });
    expect([asked.steps, asked.message.isPrivate, asked.message.labels]).toEqual([['reply'], true, labels]);
    expect([await piece(1), at.club.messages()]).toEqual([null, []]);

    const taken = await ines.presses(asked.message, label, { twice: true });
    expect(taken.steps[0]).toBe('reply');
    expect([taken.message.isPrivate, taken.message.text]).toEqual([false, expect.stringContaining(kept)]);
    const again = await ines.presses(asked.message, label);
    expect(again.message.text).toContain('Piece 1 is kept already: nothing was added twice.');
    expect([(await piece(1))?.id, await piece(2)]).toEqual([asked.id, null]);
  });

  test('is not asked about again once a member said how they always mean it', async () => {
    const asked = await ines.types('/weigh', { cut: 'packer', bought: '14.10 lb', trim: '2.9' });
    await ines.presses(asked.message, 'Always ounces for me');
    expect(await piece(1)).toMatchObject({ trim: 41 * 28_349_523_125 });
    const next = await ines.types('/weigh', { cut: 'packer', bought: '14.9 lb', trim: '2.9' });
    expect([next.message.isPrivate, (await piece(2))?.trim]).toEqual([false, 41 * 28_349_523_125]);
  });

  test('is over after a quarter of an hour, and says so', async () => {
    const asked = await ines.types('/weigh', { cut: 'packer', bought: '148 lb' });
    at.clock.now += 16 * MINUTE;
    const late = await ines.presses(asked.message, '14 lb 12.8 oz');
    expect(late.message.text).toContain('over 15 minutes old');
    expect([late.message.isPrivate, await piece(1)]).toEqual([true, null]);
  });

  test('asked quietly, it is answered in the place of the question', async () => {
    const asked = await ines.types('/weigh', { cut: 'packer', bought: '148 lb', quiet: true });
    const taken = await ines.presses(asked.message, '14 lb 12.8 oz');
    expect([taken.steps, asked.message.edits, at.club.messages()]).toEqual([['update'], 1, []]);
    expect(firstLine(asked.message.text)).toContain('Whole packer brisket, 14 lb 12.8 oz');
  });
});

describe('an extra that is not clear', () => {
  const PACKER = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' };

  test('keeps the piece and is asked about alone; its press mends the card where it was posted', async () => {
    const said = await ines.types('/weigh', { ...PACKER, price: '4.99' });
    expect([said.message.isPrivate, said.message.text.includes('$')]).toEqual([false, false]);
    const asked = await said.followUp();
    expect([asked.isPrivate, asked.labels]).toEqual([true, ['$4.99/lb', '$4.99 in all', 'Fix it']]);
    expect(asked.text).toContain('Piece 1 is kept, without `price:` so far.');
    expect((await piece(1))?.price).toBeNull();

    const taken = await ines.presses(asked, '$4.99/lb');
    expect(taken.steps).toEqual(['update']);
    expect([taken.message.id, taken.message.isPrivate]).toEqual([asked.id, true]);
    expect(taken.message.text).toContain('$6.04 a pound to cook');
    await expect.poll(() => said.message.edits).toBe(1);
    expect(said.message.text).toContain('$6.04 a pound to cook, 1.2 times the shelf price.');
    expect([said.message.pictures.length, at.club.messages().length]).toEqual([1, 1]);
    expect((await piece(1))?.revision).toBe(1);
  });

  test('can be written anew in its form, which changes the posted card as well', async () => {
    const said = await ines.types('/weigh', { ...PACKER, grade: 'gold' });
    const asked = await said.followUp();
    const { form } = await ines.presses(asked, 'Fix it');
    expect(form.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['piece', '1'],
      ['grade', 'gold'],
      ['more', ''],
    ]);
    const sent = await ines.submits(form, { grade: 'choice' });
    expect([sent.message.isPrivate, at.club.messages().length]).toEqual([true, 1]);
    await expect.poll(() => said.message.text).toContain('Choice');
  });

  test('of several, each is asked about in its turn', async () => {
    at.clock.now = Date.parse('2026-08-09T15:00:00Z');
    const said = await ines.types('/weigh', { ...PACKER, price: '4.99', date: '7/4' });
    const asked = await said.followUp();
    expect(asked.text).toContain('without `price:` and `date:` so far');
    const priced = await ines.presses(asked, '$4.99 in all');
    const next = await priced.followUp();
    expect([next.isPrivate, next.text]).toEqual([true, expect.stringContaining('which day do you mean?')]);
    await ines.presses(next, 'Jul 4, 2026');
    await expect.poll(() => said.message.text).toContain('Jul 4, 2026');
    expect(await piece(1)).toMatchObject({ day: '2026-07-04', price: { basis: 'all' } });
  });
});

describe('somebody else', () => {
  test('is refused privately, and changes nothing', async () => {
    const { message } = await ines.types('/weigh', { cut: 'packer', bought: '14.83 lb' });
    for (const refused of [
      await bo.presses(message, 'Fix it'),
      await bo.selects(message, 'The grade on its label?', 'Prime'),
    ]) {
      expect([refused.steps, refused.message.isPrivate]).toEqual([['reply'], true]);
      expect(refused.message.text).toContain('That button is for somebody else to press.');
    }
    expect([message.edits, (await piece(1))?.grade]).toEqual([0, null]);
  });
});
