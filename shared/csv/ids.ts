/** Ids in a table: what a spreadsheet does to long numbers is seen. */
import { MemberError } from '../errors.ts';

/** `1.23457E+17`: what a spreadsheet shows of a long number. */
const ROUNDED = /^\d(?:[.,]\d+)?e\+?\d+$/i;
const ID = /^[\p{L}\p{N}_.@-]+$/u;
const MENTION = /^<@!?(\w+)>$/;
/** Buttons carry ids, and the platform gives them a hundred characters in all. */
const LONGEST_PIECE = 36;
const LONGEST_MEMBER = 64;

function readId(text: string, option: string, longest: number): string {
  if (ROUNDED.test(text)) throw new MemberError('csv-id-rounded', { option, read: text });
  if (text.length > longest || !ID.test(text))
    throw new MemberError('csv-id-unreadable', { option, read: text, longest });
  return text;
}

/**
 * @throws MemberError for what is no id of a piece, or is a number that a spreadsheet rounded.
 * @example readPieceId('9f3c') // '9f3c'
 */
export const readPieceId = (text: string): string => readId(text, 'piece', LONGEST_PIECE);

/**
 * The id of a member, also as a mention.
 * @throws MemberError for what is no id, or is a number that a spreadsheet rounded.
 * @example readMemberId('<@42>') // '42'
 */
export const readMemberId = (text: string): string =>
  readId(MENTION.exec(text)?.[1] ?? text, 'member', LONGEST_MEMBER);
