/** Reading a written number whose mark may part decimals or thousands. */
import { type Ratio, ratio } from './ratio.ts';
import type { DecimalMark } from './units.ts';

/** One way to read a written number. */
export interface NumberReading {
  readonly value: Ratio;
  /** The digits after the decimal mark, as typed; empty if there is none. */
  readonly decimals: string;
  /** What the mark was taken for; absent where there is no doubt. */
  readonly mark?: 'decimals' | 'thousands';
}

const SIMPLE = /^(\d*)(?:([.,'])(\d+))?$/;
const GROUPED = /^([1-9]\d{0,2})([.,'])(\d{3}(?:\2\d{3})*)(?:(?!\2)([.,])(\d+))?$/;
const LEADING_GROUP = /^[1-9]\d{0,2}$/;

function decimal(whole: string, decimals: string): Omit<NumberReading, 'mark'> {
  return { value: ratio(BigInt(whole + decimals), 10n ** BigInt(decimals.length)), decimals };
}

/**
 * Every way in which a careful person could read `raw` (digits and the marks `.` `,` `'`), the likeliest
 * first; none if it is no number (`1.2.3`).
 *
 * One mark before exactly three digits may part thousands: always, if `either` is set; otherwise only if it
 * is not the reader's own decimal mark. An apostrophe parts thousands, or, before three digits, decimals.
 *
 * @example readNumber('1,234', '.', false) // 1234 (thousands), 1.234 (decimals)
 * @example readNumber('14,8', '.', false) // 14.8
 */
export function readNumber(raw: string, own: DecimalMark, either: boolean): readonly NumberReading[] {
  const simple = SIMPLE.exec(raw);
  if (simple) {
    const [, whole = '', mark, decimals = ''] = simple;
    const grouped = decimals.length === 3 && LEADING_GROUP.test(whole);
    if (mark === undefined || (mark === own && !either) || !grouped) {
      return mark === "'" ? [] : [decimal(whole, decimals)];
    }
    return [
      { value: ratio(BigInt(whole + decimals)), decimals: '', mark: 'thousands' },
      { ...decimal(whole, decimals), mark: 'decimals' },
    ];
  }
  const groups = GROUPED.exec(raw);
  if (!groups) return [];
  const [, first = '', , rest = '', , decimals = ''] = groups;
  return [decimal(first + rest.replace(/\D/g, ''), decimals)];
}
