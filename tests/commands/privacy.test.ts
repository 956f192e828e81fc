/** Hiding, leaving and erasing, through the desk. */
import { describe, expect, test } from 'vitest';
import { type Rehearsing, rehearseAlone } from '../rehearsing.ts';

const PACKER = 'cut:packer bought:14 lb';

/** Three members with three pieces each that differ: enough for a board. */
async function filled(): Promise<Rehearsing> {
  const at = await rehearseAlone();
  for (const [member, trim] of [
    ['ines', 2],
    ['bo', 3],
    ['nora', 2.5],
  ] as const)
    for (let piece = 0; piece < 3; piece += 1)
      await at.play(`@${member} /weigh ${PACKER} trim:${trim + piece / 10} lb shop:${member}s own note:mine`);
  return at;
}

const figuresOf = async ({ play }: Rehearsing, member: string) => {
  const { text: _text, figures } = await play(`@${member} /mine season season:always`);
  return { pieces: figures.pieces, trim: figures.trimGrams, bought: figures.boughtGrams };
};

describe('/mine hide', () => {
  test('tells how one stands, and changes it by an option or a press', async () => {
    const { play } = await rehearseAlone();
    expect(await play('/mine hide')).toMatchObject({ audience: 'member', figures: { hidden: false } });
    expect((await play('press Hide me')).figures).toEqual({ hidden: true });
    expect((await play('/mine hide')).text).toContain('You are hidden here');
    expect((await play('press Show me')).figures).toEqual({ hidden: false });
    expect((await play('/mine hide hidden:yes')).figures).toEqual({ hidden: true });
    expect((await play('/mine hide hidden:no')).figures).toEqual({ hidden: false });
    expect((await play('@bo /mine hide')).figures).toEqual({ hidden: false });
  });

  test('takes one out of boards and rows by member, and leaves the averages as they are', async () => {
    const { play } = await filled();
    const before = await play('/average cut:packer by:member');
    await play('@bo /mine hide hidden:yes');
    const after = await play('/average cut:packer by:member');
    expect(after.figures).toMatchObject({ pieces: 9, members: 3, meanShare: before.figures.meanShare });
    const keys = ({ figures }: typeof after) =>
      (figures.groups as readonly { key: string }[]).map(({ key }) => key).toSorted();
    expect([keys(before), keys(after)]).toEqual([
      ['bo', 'ines', 'nora'],
      ['ines', 'nora'],
    ]);
    expect(after.text).not.toContain('<@bo>');
    expect(after.picture?.alt).not.toBe(before.picture?.alt);
    expect((await play('/board cut:packer ranking:most')).text).not.toContain('<@bo>');
  });

  test('still shows one’s own row to oneself', async () => {
    const { play } = await filled();
    await play('@bo /mine hide hidden:yes', '/average cut:packer by:member');
    expect((await play('@bo press Where are mine?')).text).toContain('<@bo>');
  });
});

describe('/mine leave', () => {
  test('asks, says that people may guess, and keeps the numbers together under no name', async () => {
    const at = await filled();
    const { play } = at;
    const [before, nora] = [await play('/average cut:packer'), await figuresOf(at, 'nora')];
    const asked = await play('@bo /mine leave');
    expect(asked).toMatchObject({ audience: 'member', figures: { pieces: 3 } });
    expect(asked.text).toContain('In a small club people may still guess');
    const left = await play('@bo press Leave');
    expect(left.figures).toEqual({
      pieces: 3,
      clubs: 1,
      cards: 0,
      tidiedBy: '2026-07-05',
      backupsGoneBy: '2026-07-18',
    });
    expect(left.text).toContain('3 pieces count on, under no name');

    const after = await play('/average cut:packer');
    expect({ ...after.figures, groups: [] }).toEqual({ ...before.figures, groups: [] });
    expect(await figuresOf(at, 'nora')).toEqual(nora);
    expect((await play('@bo /piece list')).figures.pieces).toEqual([]);
    const byMember = await play('/average cut:packer by:member');
    expect(byMember.figures).toMatchObject({ pieces: 9, members: 3 });
    expect(byMember.text).not.toMatch(/<@bo>|left-/);
    const shown = await play('/piece show piece:4');
    expect(shown.text).not.toMatch(/bo|left-|mine/);
    expect((await play('@bo /mine leave')).text).toContain('I keep nothing of you here.');
  });

  test('leaves what managers do with such a piece to nobody: nobody is told', async () => {
    const { play } = await filled();
    await play('@bo /mine leave', '@bo press Leave');
    const aside = await play('@ines! /club aside piece:4 why:a slip');
    expect(aside.told).toBeUndefined();
    expect(aside.text).toContain('Weighed in by someone who left.');
    expect((await play('@ines! /club aside')).text).toContain('4: someone who left');
  });

  test('is nobody else’s to press', async () => {
    const { play, say } = await filled();
    await play('@bo /mine leave');
    expect((await say('@ines press Leave')).error?.code).toBe('not-yours');
    expect((await play('@bo /mine leave')).figures).toEqual({ pieces: 3 });
  });
});

