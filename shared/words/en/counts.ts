/** Counted nouns, and numbers without a needless nought. */
import type { Show } from '../../measure/show.ts';

/** @example pieces(show, 12) // '12 pieces' */
export const pieces = (show: Show, count: number): string =>
  `${show.count(count)} ${count === 1 ? 'piece' : 'pieces'}`;

/** @example people(show, 1) // '1 person' */
export const people = (show: Show, count: number): string =>
  count === 1 ? '1 person' : `${show.count(count)} people`;

/**
 * A number to one digit after the mark, and to none where that digit is a nought.
 * @example short(show, 2.04) // '2'; of 2.5 it is '2.5'
 */
export const short = (show: Show, value: number): string =>
  Number.isInteger(Math.round(value * 10) / 10) ? show.count(value) : show.oneDecimal(value);
