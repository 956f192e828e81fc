import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, describe, expect, test } from 'vitest';
import type { Store } from '../../shared/club/store.ts';
import { HELP_TOPICS } from '../../shared/words/en/help.ts';
import { draw } from '../../src/pictures/local.ts';
import { LATE_MS } from './bot.ts';
import { type ClubBot, type ClubBotOptions, openClubBot } from './club-bot.ts';

let at: ClubBot;
const open = async (options: ClubBotOptions = {}): Promise<ClubBot> => {
  at = await openClubBot(options);
  return at;
};
afterEach(() => at.close());

const PACKER = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz', price: '4.99/lb' };
const piece = (seq: number, club = at.club) => at.bot.store.club(club.id).piece({ seq });

/** The store of a slow disk: each answer about settings takes its time. */
const slow = (store: Store): Store => ({
  ...store,
  club: (id) => {
    const club = store.club(id);
    return { ...club, settings: () => wait(LATE_MS).then(() => club.settings()) };
  },
});

describe('a late answer', () => {
  test('of a slow store comes after "wait", in its place, with its picture', async () => {
    const { club } = await open({ wrapStore: slow, deferAfterMs: LATE_MS / 3 });
    const said = await club.addMember().types('/weigh', PACKER);
    expect(said.steps.slice(0, 2)).toEqual(['wait', 'edit']);
    expect(said.message.isPrivate).toBe(false);
    await expect.poll(() => said.message.pictures.length).toBe(1);
    expect(said.message.text).toContain('17.4 % came off');
    await expect.poll(() => at.bot.store.club(club.id).posted(said.id)).toHaveLength(1);
  });

  test('of a slow pen goes before its picture, which follows in its place', async () => {
    const { club } = await open({
      deferAfterMs: LATE_MS / 3,
      draw: (picture) => wait(LATE_MS).then(() => draw(picture)),
    });
    const said = await club.addMember().types('/weigh', PACKER);
    expect(said.steps[0]).toBe('reply');
    await expect.poll(() => said.message.pictures.length).toBe(1);
  });

  test('that is an error takes the public "wait" away', async () => {
    const { club } = await open({ wrapStore: slow, deferAfterMs: LATE_MS / 3 });
    const said = await club.addMember().types('/weigh', { ...PACKER, trim: '20 lb' });
    expect(said.steps).toEqual(['wait', 'delete', 'follow-up']);
    expect([said.message.isPrivate, club.messages()]).toEqual([true, []]);
  });

  test('to a menu edits the card it stands on, and a question asked aside stays private', async () => {
    const { club } = await open({ wrapStore: slow, deferAfterMs: LATE_MS / 3 });
    const ines = club.addMember();
    const said = await ines.types('/weigh', { ...PACKER, price: '4.99' });
    const asked = await said.followUp();
    expect(asked.isPrivate).toBe(true);
    const chosen = await ines.selects(said.message, 'The grade on its label?', 'Prime');
    expect(chosen.steps).toEqual(['wait to edit', 'edit']);
    const taken = await ines.presses(asked, '$4.99/lb');
    expect([taken.steps, taken.message.isPrivate]).toEqual([['wait to edit', 'edit'], true]);
    await expect.poll(() => said.message.text).toContain('$6.04 a pound to cook');
    expect(said.message.text).toContain('Prime');
  });
});

