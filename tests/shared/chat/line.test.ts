/** Reading a line as typed in chat, and a form's paragraph. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formOf, MORE } from '../../../shared/chat/form.ts';
import { readLine, readOptions } from '../../../shared/chat/line.ts';
import { MemberError } from '../../../shared/errors.ts';
import { speak } from '../../../shared/words/index.ts';
import { anyText } from '../../any-text.ts';
import { outcome } from '../measure/reading.ts';

const COMMANDS = [
  {
    name: 'weigh',
    options: ['cut', 'bought', 'trim', 'left', 'price', 'cooked', 'shop', 'note', 'pan', 'pans'],
  },
  { name: 'mine units', options: ['units'] },
  { name: 'mine habits', options: ['label', 'price-unit'] },
  { name: 'average', options: ['cut'] },
];
const WEIGH = { name: 'weigh', options: COMMANDS[0]?.options ?? [] };
const read = (line: string) => outcome(() => readLine(line, COMMANDS));

describe('lines', () => {
  test.each([
    ['/weigh', 'weigh', {}],
    ['/WEIGH cut:packer', 'weigh', { cut: 'packer' }],
    ['weigh cut:packer', 'weigh', { cut: 'packer' }],
    ['/ weigh cut:packer', 'weigh', { cut: 'packer' }],
    [
      '/weigh cut:Boston butt bought:8 lb 4 oz left:7 lb',
      'weigh',
      { cut: 'Boston butt', bought: '8 lb 4 oz', left: '7 lb' },
    ],
    ['/weigh CUT: packer  trim:2:9.4 ', 'weigh', { cut: 'packer', trim: '2:9.4' }],
    ['/weigh cut:packer\nbought:14 lb', 'weigh', { cut: 'packer', bought: '14 lb' }],
    ['/weigh cut:packer trim:', 'weigh', { cut: 'packer', trim: '' }],
    ['/weigh note:hot at 16:30 trim:2 lb', 'weigh', { note: 'hot at 16:30', trim: '2 lb' }],
    ['/weigh note:"trim: by hand" trim:2 lb', 'weigh', { note: 'trim: by hand', trim: '2 lb' }],
    ['/weigh note:“trim: by hand” trim:2 lb', 'weigh', { note: 'trim: by hand', trim: '2 lb' }],
    ['/weigh note:see "shop: x" there trim:2 lb', 'weigh', { note: 'see "shop: x" there', trim: '2 lb' }],
    ['/weigh note:a 12" board shop:the 5" one', 'weigh', { note: 'a 12" board', shop: 'the 5" one' }],
    ['/weigh note:nice (cut:ish)', 'weigh', { note: 'nice (cut:ish)' }],
    ['/weigh note:recipe: none', 'weigh', { note: 'recipe: none' }],
    ['/weigh pan:blue pan pans:2', 'weigh', { pan: 'blue pan', pans: '2' }],
    ['/mine units units:kg', 'mine units', { units: 'kg' }],
    ['/mine   habits price-unit:kg', 'mine habits', { 'price-unit': 'kg' }],
    ['/average', 'average', {}],
  ])('%j', (line, command, options) => {
    expect(read(line)).toEqual({ command, options });
  });

  test.each([
    ['/wiegh cut:packer', 'command-unknown', 'weigh'],
    ['/mine', 'command-unknown', 'mine units'],
    ['/mine unit', 'command-unknown', 'mine units'],
    ['/weighing', 'command-unknown', null],
    ['/', 'command-unknown', null],
    ['/weigh packer', 'option-unknown', null],
    ['/weigh bougth:14 lb', 'option-unknown', 'bought'],
    ['/weigh cut:packer bougth:14 lb', 'option-unknown', 'bought'],
    ['/weigh cut:packer coked:14 lb', 'option-unknown', 'cooked'],
    ['/weigh cut:packer pirce:4/lb', 'option-unknown', 'price'],
  ])('%j is refused: %s, near %s', (line, code, near) => {
    const found = read(line);
    expect(found instanceof MemberError && [found.code, (found.values as { near?: unknown }).near]).toEqual([
      code,
      near,
    ]);
  });

  test('an option that stands there twice is refused', () => {
    expect(read('/weigh cut:packer cut:flat')).toMatchObject({
      code: 'option-twice',
      values: { option: 'cut' },
    });
  });
});

const value = fc
  .oneof(
    anyText(30),
    fc.stringMatching(/^[a-z :,.\d-]{0,30}$/),
    fc.constantFrom(
      'trim: 2 lb',
      'cut:packer',
      'shop:',
      '"',
      '12" board',
      'say “hi',
      '-',
      '2:9.4',
      'pric: x',
    ),
  )
  .map((text) => text.trim());
const optionsMap = fc
  .uniqueArray(fc.constantFrom(...WEIGH.options), { maxLength: 6 })
  .chain((names) => fc.tuple(...names.map((name) => fc.tuple(fc.constant(name), value))))
  .map((entries): Record<string, string> => Object.fromEntries(entries));

test('any options without quotes, printed as a line, read back', () => {
  const quoted = (text: string) => (/\p{Letter}:/u.test(text) ? `"${text}"` : text);
  fc.assert(
    fc.property(optionsMap, (typed) => {
      fc.pre(Object.values(typed).every((text) => !/["“”]/.test(text)));
      const line = Object.entries(typed).map(([name, text]) => `${name}:${quoted(text)}`);
      expect(readLine(`/weigh ${line.join(' ')}`, COMMANDS)).toEqual({ command: 'weigh', options: typed });
    }),
  );
});

test('any options, filled into a form, read back from it but for their quotes', () => {
  const say = speak({ locale: 'en-US', units: 'lb' });
  const bare = (text: string) => text.replace(/["“”']/g, '').trim();
  fc.assert(
    fc.property(optionsMap, (typed) => {
      const form = formOf({
        command: 'weigh',
        owner: 'ines',
        about: [],
        first: ['cut', 'bought'],
        typed,
        say,
      });
      const more = form.inputs.find(({ name }) => name === MORE)?.value ?? '';
      const { cut, bought, ...rest } = typed;
      const back = readOptions(more, WEIGH);
      expect(Object.keys(back).sort()).toEqual(Object.keys(rest).sort());
      for (const [name, text] of Object.entries(rest)) expect(bare(back[name] ?? '')).toBe(bare(text));
      const first = Object.fromEntries(form.inputs.map((input) => [input.name, input.value]));
      expect([first.cut, first.bought]).toEqual([cut, bought]);
    }),
  );
});

test('any text is a line, or a refusal', () => {
  fc.assert(
    fc.property(anyText(80), (text) => {
      read(text);
      read(`/weigh ${text}`);
    }),
  );
});
