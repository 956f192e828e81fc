import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quote, quoteOption } from '../../../shared/words/quote.ts';
import { anyText } from '../../any-text.ts';

describe('members’ text in a sentence', () => {
  test.each([
    ['14 stone', '`14 stone`'],
    ['', '` `'],
    ['@everyone', '`@everyone`'],
    ['`code` and more', "`'code' and more`"],
    ['two\nlines', '`two lines`'],
    ['turned \u202eround', '`turned round`'],
    ['a\u0000b\u200bc', '`a b c`'],
    ['x'.repeat(60), `\`${'x'.repeat(60)}\``],
    ['x'.repeat(61), `\`${'x'.repeat(60)}…\``],
    ['🥩'.repeat(61), `\`${'🥩'.repeat(60)}…\``],
  ])('%j is shown as %s', (text, shown) => {
    expect(quote(text)).toBe(shown);
  });

  test('with its option', () => {
    expect(quoteOption('bought', '14 stone')).toBe('`bought:14 stone`');
  });

  test('never leaves its backticks or its line', () => {
    fc.assert(
      fc.property(anyText(200), (text) => {
        expect(quote(text)).toMatch(/^`[^`\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+`$/u);
        expect([...quote(text)].length).toBeLessThanOrEqual(63);
      }),
    );
  });
});