describe('/mine erase', () => {
  test('is done once the number of pieces is typed in a form, and changes nobody else’s figures', async () => {
    const at = await filled();
    const { play, say } = at;
    const others = await Promise.all(['ines', 'nora'].map((member) => figuresOf(at, member)));
    const asked = await play('@bo /mine erase');
    expect(asked).toMatchObject({ audience: 'member', figures: { pieces: 3, everywhere: null } });
    expect(asked.actions).toEqual(['Erase here']);
    const opened = await say('@bo press Erase here');
    expect(opened.form?.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['where', 'here'],
      ['sure', ''],
      ['more', ''],
    ]);
    const erased = await play('@bo submit sure:3');
    expect(erased.figures).toMatchObject({ pieces: 3, clubs: 1, tidiedBy: '2026-07-05' });
    expect(erased.text).toContain('Jul 18, 2026');
    expect(await Promise.all(['ines', 'nora'].map((member) => figuresOf(at, member)))).toEqual(others);
    expect((await play('/average cut:packer')).figures).toMatchObject({ pieces: 6, members: 2 });
    expect((await say('/piece show piece:4')).error?.code).toBe('piece-unknown');
    expect((await play(`@bo /weigh ${PACKER} trim:2 lb`)).figures.piece).toBe(10);
  });

  test('erases nothing for another number, and says which it is', async () => {
    const { play, say } = await filled();
    expect((await say('@bo /mine erase sure:2')).error).toMatchObject({
      code: 'erase-unsure',
      text: expect.stringContaining('3 would go. Nothing was erased.'),
    });
    await play('@bo press Fix it');
    expect((await play('@bo submit sure:3')).figures).toMatchObject({ pieces: 3 });
  });

  test('is calm the second time, and for whoever was never here', async () => {
    const { play } = await filled();
    await play('@bo /mine erase sure:3');
    for (const line of ['@bo /mine erase', '@bo /mine erase sure:3', '@tom /mine erase where:everywhere'])
      expect((await play(line)).text).toContain('I keep nothing of you here.');
  });

  test('is nobody else’s to press or send', async () => {
    const { stage, play, say } = await filled();
    await play('@bo /mine erase');
    expect((await say('@ines press Erase here')).error?.code).toBe('not-yours');
    await play('@bo /mine erase', '@bo press Erase here');
    const { form } = stage;
    expect((await say('@ines submit sure:3')).error?.code).toBe('not-yours');
    stage.form = form;
    expect((await play('@bo submit sure:3')).figures).toMatchObject({ pieces: 3 });
  });

  test('everywhere takes what is kept in every club, and here alone what is kept here', async () => {
    const { play } = await filled();
    await play('in other', `@bo /weigh ${PACKER} trim:2 lb`, '@bo /mine units units:kg', 'in third');
    await play('@bo /mine units units:kg', '@ines /mine units units:kg', 'in backyard');
    const asked = await play('@bo /mine erase');
    expect(asked.figures).toEqual({ pieces: 3, everywhere: { clubs: 3, pieces: 4 } });
    expect(asked.actions).toEqual(['Erase here', 'Erase everywhere']);
    await play('@bo /mine erase where:here sure:3', 'in other');
    expect((await play('@bo /piece list')).figures.pieces).toHaveLength(1);
    await play('in backyard', '@bo /mine erase');
    await play('@bo press Erase everywhere');
    expect((await play('@bo submit sure:1')).figures).toMatchObject({ pieces: 1, clubs: 2 });
    await play('in third');
    expect((await play('@bo /mine units')).figures.units).toBeNull();
    expect((await play('@ines /mine units')).figures.units).toBe('kg');
  });
});

describe('/club erase', () => {
  test('takes what is kept of a member, for a manager who types how much', async () => {
    const at = await filled();
    const { play, say } = at;
    const others = await Promise.all(['ines', 'nora'].map((member) => figuresOf(at, member)));
    const asked = await play('@ines! /club erase member:@bo');
    expect(asked).toMatchObject({ audience: 'member', figures: { pieces: 3 } });
    expect((await say('@nora press Erase them')).error?.code).toBe('managers-only');
    await play('@ines! /club erase member:@bo', '@ines! press Erase them');
    expect((await play('@ines! submit sure:3')).text).toContain('kept of <@bo> here');
    expect(await Promise.all(['ines', 'nora'].map((member) => figuresOf(at, member)))).toEqual(others);
    expect((await play('@ines! /club erase member:@bo')).text).toContain('I keep nothing of <@bo> here.');
  });

  test('takes the club, which then begins anew', async () => {
    const { play, say } = await filled();
    await play('@ines! /club set units:kg', 'in other', `@ines /weigh ${PACKER} trim:2 lb`, 'in backyard');
    await play('@ines! /club erase');
    await play('@ines! press Erase the club');
    expect((await say('@ines! submit sure:8')).error?.code).toBe('erase-unsure');
    await play('@ines! press Fix it');
    expect((await play('@ines! submit sure:9')).figures).toMatchObject({ pieces: 9, clubs: 1 });
    expect((await play('@ines! /club erase')).text).toContain('I keep nothing of this club.');
    const first = await play(`@ines /weigh ${PACKER} trim:2 lb`);
    expect(first).toMatchObject({ figures: { piece: 1 }, welcome: expect.anything() });
    expect((await play('/average cut:packer')).figures.pieces).toBe(1);
    await play('in other');
    expect((await play('/average cut:packer')).figures.pieces).toBe(1);
  });

  test('is for managers', async () => {
    const { say } = await filled();
    for (const line of ['@bo /club erase', '@bo /club erase sure:9', '@bo /club erase member:@ines sure:3'])
      expect((await say(line)).error?.code).toBe('managers-only');
  });
});
