/** What a button says is read, not trusted: one of another version is answered kindly, whatever stands in it. */
import { describe, expect, test } from 'vitest';
import { ask } from '../../src/rehearsal/stage.ts';
import { rehearse } from '../rehearsing.ts';

describe('a button', () => {
  test.each([
    '1:board:mine:anyone:ines::plate:spring:2026-07-04',
    '1:board:another:anyone:ines::crust:season:2026-07-04',
    '1:board:mine:anyone:ines::plate:season:today',
    '1:board:mine:anyone:ines:beef/unicorn:plate:season:2026-07-04',
    '1:compare:no:owner:ines:bo:beef/unicorn',
    '1:compare:no:owner:ines:@everyone Zq7:beef/brisket-whole',
    '1:compare:yes:owner:ines:bo>:beef/brisket-whole',
    '1:compare:yes:owner:ines:bo',
    '1:debate:question:owner:ines:beef/unicorn:trim',
    '1:debate:cut:owner:ines::smell:size',
    '1:average:mine:anyone:ines:beef/unicorn:trim:grade',
    '1:average:mine:anyone:ines:beef/brisket-whole:trim:moon',
    '1:mine season:show:owner:ines:spring:2026-07-04',
    '1:mine season:show:owner:ines:season:2026',
  ])('%s is of another version', async (action) => {
    const { stage } = await rehearse();
    const answer = await ask(stage, { kind: 'press', action, values: [] });
    expect(answer).toMatchObject({ audience: 'member', failed: { code: 'button-outdated', asks: false } });
  });

  test('of a form that could not be read opens it again, with no input twice', async () => {
    const { stage } = await rehearse();
    const action = '1:help:form:owner:ines:extra:1';
    await ask(stage, { kind: 'submit', action, fields: { more: 'nothing like: a line' } });
    const fix = stage.actions.find(({ label }) => label === 'Fix it');
    expect(fix).toBeDefined();
    const { about = [], ...id } = fix?.id ?? { about: [] };
    expect(id).toMatchObject({ command: 'help', action: 'fix' });
    const form = await ask(stage, {
      kind: 'press',
      action: `1:help:fix:owner:ines:${about.join(':')}`,
      values: [],
    });
    const names = form.kind === 'form' ? form.form.inputs.map(({ name }) => name) : [];
    expect(names).toEqual([...new Set(names)]);
    expect(names).toContain('more');
  });
});
