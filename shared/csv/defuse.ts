/** Texts that a spreadsheet would take for a formula, or for a number to be rounded. */

/** What starts a formula in a spreadsheet, after any number of apostrophes. Source: OWASP, "CSV Injection". */
const FORMULA = /^'*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;
/** Spreadsheets keep fifteen digits of a number: the ids of a platform have more. */
const LONG_NUMBER = /^'*\d{16,}$/;
const DEFUSED = /^'+(?:[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]|\d{16,}$)/;

/**
 * Whether a spreadsheet would take the text for a formula.
 * @example startsFormula('=1+1') // true
 */
export const startsFormula = (text: string): boolean => FORMULA.test(text);

/**
 * The text with an apostrophe before it where a spreadsheet would change it or run it; else as it is.
 * @example defuse('=1+1') // "'=1+1"
 */
export const defuse = (text: string): string =>
  FORMULA.test(text) || LONG_NUMBER.test(text) ? `'${text}` : text;

/**
 * What `defuse` was given.
 * @example takeBack("'=1+1") // '=1+1'
 */
export const takeBack = (text: string): string => (DEFUSED.test(text) ? text.slice(1) : text);
