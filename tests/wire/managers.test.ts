/** What is for managers alone: hidden from others on the platform, and refused to whoever gets to it all the same. */
import { PermissionFlagsBits } from 'discord.js';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ClubBot, openClubBot } from './club-bot.ts';
import type { Member, Shown } from './stand-in.ts';

let at: ClubBot;
let ines: Member;
let bo: Member;

beforeEach(async () => {
  at = await openClubBot();
  ines = at.club.addMember({ manager: true });
  bo = at.club.addMember();
});
afterEach(() => at.close());

const ONLY_MANAGERS = 'Only those who manage this server can do that.';
const expectRefused = ({ isPrivate, text }: Shown) =>
  expect([isPrivate, text]).toEqual([true, expect.stringContaining(ONLY_MANAGERS)]);

/** Twelve packers of usual trim, and one of bo's that lost next to nothing: it waits. */
async function weighAll(): Promise<Shown> {
  for (let piece = 0; piece < 12; piece += 1)
    await ines.types('/weigh', {
      cut: 'packer',
      bought: `${14 + piece / 5} lb`,
      trim: `${3 + (piece % 4) / 10} lb`,
    });
  return (await bo.types('/weigh', { cut: 'packer', bought: '15 lb', trim: '1.5 oz' })).message;
}
const lookedAt = async () => {
  const { message } = await ines.types('/club waiting');
  await ines.selects(message, 'Look at one', '13: Whole packer brisket, 15 lb, Jul 4, 2026');
  return message;
};

describe('the commands of managers', () => {
  test('are registered for who manages the server, and no other is', () => {
    const hidden = at.club
      .commands()
      .filter(({ default_member_permissions }) => default_member_permissions !== null)
      .map(({ name, default_member_permissions }) => [name, default_member_permissions]);
    expect(hidden).toEqual([['club', String(PermissionFlagsBits.ManageGuild)]]);
  });

  test('are refused to others, whom a club may show them', async () => {
    for (const [line, options] of [
      ['/club show', {}],
      ['/club set', { margin: '3' }],
      ['/club waiting', {}],
      ['/club aside', { piece: '1', why: 'mine' }],
    ] as const)
      expectRefused((await bo.types(line, options)).message);
    expect(await bo.completes('/club set', 'zone', 'berl')).toEqual([]);
    expect((await ines.completes('/club set', 'zone', 'berl')).map(({ value }) => value)).toEqual([
      'Europe/Berlin',
    ]);
  });

  test('answer their manager alone', async () => {
    const { message } = await ines.types('/club set', { margin: '3', units: 'Kilos and grams' });
    expect([message.isPrivate, at.club.messages()]).toEqual([true, []]);
    expect(await at.bot.store.club(at.club.id).settings()).toMatchObject({ margin: 0.03, units: 'kg' });
  });

  test('are refused once the role is lost: buttons, menus, forms and what is sent of them', async () => {
    await weighAll();
    const { message } = await ines.types('/club waiting');
    const looked = await lookedAt();
    const { form } = await ines.presses(looked, 'Set aside');
    const held = await ines.types('/club set', { margin: 'lots' });
    const fix = await ines.presses(held.message, 'Fix it');
    ines.losesRole();
    for (const refused of [
      await ines.presses(looked, 'It is right'),
      await ines.presses(looked, 'Set aside'),
      await ines.selects(message, 'Look at one', '13: Whole packer brisket, 15 lb, Jul 4, 2026'),
      await ines.submits(form, { why: 'late' }),
      await ines.presses(held.message, 'Fix it'),
      await ines.submits(fix.form, { margin: '3' }),
    ])
      expectRefused(refused.message);
    const piece = await at.bot.store.club(at.club.id).piece({ seq: 13 });
    expect([piece?.confirmedAt, piece?.setAsideAt, piece?.revision]).toEqual([null, null, 0]);
  });
});

describe('a piece that waits', () => {
  test('is confirmed where it is shown, its card changes, and its member is told alone', async () => {
    const card = await weighAll();
    expect(card.text).toContain('it waits for a second look');
    const looked = await lookedAt();
    await ines.presses(looked, 'It is right');
    expect(looked.text).toContain('Piece 13 counts from now on.');
    await expect.poll(() => bo.direct().length).toBe(1);
    expect(bo.direct()[0]?.text).toContain(`<@${ines.id}> stands by it, and it counts from now on.`);
    await expect.poll(() => card.text).not.toContain('it waits for a second look');
    expect(ines.direct()).toEqual([]);
  });

  test('is set aside with a reason that its member is told; who takes no such messages is no fault', async () => {
    const card = await weighAll();
    const { form } = await ines.presses(await lookedAt(), 'Set aside');
    const { message } = await ines.submits(form, { 'Why? Its member is told': 'weighed in its tray' });
    expect([message.isPrivate, message.text]).toEqual([
      true,
      expect.stringContaining('Piece 13 is set aside, out of every figure.'),
    ]);
    await expect.poll(() => bo.direct().length).toBe(1);
    expect(bo.direct()[0]?.text).toContain('because: `weighed in its tray`');
    await expect.poll(() => card.text).toContain('Set aside by a manager: `weighed in its tray`.');
    bo.refusesDirect();
    const back = await ines.presses(message, 'Take back in');
    expect(back.message.text).toContain('Piece 13 is taken back in.');
    await expect
      .poll(() => at.log.lines.filter(({ text }) => text === 'told').map(({ facts }) => facts.reached))
      .toEqual([true, false]);
  });
});
