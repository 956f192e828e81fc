/** The platform is gone for twenty seconds, all of it: the bot stays, says so to its host, and answers again by itself. */
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { openClubBot } from './club-bot.ts';

const OUTAGE_MS = 20_000;
const WEIGHED = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' };

test('an outage of twenty seconds', async () => {
  const at = await openClubBot({ deferAfterMs: 1000, platform: { patienceMs: 60_000 } });
  const { platform, club, bot, log } = at;
  await club.addMember().types('/weigh', WEIGHED);
  platform.fails(() => ({ status: 503, text: '<html>Service Unavailable</html>' }));
  // What was typed a moment before: it is kept, and can't be answered.
  const lost = club.addMember().types('/weigh', WEIGHED);
  lost.catch(() => {});
  await expect.poll(() => log.lines.some(({ text }) => text === 'could not say so either')).toBe(true);
  platform.refuseConnections(true);
  platform.cutConnection();
  await expect.poll(() => bot.connected()).toBe(false);
  await wait(OUTAGE_MS);
  platform.fails(null);
  platform.refuseConnections(false);
  await expect.poll(() => bot.connected(), { timeout: 60_000 }).toBe(true);
  for (let times = 0; times < 3; times += 1)
    expect((await club.addMember().types('/weigh', WEIGHED)).message.text).toContain('17.4 % came off');
  expect(log.lines.find(({ text }) => text === 'could not answer')?.facts.err).toMatchObject({
    todo: expect.stringContaining('the platform fails'),
  });
  expect((await bot.store.club(club.id).heldInAll()).pieces).toBe(5);
  // The two lines about the answer that was lost.
  log.lines.length = 0;
  await at.close();
}, 180_000);
