/** As many rows as a table may have, kept while others are answered. */
import { expect, test } from 'vitest';
import { openClubBot } from './club-bot.ts';
import { keepManyRows } from './many-rows.ts';

test('ten thousand rows are kept while others are answered', async () => {
  const at = await openClubBot({
    deferAfterMs: 1000,
    platform: { answerWithinMs: 10_000, patienceMs: 60_000 },
  });
  const waits = await keepManyRows(at, 10_000);
  console.log(`${waits.length} answered meanwhile, the slowest in ${Math.round(Math.max(...waits))} ms`);

  const ines = at.club.addMember({ manager: true });
  const { message } = await ines.types('/club export', { format: 'JSON, with every figure' });
  expect(message.text).toContain(
    'That comes to more than 8 MB, the most I can attach. `format:csv` is smaller.',
  );
  const { form } = await ines.presses(message, 'Fix it');
  const sent = await ines.submits(form, { format: 'csv' });
  expect(sent.message.files.map(({ name }) => name)).toEqual(['club-pieces-2026-07-04.csv']);
  await at.close();
});
