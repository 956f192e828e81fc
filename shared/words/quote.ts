/** Members' text inside our sentences: the one place that keeps it from being markup, a mention or a new line. */

/** The most characters that are shown of what was typed. */
const LONGEST_QUOTE = 60;
const BACKTICKS = /[`\u02cb\u1fef\uff40]/g;
/** Line breaks, control, direction and zero-width characters, halves of characters, the marks of private use. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}]+/gu;
const SPACES = /\s+/g;

/**
 * `text` on one line, without what nobody sees; empty where nothing is left.
 *
 * @example oneLine(' Market\n\u202ehall ') // 'Market hall'
 */
export const oneLine = (text: string): string => text.replace(UNSEEN, ' ').replace(SPACES, ' ').trim();

function cleaned(text: string): string {
  const plain = oneLine(text.replace(BACKTICKS, "'"));
  const characters = [...plain];
  return characters.length > LONGEST_QUOTE ? `${characters.slice(0, LONGEST_QUOTE).join('')}…` : plain;
}

/**
 * `text` in backticks, as it can be shown safely in any sentence: one line, at most 60 characters and `…`.
 *
 * @example quote('@everyone `x`') // "`@everyone 'x'`"
 */
export const quote = (text: string): string => `\`${cleaned(text) || ' '}\``;

/**
 * An option with what was typed for it, as in the line that was typed, in backticks.
 *
 * @example quoteOption('bought', '14 stone') // '`bought:14 stone`'
 */
export const quoteOption = (option: string, text: string): string =>
  `\`${cleaned(option)}:${cleaned(text)}\``;
