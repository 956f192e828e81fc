import { ComponentType } from 'discord.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Action, ActionId, Reply } from '../../shared/chat/reply.ts';
import type { Picture } from '../../shared/pictures/picture.ts';
import { renderForm } from '../../src/discord/form.ts';
import { flatten } from '../../src/discord/limits.ts';
import { picturesOf, render } from '../../src/discord/render.ts';
import { clip, clipLines } from '../../src/text/clip.ts';
import { printTable, TABLE_LINE } from '../../src/text/table.ts';
import { overLimits, overLimitsOfForm } from './over-limits.ts';

const id = (about: string): ActionId => ({
  command: 'weigh',
  action: 'do',
  by: 'owner',
  owner: '1',
  about: [about],
});
const picture: Picture = { name: 'where', config: {}, width: 4, height: 3, alt: 'In words.' };
const reply: Reply = { answer: '17.4 % came off.', figures: {} };
const typesOf = (message: ReturnType<typeof render>) => flatten(message.components).map(({ type }) => type);
const textOf = (message: ReturnType<typeof render>) =>
  flatten(message.components).flatMap((part) =>
    part.type === ComponentType.TextDisplay ? [part.content] : [],
  );

describe('a reply', () => {
  test('is a container: answer, table, picture, small print; then what can be pressed', () => {
    const message = render(
      {
        ...reply,
        lines: ['of 14 lb 13.3 oz'],
        table: [['cut'], ['brisket']],
        picture,
        small: ['12 pieces', '4 people'],
        actions: [{ kind: 'button', label: 'Fix it', id: id('1'), main: true }],
      },
      new Map([[picture, new Uint8Array([1])]]),
    );
    expect(overLimits(message)).toEqual([]);
    expect(typesOf(message)).toEqual([
      ComponentType.Container,
      ComponentType.TextDisplay,
      ComponentType.TextDisplay,
      ComponentType.MediaGallery,
      ComponentType.TextDisplay,
      ComponentType.ActionRow,
      ComponentType.Button,
    ]);
    expect(textOf(message)).toEqual([
      '**17.4 % came off.**\nof 14 lb 13.3 oz',
      '```\ncut\nbrisket\n```',
      '-# 12 pieces\n-# 4 people',
    ]);
  });

  test('leaves its own bold words alone', () => {
    expect(textOf(render({ ...reply, answer: '**17.4 %** came off.' }))).toEqual(['**17.4 %** came off.']);
  });

  test('without its picture shows none', () => {
    expect(picturesOf({ ...reply, picture, welcome: { ...reply, picture } })).toEqual([picture, picture]);
    expect(render({ ...reply, picture }).files).toEqual([]);
  });

  test('has five buttons in a row, and a menu by itself', () => {
    const button = (about: string): Action => ({ kind: 'button', label: about, id: id(about) });
    const menu: Action = {
      kind: 'menu',
      label: 'Which?',
      id: id('menu'),
      choices: [{ label: 'A', value: 'a' }],
    };
    const actions = [...['1', '2', '3', '4', '5', '6'].map(button), menu, button('7')];
    const rows = render({ ...reply, actions }).components.slice(1);
    expect(rows.map((row) => ('components' in row ? row.components.length : 0))).toEqual([5, 1, 1, 1]);
  });

  test('of any length stays within the limits, answer first', () => {
    const texts = fc.array(fc.string({ unit: 'grapheme', maxLength: 1200 }), { maxLength: 6 });
    const page = fc.record({
      answer: fc.string({ unit: 'grapheme', minLength: 1, maxLength: 5000 }),
      lines: texts,
      small: texts,
      table: fc.array(fc.array(fc.string({ maxLength: 30 }), { minLength: 1, maxLength: 5 }), {
        maxLength: 40,
      }),
      buttons: fc.nat(60),
    });
    const pageOf = (made: { buttons: number } & Omit<Reply, 'figures'>, prefix: string): Reply => ({
      ...made,
      figures: {},
      actions: Array.from({ length: made.buttons }, (_, n) => ({
        kind: 'button',
        label: 'x',
        id: id(`${prefix}${n}`),
      })),
    });
    fc.assert(
      fc.property(page, fc.option(page), (made, before) => {
        const welcome = before ? { welcome: pageOf(before, 'w') } : {};
        const message = render({ ...pageOf(made, 'p'), ...welcome });
        expect(overLimits(message)).toEqual([]);
        const shown = textOf(message).find((text) => text.includes([...made.answer].at(0) ?? '\n'));
        expect(shown).toBeDefined();
      }),
      { numRuns: 60 },
    );
  });
});

