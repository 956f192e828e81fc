/** A member who does very much at once is asked for a moment, privately; nothing that was taken is lost by it. */
import { expect, test } from 'vitest';
import { openClubBot } from './club-bot.ts';

const WEIGHED = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' };

test('twenty in ten seconds, and no more; others, forms and what was taken go on', async () => {
  const at = await openClubBot({ coolDown: { most: 20, withinMs: 60_000 } });
  const [ines, bo] = [at.club.addMember(), at.club.addMember()];
  const opened = await ines.types('/weigh', {});
  const said = await Promise.all(
    Array.from({ length: 19 }, () => ines.types('/weigh', { ...WEIGHED, quiet: true })),
  );
  for (const { message } of said) expect(message.text).toContain('17.4 % came off');
  const tooMuch = await ines.types('/weigh', WEIGHED);
  expect([tooMuch.message.isPrivate, tooMuch.message.text]).toEqual([
    true,
    expect.stringContaining('One moment, please'),
  ]);
  const pressed = ines.types('/average', {});
  expect((await pressed).message.text).toContain('One moment');
  expect((await bo.types('/weigh', WEIGHED)).message.text).toContain('17.4 % came off');
  const sent = await ines.submits(opened.form, { cut: 'packer', bought: '14.83 lb' });
  expect(sent.message.text).toContain('14 lb 13.3 oz');
  // What was taken is answered anew, which the platform refuses; what was not stays so.
  said[0]?.again();
  tooMuch.again();
  await expect.poll(() => said[0]?.steps.at(-1)).toBe('refused 40060');
  await expect.poll(() => tooMuch.steps.at(-1)).toBe('refused 40060');
  const { pieces } = await at.bot.store.club(at.club.id).heldInAll();
  expect(pieces).toBe(21);
  await at.close();
});
