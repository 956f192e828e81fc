import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readActionId, writeActionId } from '../../../shared/chat/action-id.ts';
import type { ActionId } from '../../../shared/chat/reply.ts';

const form: ActionId = { command: 'weigh', action: 'form', by: 'owner', owner: '42', about: ['9f3c'] };

describe('the id of an action', () => {
  test('is readable text', () => {
    expect(writeActionId(form)).toBe('1:weigh:form:owner:42:9f3c');
    expect(writeActionId({ ...form, about: [] })).toBe('1:weigh:form:owner:42');
    expect(writeActionId({ ...form, command: 'mine pans', by: 'anyone' })).toBe(
      '1:mine pans:form:anyone:42:9f3c',
    );
  });

  test('reads back what was written, colons and empty parts included', () => {
    const part = fc.string({ minLength: 1, maxLength: 5 });
    const id = fc.record({
      command: part,
      action: part,
      by: fc.constantFrom<ActionId['by']>('owner', 'anyone', 'manager'),
      owner: part,
      about: fc.array(fc.string({ maxLength: 4 }), { maxLength: 3 }),
    });
    fc.assert(
      fc.property(id, (written) => {
        expect(readActionId(writeActionId(written))).toEqual(written);
      }),
    );
    expect(readActionId(writeActionId({ ...form, about: ['a:b', '', '%3A'] }))?.about).toEqual([
      'a:b',
      '',
      '%3A',
    ]);
  });

  test('is at most 100 characters', () => {
    const room = 100 - writeActionId({ ...form, about: [''] }).length;
    expect(writeActionId({ ...form, about: ['x'.repeat(room)] })).toHaveLength(100);
    expect(() => writeActionId({ ...form, about: ['x'.repeat(room + 1)] })).toThrow('101 characters');
  });

  test('has no empty command, action or owner', () => {
    expect(() => writeActionId({ ...form, owner: '' })).toThrow("can't be read back");
  });

  test.each([
    ['an unknown version', '2:weigh:form:owner:42'],
    ['no version', 'weigh:form:owner:42'],
    ['another presser', '1:weigh:form:everyone:42'],
    ['too few parts', '1:weigh:form:owner'],
    ['an empty part', '1::form:owner:42'],
    ['a broken escape', '1:weigh:form:owner:42:50%'],
    ['nothing', ''],
    ['too much', `1:weigh:form:owner:42:${'x'.repeat(100)}`],
  ])('is not read from %s', (_what, text) => {
    expect(readActionId(text)).toBeNull();
  });
});
