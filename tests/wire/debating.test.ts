/** A club's evening over the wire: an unusual piece, a debate and its menus, a board, a challenge. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ClubBot, openClubBot } from './club-bot.ts';
import type { Member } from './stand-in.ts';

let at: ClubBot;
let members: Member[];

/** Sixteen ordinary packers of four people, 12 to 16 lb, about a fifth off. */
beforeEach(async () => {
  at = await openClubBot();
  members = Array.from({ length: 4 }, () => at.club.addMember());
  for (let piece = 0; piece < 16; piece += 1) {
    const [bought, share] = [12 + (piece % 5), 0.17 + 0.01 * ((3 * piece) % 7)];
    await member(piece % 4).types('/weigh', {
      cut: 'packer',
      bought: `${bought} lb`,
      trim: `${(bought * share).toFixed(2)} lb`,
      grade: piece % 2 === 0 ? 'choice' : 'prime',
    });
  }
}, 30_000);
afterEach(() => at.close());

function member(index: number): Member {
  const found = members[index];
  if (found === undefined) throw new Error(`there is no member ${index}`);
  return found;
}

describe('a debate', () => {
  test('is posted with its picture, and its menu turns it into another question', async () => {
    const { message } = await member(0).types('/debate', { cut: 'packer' });
    expect(message.isPrivate).toBe(false);
    expect(message.text).toContain('big pieces of whole packer brisket');
    expect(message.text).toContain('16 pieces, 4 people');
    expect(message.pictures.map(({ alt }) => alt)).toEqual([expect.stringContaining('16 pieces, 4 people')]);
    await member(0).selects(message, 'Another question', 'Do higher grades lose more?');
    expect(message.text).toContain('Prime');
    const stranger = await member(1).selects(message, 'Another question', 'Do bigger pieces lose less?');
    expect(stranger.message.isPrivate).toBe(true);
    expect(message.text).toContain('Prime');
  });
});

test('an unusual piece is shown to all, and asked about to its poster alone', async () => {
  const said = await member(2).types('/weigh', { cut: 'packer', bought: '13.5 lb', trim: '1.25 lb' });
  const { message } = said;
  expect(message.text).toContain('it waits for a second look');
  const question = await said.followUp();
  expect([question.isPrivate, question.labels]).toEqual([
    true,
    ['2 lb 12.1 oz came off', 'It is right', 'Fix it'],
  ]);
  await member(2).presses(question, '2 lb 12.1 oz came off');
  await expect.poll(() => message.text).not.toContain('it waits for a second look');
});

test('a challenge shows nothing before the challenged says yes', async () => {
  const { message } = await member(0).types('/compare', { member: member(1).id, cut: 'packer' });
  expect(message.text).not.toMatch(/\d %/);
  const stranger = await member(2).presses(message, 'Yes, show both');
  expect([stranger.message.isPrivate, message.text]).toEqual([true, expect.not.stringMatching(/\d %/)]);
  await member(1).presses(message, 'Yes, show both');
  expect(message.text).toMatch(/\d %/);
});

test('a board is for all, and one’s own place for oneself', async () => {
  const { message } = await member(0).types('/board', { cut: 'packer', ranking: 'trim' });
  expect(message.pictures).toHaveLength(1);
  const own = await member(3).presses(message, 'Where am I?');
  expect([own.message.isPrivate, message.edits]).toEqual([true, 0]);
});
