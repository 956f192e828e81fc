import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { commands } from '../../commands/index.ts';
import { isDone } from './bot.ts';
import { type ClubBot, DAY, openClubBot } from './club-bot.ts';
import type { Member } from './stand-in.ts';

let at: ClubBot;
let ines: Member;
let bo: Member;

beforeEach(async () => {
  at = await openClubBot();
  ines = at.club.addMember();
  bo = at.club.addMember();
});
afterEach(() => at.close());

const PACKER = { cut: 'packer', bought: '14.83', trim: '2:9.4', price: '4.99/lb' };
const piece = (seq: number) => at.bot.store.club(at.club.id).piece({ seq });
const posted = () =>
  at.club.messages().map(({ text }) => text.split('\n').find((line) => / %|kept/.test(line)));

describe('the commands', () => {
  test('are registered once, within the limits', () => {
    expect(at.platform.registrations).toBe(1);
    const families = new Set(commands.map(({ name }) => name.split(' ')[0]));
    expect(at.club.commands().map(({ name }) => name)).toEqual([...families]);
    expect(at.platform.complaints).toEqual([]);
  });

  test('complete a cut, what goes with it, and the shops of this club', async () => {
    await ines.types('/weigh', { ...PACKER, shop: 'Market hall' });
    expect((await bo.completes('/weigh', 'cut', 'pack')).map(({ value }) => value)).toContain(
      'Whole packer brisket',
    );
    expect(await bo.completes('/weigh', 'shop', 'mar')).toEqual([
      { name: 'Market hall', value: 'Market hall' },
    ]);
    const grades = await bo.completes('/weigh', 'grade', '', { cut: 'packer' });
    expect(grades.map(({ name }) => name)).toEqual(['Prime', 'Choice', 'Select']);
    expect(await bo.completes('/weigh', 'grade', '', { cut: 'Boston butt' })).toEqual([]);
    expect(await bo.completes('/weigh', 'style', 'quarter', { cut: 'packer' })).toHaveLength(1);
  });
});

describe('a weekend', () => {
  test('Saturday the knife, Sunday the plate, each in one message with its picture', async () => {
    const saturday = await ines.types('/weigh', PACKER);
    expect(saturday.steps).toEqual(['reply']);
    const { text, pictures, isPrivate } = saturday.message;
    expect(text.split('\n')).toEqual([
      '**Hello! I keep the numbers of what you cook.**',
      'I took it that this club weighs in pounds and ounces and pays in USD. A manager can change that: `/club set`',
      'Weigh your first piece in: `/weigh cut:packer bought:14.83 lb trim:2 lb 9.4 oz`',
      '-# More lines to copy: `/help`',
      '**17.4 % came off: 2 lb 9.4 oz of 14 lb 13.3 oz.**',
      '14 lb 13.3 oz (14.83 lb, 6.73 kg) bought; 2 lb 9.4 oz (2.59 lb, 1.17 kg) came off; 12 lb 3.9 oz (12.24 lb, 5.55 kg) left to cook.',
      '$6.04 a pound to cook, 1.2 times the shelf price.',
      'The first whole packer brisket of this club.',
      '-# Piece 1, Whole packer brisket, Jul 4, 2026',
    ]);
    expect(isPrivate).toBe(false);
    expect(pictures.map(({ name }) => name)).toEqual(['where-it-went.png']);
    expect(pictures[0]?.alt).toContain('Came off: 2 lb 9.4 oz, 17.4 %.');
    expect(
      Buffer.from(pictures[0]?.bytes ?? [])
        .subarray(1, 4)
        .toString(),
    ).toBe('PNG');

    at.clock.now += DAY;
    const sunday = await ines.types('/weigh', { cooked: '7 lb 11 oz', scraps: '12 oz' });
    expect(sunday.steps).toEqual(['reply']);
    expect(sunday.message.text.split('\n')).toEqual([
      '**46.8 % is on the plate: 6 lb 15 oz of the 14 lb 13.3 oz bought.**',
      'Added to piece 1, your whole packer brisket of Jul 4, 2026.',
      '7 lb 11 oz (7.69 lb, 3.49 kg) off the heat; 12 oz (0.75 lb, 340 g) thrown away.',
      '$10.67 a pound on the plate, 2.1 times the shelf price.',
      '-# Piece 1, Whole packer brisket, Jul 4, 2026',
    ]);
    expect(sunday.message.pictures[0]?.alt).toContain('On the plate: 6 lb 15 oz, 46.8 %.');
    expect(await piece(1)).toMatchObject({
      id: saturday.id,
      member: ines.id,
      day: '2026-07-04',
      revision: 1,
    });
    expect(await piece(2)).toBeNull();
  });

  test('the card of the first time stands once, also where two come at once', async () => {
    const both = await Promise.all([ines.types('/weigh', PACKER), bo.types('/weigh', PACKER)]);
    const later = await bo.types('/weigh', { cooked: '8 lb' });
    const hellos = [...both, later].filter(({ message }) => message.text.includes('Hello!'));
    expect(hellos).toHaveLength(1);
  });

  test('a piece weighed in quietly is seen by its member alone, and counts', async () => {
    await bo.types('/weigh', PACKER);
    const { message } = await ines.types('/weigh', { ...PACKER, trim: '3 lb', quiet: true });
    expect(message.isPrivate).toBe(true);
    expect(at.club.messages()).toHaveLength(1);
    expect(message.text).toContain('(2 pieces, 2 people)');
    expect(await at.bot.store.club(at.club.id).posted((await piece(2))?.id ?? '')).toEqual([]);
  });
});

