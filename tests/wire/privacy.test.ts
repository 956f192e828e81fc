/** Leaving and erasing on the platform: forms, private answers, and the cards that stood in the channel. */
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { tidy } from '../../src/store/tidy.ts';
import { stillThere } from '../store/bytes.ts';
import { type ClubBot, openClubBot } from './club-bot.ts';
import type { Exchange, Member, Shown } from './stand-in.ts';

let at: ClubBot;
let ines: Member;
let bo: Member;

beforeEach(async () => {
  at = await openClubBot();
  ines = at.club.addMember({ manager: true });
  bo = at.club.addMember();
});
afterEach(() => at.close());

const PACKER = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz', note: 'a note of bos' };
const COUNT = 'How many pieces go? Type the number';
const ERASED = 'This piece was erased, and is in no figure any more.';

/** Two cards of bo's, each noted where it stands, and one of ines'. */
async function weighed(): Promise<{ cards: Shown[]; other: Shown; ids: string[] }> {
  const done: Exchange[] = [];
  for (const trim of ['2 lb', '3 lb']) done.push(await bo.types('/weigh', { ...PACKER, trim }));
  const other = (await ines.types('/weigh', { ...PACKER, note: 'another' })).message;
  const ids = done.map(({ id }) => id);
  for (const id of ids) await expect.poll(() => at.bot.store.club(at.club.id).posted(id)).toHaveLength(1);
  return { cards: done.map(({ message }) => message), other, ids };
}

describe('/mine erase', () => {
  test('asks in a form, answers privately, and takes the cards back; of the rest no byte stays', async () => {
    const { cards, other, ids } = await weighed();
    const asked = await bo.types('/mine erase');
    expect([asked.message.isPrivate, asked.message.labels]).toEqual([true, ['Erase here']]);
    const { form } = await bo.presses(asked.message, 'Erase here');
    const { message } = await bo.submits(form, { [COUNT]: '2' });
    expect(message.isPrivate).toBe(true);
    expect(message.text).toContain('Erased: 2 pieces and everything else that I kept of you here.');
    expect(message.text).toContain('2 cards in channels are taken back');
    for (const card of cards) await expect.poll(() => card.text).toContain(ERASED);
    expect(cards.map(({ labels, pictures }) => [labels, pictures])).toEqual([
      [[], []],
      [[], []],
    ]);
    expect([other.edits, other.pictures.length]).toEqual([0, 1]);
    await tidy(at.folder.url('club.db'), { backupDir: join(at.folder.path, 'b'), now: at.clock.now + 1 });
    expect(stillThere(at.folder.path, [bo.id, ...ids, 'a note of bos'])).toEqual([]);
  });

  test('goes on where a card is gone', async () => {
    const { cards } = await weighed();
    const [, newest] = cards;
    if (newest) newest.kept.deleted = true;
    await bo.types('/mine erase', { sure: '2' });
    await expect.poll(() => cards[0]?.text).toContain(ERASED);
  });

  test('is refused to whom it was not made for', async () => {
    await weighed();
    const done = await ines.types('/club erase', { member: bo.id });
    const { form } = await ines.presses(done.message, 'Erase them');
    ines.losesRole();
    const refused = await ines.submits(form, { [COUNT]: '2' });
    expect(refused.message.text).toContain('Only those who manage this server can do that.');
    expect(await at.bot.store.club(at.club.id).held(bo.id)).toMatchObject({ pieces: 2 });
  });
});

test('/mine leave takes the cards’ numbers back, and the pieces count on', async () => {
  const { cards } = await weighed();
  const before = await ines.types('/average', { cut: 'packer' });
  const asked = await bo.types('/mine leave');
  const left = await bo.presses(asked.message, 'Leave');
  expect([left.message.isPrivate, left.message.labels]).toEqual([true, []]);
  for (const card of cards) {
    await expect.poll(() => card.text).toContain('Whoever weighed this piece in has left.');
    expect(card.text).not.toContain('Piece');
  }
  const after = await ines.types('/average', { cut: 'packer' });
  expect(after.message.text).toBe(before.message.text);
});