describe('cutting', () => {
  test.each([
    ['seventeen', 9, 'seventeen'],
    ['seventeen', 6, 'seven…'],
    ['🥩🥩🥩', 4, '🥩…'],
    ['by <@123456789012345678> today', 12, 'by …'],
    ['read `14.8 pounds` so', 12, 'read `14.8…`'],
    ['abc', 1, '…'],
    ['abc', 0, ''],
  ])('%s at %i is %s', (text, most, expected) => {
    expect(clip(text, most)).toBe(expected);
  });

  test('keeps whole lines as long as they fit', () => {
    expect(clipLines(['one', 'two', 'three'], 9)).toEqual(['one', 'two', '…']);
    expect(clipLines(['one', 'two', 'three'], 11)).toEqual(['one', 'two', 'th…']);
    expect(clipLines(['one', 'two'], 7)).toEqual(['one', 'two']);
  });
});

describe('a table', () => {
  test('has figures to the right', () => {
    const rows = [
      ['cut', 'on the plate', 'how'],
      ['brisket', '51.2 %', 'foil'],
      ['butt', '8.1 %', 'none'],
    ];
    expect(printTable(rows)).toEqual([
      'cut      on the plate  how',
      'brisket        51.2 %  foil',
      'butt            8.1 %  none',
    ]);
  });

  test('is never wider than a phone, and shortens its first column', () => {
    const lines = printTable([
      ['what', 'came off'],
      ['a very long name of a cut of meat, with its bone', '17.4 %'],
    ]);
    expect(lines[1]).toBe('a very long name of a cut of…   17.4 %');
    expect(lines.every((line) => line.length <= TABLE_LINE)).toBe(true);
  });

  test('does not end its block of code', () => {
    expect(printTable([['a```b']])).toEqual(["a'''b"]);
  });
});

describe('a form', () => {
  const form = {
    title: 'A very long title that the platform would not take at all',
    id: id('form'),
    inputs: [{ name: 'bought', label: 'Bought', value: '', hint: '14 lb 13 oz' }],
  };

  test('has inputs that may stay empty', () => {
    const modal = renderForm(form);
    expect(overLimitsOfForm(modal)).toEqual([]);
    expect(modal.title).toBe('A very long title that the platform would no…');
    expect(modal.components[0]).toMatchObject({
      label: 'Bought',
      component: { custom_id: 'bought', required: false, placeholder: '14 lb 13 oz' },
    });
  });

  test('with too much is told', () => {
    const modal = renderForm(form);
    const [input] = modal.components;
    if (!input) throw new Error('no input');
    expect(overLimitsOfForm({ ...modal, components: [input, input] })).toEqual(['input bought twice']);
    expect(overLimitsOfForm({ ...modal, components: [], title: 'x'.repeat(46) })).toEqual([
      'title of a form: 46, at most 45',
      'inputs of a form: 0, at least 1',
    ]);
  });
});

test('files to take away stand last, each shown and sent once, as UTF-8', () => {
  const files = [
    { name: 'bad-rows.txt', content: 'Größe\n' },
    { name: 'club-pieces.csv', content: new Uint8Array([1, 2]) },
  ];
  const body = render({ answer: 'Here.', small: ['x'], files, figures: {} });
  expect(overLimits(body)).toEqual([]);
  expect(body.files.map(({ name, bytes }) => [name, bytes.length])).toEqual([
    ['bad-rows.txt', 8],
    ['club-pieces.csv', 2],
  ]);
  const [container] = body.components;
  const parts = container !== undefined && 'components' in container ? container.components : [];
  expect(parts.slice(-2)).toEqual(
    files.map(({ name }) => ({ type: ComponentType.File, file: { url: `attachment://${name}` } })),
  );
  const large = { name: 'large.csv', content: new Uint8Array(10 * 1024 * 1024 + 1) };
  expect(overLimits(render({ answer: 'Here.', files: [large], figures: {} }))).toEqual([
    'bytes of all files: 10485761, at most 10485760',
  ]);
});