describe('the form', () => {
  test('opens bare, starts from the last cut, and what is sent is a piece', async () => {
    const bare = await ines.types('/weigh');
    expect(bare.form.inputs.map(({ label, value }) => [label, value])).toEqual([
      ['Cut', ''],
      ['Weight on the label', ''],
      ['Came off', ''],
      ['Price', ''],
      ['Anything else', ''],
    ]);
    const sent = await ines.submits(bare.form, {
      Cut: 'packer',
      'Weight on the label': '14.83 lb',
      'Anything else': 'left: 12 lb 4 oz\nnote: lean end: dry',
    });
    expect(sent.message.text).toContain('17.4 % came off');
    expect(await piece(1)).toMatchObject({ id: sent.id, note: 'lean end: dry' });
    expect((await ines.types('/weigh')).form.inputs[0]?.value).toBe('Whole packer brisket');
  });

  test('sent empty, or with a slip, is refused privately', async () => {
    const { form } = await ines.types('/weigh');
    const empty = await ines.submits(form, {});
    expect([empty.message.text, empty.message.isPrivate]).toEqual([
      '**There is nothing to weigh in that. Add a weight, like `trim:2 lb 9.4 oz`.**',
      true,
    ]);
    const slip = await ines.submits(form, { Cut: 'packer', 'Anything else': 'bougt: 14.8 lb' });
    expect(slip.message.text).toContain('Did you mean `bought:`?');
    expect([slip.message.isPrivate, await piece(1)]).toEqual([true, null]);
    const again = await ines.presses(slip.message, 'Fix it');
    expect(again.form.inputs.map(({ value }) => value)).toEqual(['packer', '', '', '', 'bougt: 14.8 lb']);
    const mended = await ines.submits(again.form, { 'Anything else': 'bought: 14.8 lb' });
    expect([mended.message.isPrivate, (await piece(1))?.id]).toEqual([false, slip.id]);
  });
});

describe('what is delivered twice', () => {
  test('keeps one piece and has one answer', async () => {
    const said = await ines.types('/weigh', PACKER, { twice: true });
    await isDone(at.log, said);
    said.again();
    await expect.poll(() => said.steps).toEqual(['reply', 'refused 40060']);
    expect(at.club.messages()).toHaveLength(1);
    expect([(await piece(1))?.id, await piece(2)]).toEqual([said.id, null]);
    expect(said.message.text).not.toContain('kept already');
  });

  test('adds to one piece, also where another one is open', async () => {
    await ines.types('/weigh', PACKER);
    await ines.types('/weigh', PACKER);
    const said = await ines.types('/weigh', { cooked: '7 lb 11 oz' });
    await isDone(at.log, said);
    said.again();
    await expect.poll(() => said.steps).toEqual(['reply', 'refused 40060']);
    expect([(await piece(2))?.cooked !== null, (await piece(1))?.cooked]).toEqual([true, null]);
    expect(posted()).toHaveLength(3);
  });
});

describe('an error', () => {
  test('to a command for all is private, with the way out filled', async () => {
    const wrong = await ines.types('/weigh', { ...PACKER, bought: '14 stone' });
    expect(wrong.steps).toEqual(['reply']);
    expect([wrong.message.isPrivate, at.club.messages()]).toEqual([true, []]);
    expect(wrong.message.text).toContain("I don't know `stone` as a weight");
    const { form } = await ines.presses(wrong.message, 'Fix it');
    expect(form.inputs.map(({ value }) => value)).toEqual(['packer', '14 stone', '2:9.4', '4.99/lb', '']);
    const sent = await ines.submits(form, { 'Weight on the label': '14.83 lb' });
    expect([sent.message.isPrivate, at.club.messages().length]).toEqual([false, 1]);
    expect((await piece(1))?.id).toBe(wrong.id);
  });

  test('says it for a weight that is there already, and for nobody’s piece', async () => {
    await ines.types('/weigh', PACKER);
    const twice = await ines.types('/weigh', { trim: '3 lb' });
    expect(twice.message.text).toContain('Piece 1 has its `trim:` already: 2 lb 9.4 oz.');
    const none = await bo.types('/weigh', { cooked: '7 lb' });
    expect(none.message.text).toContain('You have no piece waiting');
    const others = await bo.types('/weigh', { piece: '1', cooked: '7 lb' });
    expect(others.message.text).toContain("Piece 1 is somebody else's");
    for (const { message } of [twice, none, others]) expect(message.isPrivate).toBe(true);
    expect((await piece(1))?.revision).toBe(0);
  });
});
