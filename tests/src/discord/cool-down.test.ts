/** Who does very much at once is asked for a moment; nobody else is. */
import { describe, expect, test } from 'vitest';
import { openCoolDown } from '../../../src/discord/cool-down.ts';

const open = () => {
  const clock = { now: 0 };
  const coolDown = openCoolDown({ most: 3, withinMs: 1000 }, () => clock.now);
  let last = 0;
  const takes = (member = 'ines', club = 'here', id = `${++last}`) => coolDown.takes({ club, member, id });
  return { clock, takes };
};

describe('a member', () => {
  test('is taken as often as told within a while, and again after it', () => {
    const { clock, takes } = open();
    expect([takes(), takes(), takes(), takes(), takes()]).toEqual([true, true, true, false, false]);
    clock.now = 999;
    expect(takes()).toBe(false);
    clock.now = 1000;
    // Those that were turned away do not count.
    expect([takes(), takes(), takes(), takes()]).toEqual([true, true, true, false]);
  });

  test('holds up neither another one, nor themselves in another club', () => {
    const { takes } = open();
    for (let at = 0; at < 4; at += 1) takes();
    expect([takes('bo'), takes('ines', 'there'), takes()]).toEqual([true, true, false]);
  });
});

describe('what is delivered once more', () => {
  test('is taken again where it was taken, and is not counted twice', () => {
    const { takes } = open();
    expect([takes('ines', 'here', 'x'), takes('ines', 'here', 'x'), takes(), takes()]).toEqual(
      Array(4).fill(true),
    );
    expect([takes(), takes('ines', 'here', 'x')]).toEqual([false, true]);
  });

  test('is not taken later where it was turned away: its member was told so', () => {
    const { clock, takes } = open();
    for (let at = 0; at < 3; at += 1) takes();
    expect(takes('ines', 'here', 'x')).toBe(false);
    clock.now = 5000;
    expect(takes('ines', 'here', 'x')).toBe(false);
  });
});
