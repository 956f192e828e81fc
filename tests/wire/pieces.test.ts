import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ClubBot, DAY, openClubBot } from './club-bot.ts';
import type { Member } from './stand-in.ts';

let at: ClubBot;
let ines: Member;
let bo: Member;

beforeEach(async () => {
  at = await openClubBot({ remindEveryMs: 50 });
  ines = at.club.addMember();
  bo = at.club.addMember();
});
afterEach(() => at.close());

const PACKER = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz', price: '4.99/lb', grade: 'choice' };

describe('one piece', () => {
  test('is shown with its place in the club, and a picture of it', async () => {
    await ines.types('/weigh', PACKER);
    await bo.types('/weigh', { ...PACKER, trim: '3 lb' });
    const { message } = await ines.types('/piece show', { piece: '1' });
    expect(message.text).toContain(
      'It lost less to the knife than 1 of the 1 other whole packer brisket pieces here.',
    );
    expect(message.pictures.map(({ alt }) => alt)).toEqual([
      expect.stringContaining('This piece: 17.4 % came off'),
    ]);
    expect(message.isPrivate).toBe(false);
  });

  test('is found by completion among one’s own', async () => {
    await ines.types('/weigh', PACKER);
    await bo.types('/weigh', PACKER);
    expect((await ines.completes('/piece show', 'piece', '')).map(({ value }) => value)).toEqual(['1']);
  });

  test('is mended where its card stands, by its owner alone', async () => {
    const { message: card } = await ines.types('/weigh', PACKER);
    const { form } = await ines.types('/piece fix', { piece: '1' });
    await ines.submits(form, { 'Came off': '3 lb' });
    await expect.poll(() => card.text).toContain('20.2 % came off');
    const refused = await bo.types('/piece fix', { piece: '1' });
    expect([refused.message.isPrivate, refused.message.text]).toEqual([
      true,
      expect.stringContaining("somebody else's"),
    ]);
  });

  test('is taken back after one more press, and its card says so', async () => {
    const { message: card } = await ines.types('/weigh', PACKER);
    const asked = await ines.presses(card, 'Take back');
    expect([asked.message.isPrivate, card.edits]).toEqual([true, 0]);
    await ines.presses(asked.message, 'Take piece 1 back');
    await expect.poll(() => card.text).toContain('was taken back by its member');
    expect([card.labels, card.pictures]).toEqual([[], []]);
    expect(await at.bot.store.club(at.club.id).piece({ seq: 1 })).toBeNull();
    const { message } = await ines.types('/average', { cut: 'packer' });
    expect(message.text).toContain('Nothing to average yet');
  });
});

describe('the buttons of a card', () => {
  test('lead from the knife to the plate', async () => {
    const { message: first } = await ines.types('/weigh', { cut: 'packer', bought: '14.83 lb' });
    const knife = await ines.presses(first, 'Came off');
    const trimmed = await ines.submits(knife.form, { 'Came off': '2:9.4' });
    const heat = await ines.presses(trimmed.message, 'Off the heat');
    const cooked = await ines.submits(heat.form, { 'Off the heat': '7 lb 11 oz' });
    const board = await ines.presses(cooked.message, 'On the plate');
    const served = await ines.submits(board.form, { 'Thrown away after cooking': '12 oz' });
    expect(served.message.text).toContain('46.8 % is on the plate');
    expect(served.message.labels).not.toContain('On the plate');
  });

  test('saved trimmings show on the card that is there', async () => {
    const { message: card } = await ines.types('/weigh', PACKER);
    const { form } = await ines.presses(card, 'Saved trimmings');
    const sent = await ines.submits(form, { 'What you saved of the trimmings': 'tallow 1 lb @3/lb' });
    expect([sent.message.isPrivate, at.club.messages().length]).toEqual([true, 1]);
    await expect.poll(() => card.text).toContain('1 lb of it saved, worth $3.00.');
  });

  test('another like this starts with what stays the same', async () => {
    const { message: card } = await ines.types('/weigh', PACKER);
    const { form } = await ines.presses(card, 'Another like this');
    expect(form.inputs.map(({ value }) => value)).toEqual(['packer', '', '', '4.99/lb', 'grade: choice']);
    const { message } = await ines.submits(form, { 'Weight on the label': '13 lb', 'Came off': '3 lb' });
    expect(message.text).toContain('Piece 2, Whole packer brisket, Choice');
  });

  test('are for the owner of the piece', async () => {
    const { message: card } = await ines.types('/weigh', PACKER);
    for (const label of card.labels) {
      const { message } = await bo.presses(card, label);
      expect([message.isPrivate, message.text]).toEqual([
        true,
        expect.stringContaining('for somebody else to press'),
      ]);
    }
    expect(card.edits).toBe(0);
  });
});

describe('a reminder', () => {
  const remind = async (who: Member) => {
    const { message: card } = await who.types('/weigh', PACKER);
    const { message } = await who.presses(card, 'Remind me tomorrow');
    expect(message.text).toContain('I will remind you of piece 1 on Jul 5, 2026.');
  };
  const settle = () => new Promise((resolve) => setTimeout(resolve, 300));

  test('comes the next morning, once, to its member alone', async () => {
    await remind(ines);
    // Nine in Chicago is two in the afternoon in Greenwich.
    at.clock.now = Date.parse('2026-07-05T13:59:00Z');
    await settle();
    expect(ines.direct()).toEqual([]);
    at.clock.now = Date.parse('2026-07-05T14:00:00Z');
    await expect.poll(() => ines.direct().length).toBe(1);
    await settle();
    expect(ines.direct().map(({ text }) => text)).toEqual([expect.stringContaining('is it off the heat?')]);
    expect([bo.direct(), at.club.messages().length]).toEqual([[], 1]);
  });

  test('stays away once the piece is off the heat', async () => {
    await remind(ines);
    await ines.types('/weigh', { cooked: '7 lb 11 oz' });
    at.clock.now += 2 * DAY;
    await settle();
    expect(ines.direct()).toEqual([]);
  });

  test('to a member who takes no such messages is no fault', async () => {
    await remind(ines);
    ines.refusesDirect();
    at.clock.now += 2 * DAY;
    await expect.poll(() => at.log.lines.some(({ text }) => text === 'reminded')).toBe(true);
    expect(ines.direct()).toEqual([]);
  });
});
