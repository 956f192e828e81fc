/** Which piece a line is about: the newest open one, another, one that was named; and the menus under a card. */
import { describe, expect, test } from 'vitest';
import { rehearse } from '../rehearsing.ts';

const PACKER = '/weigh cut:packer bought:14 lb trim:2 lb';
const FLAT = '/weigh cut:flat bought:7 lb trim:1 lb';

describe('later weights', () => {
  test('go to the newest piece that lacks them', async () => {
    const { play } = await rehearse();
    await play(PACKER, FLAT);
    expect((await play('/weigh cooked:4 lb')).figures.piece).toBe(2);
    expect((await play('/weigh cooked:8 lb')).figures.piece).toBe(1);
  });

  test('move to another piece when pressed', async () => {
    const { say, play } = await rehearse();
    await play(PACKER, FLAT);
    expect((await play('/weigh cooked:4 lb 8 oz scraps:4 oz')).actions).toContain('Another piece');
    expect(await say('press Another piece')).toMatchObject({ audience: 'member' });
    const moved = await play('select Choose the piece: 1');
    expect(moved.figures.piece).toBe(1);
    expect(moved.figures.cookedGrams).toBeCloseTo(4.5 * 453.59237, 6);
    expect(moved.figures.plateYield).toBeCloseTo(4.25 / 14, 12);
    expect((await play('/weigh piece:2 note:flat')).figures).toMatchObject({
      cookedGrams: null,
      scrapsGrams: null,
    });
  });

  test('no weight is lost where another was told before', async () => {
    const { say, play } = await rehearse();
    await play(PACKER, '/weigh piece:1 cooked:8 lb', FLAT, '/weigh cooked:4 lb');
    await play('press Another piece');
    const refused = await say('select Choose the piece: 1');
    expect(refused).toMatchObject({ ok: false, error: { code: 'already-weighed' } });
    expect((await play('/weigh piece:2 note:flat')).figures.cookedGrams).toBeCloseTo(4 * 453.59237, 6);
  });

  test.each([
    ['/weigh cooked:8 lb', 'no-open-piece'],
    ['/weigh piece:7 cooked:8 lb', 'piece-unknown'],
    ['/weigh piece:0 cooked:8 lb', 'number-unreadable'],
    ['/weigh cut:packer', 'bought-missing'],
    ['/weigh bought:14 lb', 'cut-missing'],
    ['/weigh cut:dragon bought:14 lb', 'cut-unknown'],
    ['/weigh cut:brisket bought:14 lb', 'which-cut'],
    ['/weigh cut:packer bought:0', 'weight-zero'],
    ['/weigh cut:packer bought:14 lb style:cap-off', 'style-unknown'],
    ['/weigh cut:turkey bought:14 lb style:thin', 'styles-none'],
    ['/weigh cut:packer bought:14 lb pans:2', 'pans-none'],
    ['/weigh quiet:yes', 'nothing-told'],
    ['/weigh piece:1', 'nothing-told'],
  ])('%s: %s', async (line, code) => {
    const { say, play } = await rehearse();
    if (code === 'nothing-told') await play(PACKER);
    expect(await say(line)).toMatchObject({ ok: false, audience: 'member', error: { code } });
  });

  test("another member's piece is theirs", async () => {
    const { say, play } = await rehearse();
    await play(`@bo ${PACKER}`);
    expect((await say('/weigh piece:1 cooked:8 lb')).error?.code).toBe('piece-not-yours');
    expect((await say('/weigh cooked:8 lb')).error?.code).toBe('no-open-piece');
    expect((await say('@bo! /weigh piece:1 cooked:8 lb')).ok).toBe(true);
  });

  test.each(['press Fix it', 'select The grade on its label?: Choice', '@mara! press Fix it'])(
    "and so is its card: '%s'",
    async (line) => {
      const { say, play } = await rehearse();
      await play(`@bo ${PACKER}`);
      expect((await say(line)).error?.code).toBe('not-yours');
    },
  );
});

describe('what is asked after the answer', () => {
  test('the grade of beef, until it is told', async () => {
    const { play } = await rehearse();
    expect((await play(PACKER)).actions).toContain('The grade on its label?');
    const chosen = await play('select The grade on its label?: Choice');
    expect(chosen).toMatchObject({ figures: { piece: 1, grade: 'usda/choice' } });
    expect(chosen.actions).not.toContain('The grade on its label?');
    expect((await play('/average cut:packer')).text).toContain('Choice');
  });

  test('the bone of a cut that is sold both ways, and no grade of pork', async () => {
    const { play } = await rehearse();
    const said = await play('/weigh cut:Boston butt bought:8 lb');
    expect(said.actions).toContain('Bone in, or boneless?');
    expect(said.actions).not.toContain('The grade on its label?');
    expect((await play('select Bone in, or boneless?: Bone in')).text).toContain('bone in');
    expect((await play(FLAT)).actions).not.toContain('Bone in, or boneless?');
  });

  test('the shop, once the club has named one', async () => {
    const { play } = await rehearse();
    expect((await play(PACKER)).actions).not.toContain('Bought where?');
    await play(`${FLAT} shop:Corner store`);
    const { actions } = await play('/weigh cut:flat bought:8 lb');
    expect(actions).toContain('Bought where?');
    expect((await play('select Bought where?: Corner store')).actions).not.toContain('Bought where?');
  });
});

describe('what was told once', () => {
  test('the cut and its style are offered the next time', async () => {
    const { say, play } = await rehearse();
    await play(`${PACKER} style:quarter`);
    expect((await say('/weigh bought:13 lb')).ask?.readings).toEqual(['Whole packer brisket', 'Another cut']);
    const said = await play('press Whole packer brisket');
    expect(said.figures).toMatchObject({ cut: 'beef/brisket-whole', style: 'brisket/quarter' });
    expect((await play('/weigh cut:spares bought:4 lb')).figures.style).toBeNull();
  });

  test('is completed', async () => {
    const { play } = await rehearse();
    await play(FLAT, `${PACKER} shop:Corner store`);
    const values = async (line: string) => (await play(line)).choices?.map(({ value }) => value);
    expect((await values('complete /weigh cut:bris'))?.[0]).toBe('Whole packer brisket');
    expect(await values('complete /weigh shop:corn')).toEqual(['Corner store']);
    expect(await values('complete /weigh cut:packer style:')).toEqual(['thick', 'quarter', 'thin']);
    expect(await values('complete /weigh cut:packer grade:')).toEqual(['prime', 'choice', 'select']);
  });
});
