/** More pictures than can be drawn: the texts go out at once, their pictures follow, and no club waits for another. */
import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Bot, button, isDone, LATE_MS, openBot, PNG, picture, says } from './bot.ts';
import { type Club, type Exchange, type Member, openStandIn, type StandIn } from './stand-in.ts';

let platform: StandIn;
let club: Club;
let ines: Member;
let bot: Bot;

beforeEach(async () => {
  platform = await openStandIn({ patienceMs: 20_000 });
  club = platform.addClub();
  ines = club.addMember();
});
afterEach(async () => {
  await bot.close();
  await platform.close();
});

const slowly = { draw: () => wait(LATE_MS, PNG) };

describe('a picture that is late', () => {
  test('follows its text in one edit, each message its own', async () => {
    const privately = { answer: 'Yours.', figures: {}, picture };
    bot = await openBot(platform, () => says({ answer: 'Kept.', picture, privately }), slowly);
    const said = await ines.types('/weigh', {});
    const apart = await said.followUp();
    expect([said.message.text, said.message.pictures, apart.pictures]).toEqual(['**Kept.**', [], []]);
    await isDone(bot.log, said);
    expect(said.steps).toEqual(['reply', 'follow-up', 'edit', 'edit']);
    expect([said.message.text, said.message.pictures.length]).toEqual(['**Kept.**', 1]);
    expect([apart.text, apart.isPrivate, apart.pictures.length]).toEqual(['**Yours.**', true, 1]);
  });

  test('follows a message that was pressed, where another one was on its way to it', async () => {
    const desk = ({ kind }: { kind: string }) =>
      says({ answer: kind, edits: kind === 'press', picture: { ...picture }, actions: [button('Confirm')] });
    bot = await openBot(platform, desk, slowly);
    const said = await ines.types('/weigh', {});
    const pressed = await ines.presses(said.message, 'Confirm');
    await isDone(bot.log, pressed);
    await isDone(bot.log, said);
    expect([said.steps, pressed.steps]).toEqual([['reply'], ['update', 'edit']]);
    expect([said.message.text, said.message.pictures.length, said.message.edits]).toEqual([
      '**press**',
      1,
      2,
    ]);
  });

  test('is left out where its card was changed meanwhile', async () => {
    bot = await openBot(platform, () => says({ answer: 'Kept.', picture }), slowly);
    const said = await ines.types('/weigh', {});
    const { channel, id } = said.message;
    await bot.edit({ channel, message: id }, { answer: 'Taken back.', figures: {} });
    await isDone(bot.log, said);
    expect([said.message.text, said.message.pictures]).toEqual(['**Taken back.**', []]);
  });

  test('of a change is left out where a newer change came first', async () => {
    let drawings = 0;
    bot = await openBot(platform, () => says({ answer: 'Kept.' }), {
      draw: () => wait(drawings++ === 0 ? 2 * LATE_MS : 0, PNG),
    });
    const { message } = await ines.types('/weigh', {});
    const change = (answer: string) =>
      bot.edit({ channel: message.channel, message: message.id }, { answer, picture, figures: {} });
    await Promise.all([change('Older.'), wait(20).then(() => change('Newer.'))]);
    expect([message.text, message.pictures.length, message.edits]).toEqual(['**Newer.**', 1, 1]);
  });
});

test('a club that asks for very many holds up itself alone; its texts are there at once', async () => {
  const eachMs = 60;
  bot = await openBot(platform, () => says({ answer: 'Kept.', picture }), {
    draw: () => wait(eachMs, PNG),
    deferAfterMs: 1000,
  });
  const crowd = Array.from({ length: 40 }, () => club.addMember());
  const began = performance.now();
  const texts = crowd.map(async (member): Promise<[Exchange, number]> => {
    const said = await member.types('/weigh', {});
    return [said, performance.now() - began];
  });
  await wait(100);
  const other = platform.addClub().addMember();
  const alone = await other.types('/weigh', {});
  // The picture is in the first answer: it waited for its turn among two clubs, not among forty pictures.
  expect([alone.steps, alone.message.pictures.length]).toEqual([['reply'], 1]);
  const said = await Promise.all(texts);
  expect(said.some(([{ message }]) => message.pictures.length === 0)).toBe(true);
  for (const [one] of said) await expect.poll(() => one.message.pictures.length).toBe(1);
  // One edit each at most.
  for (const [{ steps }] of said) expect([['reply'], ['reply', 'edit']]).toContainEqual(steps);
});
