/** Buying over the wire: labels compared for oneself, shown to the club, bought; and a yield test from a form. */
import { afterEach, beforeEach, expect, test } from 'vitest';
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

const LABELS = { cut: 'packer', one: '14.2 lb @ 5.49 choice', two: '13.1 lb @ 5.99 prime' };

test('labels are compared for oneself, and shown to the club by a press of one’s own', async () => {
  const { message } = await ines.types('/shop', LABELS);
  expect(message.isPrivate).toBe(true);
  expect(message.pictures).toHaveLength(1);
  const shown = await ines.presses(message, 'Show the club');
  expect([shown.message.isPrivate, message.isPrivate]).toEqual([false, true]);
  expect(shown.message.text).toContain('Label 1 is cheaper on the plate');
  expect(shown.message.labels).toEqual([]);
});

test('what was bought opens the weigh-in with its weight and price, and is kept once', async () => {
  const { message } = await ines.types('/shop', LABELS);
  const { form } = await ines.presses(message, 'Bought it');
  expect(form.inputs.map(({ value }) => value)).toEqual(expect.arrayContaining(['14.2 lb', '$5.49/lb']));
  const kept = await ines.submits(form, { 'Came off': '2:9.4' });
  expect(kept.message.isPrivate).toBe(false);
  expect(kept.message.text).toContain('18.2 % came off');
  expect(await at.bot.store.club(at.club.id).piece({ seq: 1 })).toMatchObject({
    member: ines.id,
    grade: 'usda/choice',
  });
});

test('a yield test starts from a form, and what does not add up is its author’s alone', async () => {
  await bo.types('/weigh', { cut: 'packer', bought: '10 lb', trim: '3 lb', price: '5/lb' });
  const { form } = await bo.types('/piece parts');
  const { message } = await bo.submits(form, { parts: 'fat 2 lb\nbones 1 lb @1', portion: '5 oz' });
  expect(message.isPrivate).toBe(false);
  expect(message.text).toContain('$7.00 a pound usable');
  const again = await bo.types('/piece parts');
  const refused = await bo.submits(again.form, { parts: 'fat 12 lb' });
  expect(refused.message.isPrivate).toBe(true);
});