describe('two clubs', () => {
  test('weighing at once do not see each other', async () => {
    const { platform, club } = await open();
    const other = platform.addClub({ locale: 'de' });
    const [ines, mara] = [club.addMember(), other.addMember({ locale: 'de' })];
    await Promise.all([
      ines.types('/weigh', { ...PACKER, shop: 'Market hall' }),
      mara.types('/weigh', { cut: 'packer', bought: '6,35 kg', trim: '1180 g', shop: 'Hofladen' }),
      ines.types('/weigh', { ...PACKER, trim: '3 lb' }),
      mara.types('/weigh', { cut: 'packer', bought: '7 kg', trim: '900 g' }),
    ]);
    for (const [of, member] of [
      [club, ines],
      [other, mara],
    ] as const) {
      const seqs = await Promise.all([1, 2, 3].map((seq) => piece(seq, of)));
      expect(seqs.map((found) => found?.member)).toEqual([member.id, member.id, undefined]);
      const { message } = await member.types('/average', { cut: 'packer' });
      expect(message.text).toMatch(/\(2 pieces, 1 person\)/);
    }
    expect(await mara.completes('/weigh', 'shop', '')).toEqual([{ name: 'Hofladen', value: 'Hofladen' }]);
    expect(club.messages().some(({ text }) => text.includes('kg)') && text.includes('€'))).toBe(false);
  });

  test('a German one reads and writes kilos, commas and euros', async () => {
    const { club } = await open({ locale: 'de' });
    const mara = club.addMember({ locale: 'de' });
    const { message } = await mara.types('/weigh', {
      cut: 'packer',
      bought: '6,72',
      trim: '1180 g',
      price: '11,95/kg',
    });
    expect(message.text).toContain('pays in EUR');
    expect(message.text).toMatch(/\*\*17,6\s%/);
    expect(message.text).toMatch(/14,50\s€ a kilo to cook/);
    expect(message.text).toContain('6,72 kg');
    // No grade is asked about where buyers never see one.
    expect(message.labels).not.toContain('The grade on its label?');
    expect(message.pictures[0]?.alt).toMatch(/17,6\s%/);
  });
});

describe('a member’s own settings', () => {
  test('pans, units and habits are kept, told to them alone, and used', async () => {
    const { club } = await open();
    const [ines, bo] = [club.addMember(), club.addMember()];
    const kept = await ines.types('/mine pans', { name: 'Blue pan', weight: '14.2 oz' });
    const listed = await ines.types('/mine pans');
    const units = await ines.types('/mine units', { units: 'kg' });
    const habits = await ines.types('/mine habits', {
      label: 'ounces',
      scale: 'decimal',
      'price-unit': 'kg',
    });
    for (const { message } of [kept, listed, units, habits]) expect(message.isPrivate).toBe(true);
    expect(listed.message.text).toContain('Blue pan');
    expect(units.message.text).toContain('You weigh in kilos and grams.');
    expect(habits.message.text).toContain('14 lb 8 oz');
    expect(club.messages()).toEqual([]);
    expect((await bo.types('/mine pans')).message.text).toContain('You have no pans yet.');

    const weighed = await ines.types('/weigh', {
      cut: 'packer',
      bought: '6,72',
      trim: '1580 g',
      pan: 'blue pan',
    });
    // The club reads pounds, whoever weighs.
    expect(weighed.message.text).toContain('14.2 oz of pan taken off');
    const gone = await ines.types('/mine pans', { remove: 'BLUE PAN' });
    expect(gone.message.text).toContain('I have forgotten');
    const form = (await ines.types('/mine pans', { name: 'x', weight: '14 stone' })).message;
    expect(form.labels).toEqual(['Fix it']);
  });
});

describe('the figures and the help', () => {
  test('/average says it, with a table as wide as a phone', async () => {
    const { club } = await open();
    const [ines, bo] = [club.addMember(), club.addMember()];
    const empty = await ines.types('/average', { cut: 'packer' });
    expect(empty.message.text).not.toMatch(/NaN|undefined|null/);
    await ines.types('/weigh', { ...PACKER, grade: 'choice' });
    await bo.types('/weigh', { ...PACKER, trim: '3 lb' });
    await bo.types('/weigh', { cut: 'Boston butt', bought: '8 lb 4 oz', trim: '6 oz' });
    const whole = await bo.types('/average');
    const one = await bo.types('/average', { cut: 'packer', measure: 'What came off raw' });
    expect([whole.message.isPrivate, one.message.isPrivate]).toEqual([false, false]);
    for (const { message } of [whole, one]) {
      const [, table = ''] = message.text.split('```');
      const lines = table.trim().split('\n');
      expect(lines.length).toBeGreaterThan(2);
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(38);
    }
    expect(one.message.text).toContain(
      '**Whole packer brisket: 18.8 % off the average piece (2 pieces, 2 people).**',
    );
  });

  test('/help has each of its topics', async () => {
    const { club } = await open();
    const ines = club.addMember();
    const texts = await Promise.all(
      HELP_TOPICS.map(async (topic) => (await ines.types('/help', { topic })).message),
    );
    expect(texts.every(({ isPrivate }) => isPrivate)).toBe(true);
    expect(new Set(texts.map(({ text }) => text)).size).toBe(HELP_TOPICS.length);
    const bare = await ines.types('/help');
    expect(bare.message.text).toContain('`/help topic:`');
  });
});
