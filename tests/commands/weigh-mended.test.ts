/** Mending: *Fix it* after an error and under a card, weights taken back, the same message twice. */
import { describe, expect, test } from 'vitest';
import { filled, rehearse } from '../rehearsing.ts';

describe('after an error', () => {
  test.each([
    ['trim:14 stone', 'weight-other-unit'],
    ['trim:15 lb', 'nothing-left'],
    ['trim:0 cooked:9 lb scraps:10 lb', 'part-above-whole'],
    ['trim:2 lb saved:tallow 3 lb', 'saved-above-trim'],
    ['cooked:8 lb scraps:1 lb served:5 lb', 'parts-off'],
    ['scraps:15 lb', 'part-above-whole'],
    ['served:15 lb', 'gain'],
  ])('%s is held back as %s, and its form holds what was typed', async (told, code) => {
    const { say, play } = await rehearse();
    const refused = await say(`/weigh cut:packer bought:14 lb ${told}`);
    expect(refused).toMatchObject({ ok: false, audience: 'member', error: { code }, figures: {} });
    const form = filled(await say('press Fix it'));
    expect(form).toMatchObject({ cut: 'packer', bought: '14 lb' });
    const [name = '', text = ''] = told.split(/[: ](.*)/s);
    expect(`${form[name] ?? ''} ${form.more}`).toContain(text.split(' ')[0]);
    const said = await play('submit trim: 1 lb more: note: mended');
    expect(said.figures.trimShare).toBeCloseTo(1 / 14, 12);
    expect((await play('/average cut:packer')).figures.pieces).toBe(1);
  });
});

describe('a kept piece', () => {
  const START = '/weigh cut:packer bought:14 lb trim:2 lb price:4.99/lb grade:choice shop:Corner store';

  test('is filled into its form, and what is changed there is changed', async () => {
    const { say, play } = await rehearse();
    await play(START);
    const form = filled(await say('press Fix it'));
    expect(form).toMatchObject({ cut: 'packer', bought: '14 lb', trim: '2 lb', price: '4.99/lb' });
    expect(form.more).toBe('grade: choice\nshop: Corner store');
    const said = await play('submit trim: 3 lb');
    expect(said.figures).toMatchObject({ piece: 1, grade: 'usda/choice' });
    expect(said.figures.trimShare).toBeCloseTo(3 / 14, 12);
  });

  test('loses what is removed in its form', async () => {
    const { say, play } = await rehearse();
    await play(START);
    await say('press Fix it');
    const said = await play('submit price: trim: more: shop: Corner store');
    expect(said.figures).toMatchObject({ trimGrams: null, leftGrams: null, paid: null, grade: null });
    expect(filled(await say('press Fix it')).more).toBe('shop: Corner store');
  });

  test('loses it too where a question comes between', async () => {
    const { say, play } = await rehearse();
    await play(START);
    await say('press Fix it');
    const asked = await say('submit bought: 148 lb price: more: shop: Corner store');
    expect(asked.error?.code).toBe('size');
    const said = await play('press It is 148 lb');
    expect(said.figures).toMatchObject({ piece: 1, paid: null, grade: null });
    expect(said.figures.boughtGrams).toBeCloseTo(148 * 453.59237, 6);
  });

  test('loses it too where an error comes between', async () => {
    const { say, play } = await rehearse();
    await play(START);
    await say('press Fix it');
    expect((await say('submit trim: 20 lb price: more: shop: Corner store')).error?.code).toBe(
      'nothing-left',
    );
    await say('press Fix it');
    const said = await play('submit trim: 1 lb');
    expect(said.figures).toMatchObject({ piece: 1, paid: null, grade: null });
  });

  test('a day that is removed in its form is the day it was posted again', async () => {
    const { say, play } = await rehearse();
    expect((await play('/weigh cut:packer bought:14 lb date:2026-06-30')).text).toContain('Jun 30, 2026');
    await say('press Fix it');
    expect((await play('submit more: note: moved')).text).toContain('Jul 4, 2026');
  });

  test('an exact weight in place of an estimate is no estimate', async () => {
    const { say, play } = await rehearse();
    expect((await play('/weigh cut:packer bought:14 lb trim:about 2 lb')).figures.approximate).toBe(true);
    expect((await play('/weigh piece:1 cooked:8 lb')).figures.approximate).toBe(true);
    expect((await play('/weigh piece:1 trim:2 lb 3 oz')).figures.approximate).toBe(false);
    await say('press Fix it');
    expect((await play('submit trim: ~2 lb')).figures.approximate).toBe(true);
  });

  test('gives back a weight for a dash', async () => {
    const { say, play } = await rehearse();
    await play(START);
    expect((await say('/weigh trim:-')).error?.code).toBe('nothing-to-take-back');
    expect((await play('/weigh piece:1 trim:- price:-')).figures).toMatchObject({
      trimGrams: null,
      paid: null,
    });
  });

  test('can lose neither its cut nor the weight on its label', async () => {
    const { say, play } = await rehearse();
    await play(START);
    expect((await say('/weigh piece:1 bought:-')).error?.code).toBe('bought-missing');
    expect((await say('/weigh piece:1 cut:-')).error?.code).toBe('cut-missing');
    await play('/weigh cut:flat bought:7 lb');
    await say('press Fix it');
    expect((await say('submit bought: trim: 1 lb')).error?.code).toBe('bought-missing');
    expect((await play('/weigh piece:1 pieces:2 grade:-')).figures).toMatchObject({ pieces: 2, grade: null });
    expect((await play('/weigh piece:1 pieces:-')).figures.pieces).toBe(1);
  });

  test('a later weight is not written over unasked', async () => {
    const { say, play } = await rehearse();
    await play(START);
    const refused = await say('/weigh trim:3 lb');
    expect(refused).toMatchObject({ ok: false, error: { code: 'already-weighed' } });
    expect(refused.text).toContain('piece:1 trim:…`');
    expect((await play('/weigh piece:1 trim:3 lb')).figures.trimShare).toBeCloseTo(3 / 14, 12);
  });

  test('the same interaction twice keeps one, and adds one', async () => {
    const { stage } = await rehearse();
    const twice = async (id: string, options: Record<string, string>) => {
      const request = { ...stage.scene, id, kind: 'command', command: 'weigh', options } as const;
      const answers = await Promise.all([
        stage.desk.answer(request).answer,
        stage.desk.answer(request).answer,
      ]);
      return answers.map((answer) => (answer.kind === 'reply' ? answer.reply : null));
    };
    const [first, second] = await twice('9001', { cut: 'packer', bought: '14 lb' });
    expect([first?.figures.piece, second?.figures.piece]).toEqual([1, 1]);
    expect(second?.lines?.[0]).toContain('kept already');
    const [cooked, again] = await twice('9002', { cooked: '8 lb' });
    expect([cooked?.figures.piece, again?.figures.piece]).toEqual([1, 1]);
  });

  test('the same later weight twice, one after the other, is told once', async () => {
    const { stage, play } = await rehearse();
    await play(START, '/weigh cut:flat bought:7 lb trim:1 lb');
    const request = {
      ...stage.scene,
      id: '9003',
      kind: 'command',
      command: 'weigh',
      options: { cooked: '4 lb' },
    } as const;
    const first = await stage.desk.answer(request).answer;
    const second = await stage.desk.answer(request).answer;
    const pieceOf = (answer: typeof first) => (answer.kind === 'reply' ? answer.reply.figures.piece : null);
    expect([pieceOf(first), pieceOf(second)]).toEqual([2, 2]);
    expect((await play('/average measure:cooking')).figures.pieces).toBe(1);
  });
});
