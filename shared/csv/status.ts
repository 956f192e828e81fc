/** What a row's last column says of its piece: confirmed, meant as typed, set aside and why. */
import { MemberError } from '../errors.ts';
import { foldLetters, spellings } from './plain-words.ts';
import { STATUSES } from './value-names.ts';

/** What a row's status says; `as typed` and `confirmed` never both. */
export interface Status {
  /** Its poster confirmed it although it is unusual in the club. */
  confirmed: boolean;
  /** It is as it was typed, though that looks odd: nothing is asked about it. */
  meant: boolean;
  aside: boolean;
  /** Why it was set aside, if that was told. */
  why: string | null;
}

const NONE: Status = { confirmed: false, meant: false, aside: false, why: null };

const oneOf = (names: string): string => spellings(names).join('|');
const SURE = new RegExp(`^(?:(${oneOf(STATUSES.confirmed)})|(${oneOf(STATUSES.meant)}))(?:\\s*[;,]\\s*|$)`);
const ASIDE = new RegExp(`^(?:${oneOf(STATUSES.aside)})(?::\\s*|$)`);

/**
 * Reads `confirmed`, `as typed`, `set aside: why`, or the first two before the third, parted by `; `.
 * @throws MemberError for anything else.
 * @example readStatus('confirmed; set aside: the scale was off').why // 'the scale was off'
 */
export function readStatus(text: string): Status {
  // Letter by letter, so that what stands after the colon is still found where it was.
  const plain = [...text].map((letter) => foldLetters(letter).slice(0, 1) || ' ').join('');
  const sure = SURE.exec(plain);
  const rest = plain.slice(sure?.[0].length ?? 0);
  const aside = ASIDE.exec(rest);
  if (rest !== '' && aside === null) throw new MemberError('csv-status-unknown', { read: text });
  const why = [...text].slice([...plain].length - [...rest].length + (aside?.[0].length ?? 0)).join('');
  return {
    ...NONE,
    confirmed: sure?.[1] !== undefined,
    meant: sure?.[2] !== undefined,
    aside: aside !== null,
    why: aside === null || why === '' ? null : why,
  };
}

/**
 * The status as it is written; reads back.
 * @example statusText({ confirmed: true, meant: false, aside: true, why: null }) // 'confirmed; set aside'
 */
export function statusText({ confirmed, meant, aside, why }: Status): string {
  const sure = confirmed ? 'confirmed' : meant ? 'as typed' : '';
  const apart = !aside ? '' : why === null || why === '' ? 'set aside' : `set aside: ${why}`;
  return [sure, apart].filter((part) => part !== '').join('; ');
}
