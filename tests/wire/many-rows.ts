/** A long table that one member sends, while others type. */
import { expect } from 'vitest';
import type { ClubBot } from './club-bot.ts';

const rows = (count: number): string =>
  `cut,bought,trim,note\n${Array.from({ length: count }, (_, at) => `packer,${12 + (at % 50) / 10} lb,2 lb,${at}\n`).join('')}`;

/** Has that many rows kept, and others answered meanwhile: for each, how many milliseconds that took. */
export async function keepManyRows({ bot, club }: ClubBot, count: number): Promise<readonly number[]> {
  const ines = club.addMember({ manager: true });
  let done = false;
  const importing = (async () => {
    const file = { name: 'pieces.csv', content: rows(count) };
    const { message } = await ines.types('/club import', { file });
    expect(message.text).toContain(`I would add ${count} pieces.`);
    await ines.presses(message, `Import ${count} pieces`);
    expect(message.text).toContain(`${count} pieces added.`);
  })().finally(() => {
    done = true;
  });
  const waits: number[] = [];
  while (!done) {
    const began = performance.now();
    const { message } = await club
      .addMember()
      .types('/weigh', { cut: 'Boston butt', bought: '8 lb', trim: '9 oz' });
    waits.push(performance.now() - began);
    expect(message.text).toContain('9 oz of 8 lb');
  }
  await importing;
  // Were they made to wait for the table, one alone would have been answered by its end.
  expect(waits.length).toBeGreaterThan(2);
  expect(await bot.store.club(club.id).following(0, 99_999)).toHaveLength(count + waits.length);
  return waits;
}
