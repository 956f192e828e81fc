/** Reading what a button or a menu says: one of an older version, or no such one, is refused kindly and not trusted. */
import { MemberError } from '../shared/errors.ts';
import type { CalendarDay } from '../shared/measure/day.ts';
import { CUTS } from '../shared/trade/cuts.ts';
import type { CutKey } from '../shared/trade/keys.ts';
import { ownCut } from '../shared/trade/own-cuts.ts';

const CUT_KEYS: ReadonlySet<string> = new Set(CUTS.map(({ key }) => key));
/** As ids of members are; what else stands there would be read as something else where it is shown. */
const MEMBER = /^[\w-]{1,40}$/;
const DAY = /^[1-9]\d{3}-\d\d-\d\d$/;

const isOneOf = <Value extends string>(choices: readonly Value[], text: string): text is Value =>
  (choices as readonly string[]).includes(text);

const outdated = (): MemberError => new MemberError('button-outdated', {});

export function pressedOne<const Value extends string>(choices: readonly Value[], text: string): Value {
  if (!isOneOf(choices, text)) throw outdated();
  return text;
}

export function pressedMember(text: string): string {
  if (!MEMBER.test(text)) throw outdated();
  return text;
}

export function pressedCut(text: string): CutKey {
  if (!CUT_KEYS.has(text) && ownCut(text) === null) throw outdated();
  return text as CutKey;
}

/** Null where it says no cut. */
export const pressedCutOrNone = (text: string): CutKey | null => (text === '' ? null : pressedCut(text));

export function pressedDay(text: string): CalendarDay {
  if (!DAY.test(text) || Number.isNaN(Date.parse(text))) throw outdated();
  return text as CalendarDay;
}
