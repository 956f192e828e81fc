/** The first letter: large at the start of a sentence, small within one. */

/** @example capital('this season') // 'This season' */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** @example small('Whole packer brisket') // 'whole packer brisket' */
export const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
