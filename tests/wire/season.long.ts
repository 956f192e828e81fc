/** The whole season of the invented club over real sockets, every card with its picture: nothing fails, nothing is lost. */
import { expect, test } from 'vitest';
import { commands } from '../../commands/index.ts';
import { readLine } from '../../shared/chat/line.ts';
import { typable } from '../../src/rehearsal/line.ts';
import { seasonLines } from '../../src/rehearsal/season.ts';
import { openClubBot } from './club-bot.ts';
import type { Member } from './stand-in.ts';

const PIECES = 150;

test('150 pieces of 10 members', async () => {
  const at = await openClubBot();
  const members = new Map<string, Member>();
  const memberCalled = (name: string) => {
    const known = members.get(name) ?? at.club.addMember();
    members.set(name, known);
    return known;
  };
  for (const line of seasonLines(PIECES, 2)) {
    const moment = /^at (.+)$/.exec(line)?.[1];
    const [, name, typed] = /^@(\w+) (\/.+)$/.exec(line) ?? [];
    if (moment !== undefined) at.clock.now = Date.parse(moment);
    if (name === undefined || typed === undefined) continue;
    const { command, options } = readLine(typed, typable(commands));
    const other = options.member;
    const meant = other === undefined ? options : { ...options, member: memberCalled(other).id };
    const { message } = await memberCalled(name).types(`/${command}`, meant);
    const alone = /^(mine|piece list)/.test(command) || (command === 'compare' && other === undefined);
    expect(message.isPrivate, `${line}: ${message.text}`).toBe(alone);
    if (command === 'weigh') expect(message.pictures, line).toHaveLength(1);
  }
  const store = at.bot.store.club(at.club.id);
  const columns = await store.columns(null, 'plate');
  expect([columns.count, columns.member.values.length]).toEqual([PIECES, 10]);
  await at.close();
});
