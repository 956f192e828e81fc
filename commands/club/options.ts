/** What a club's settings are read from: each with an error that says what would work. */
import type { Option, Reader } from '../../shared/chat/option.ts';
import { LIKELY_CURRENCIES, LIKELY_LOCALES, LIKELY_ZONES } from '../../shared/club/guess.ts';
import { MemberError } from '../../shared/errors.ts';
import { CURRENCIES, type Currency, currencyName, currencyOf } from '../../shared/measure/currency.ts';
import { monthNamed } from '../../shared/measure/day-words.ts';
import { fold, plainLetters } from '../../shared/measure/fold.ts';
import { knownLocale, localeName } from '../../shared/measure/locale.ts';
import { readPercent } from '../../shared/measure/percent.ts';
import { zoneNamed, zonesLike } from '../../shared/measure/zone.ts';
import { matching } from '../options.ts';

const NEAR = 3;

/** A share in hundredths from `low` to `high`, both included, as a fraction. */
const hundredths = (
  code: 'points-unreadable' | 'percent-unreadable',
  low: number,
  high: number,
): Option<number> => ({
  kind: 'text',
  read: (text, { option }) => {
    const share = readPercent(text);
    if (share === null || share < low / 100 || share > high / 100)
      throw new MemberError(code, { option, read: text, low, high });
    return share;
  },
});

/** The smallest step that is printed is the smallest margin. */
export const margin = () => hundredths('points-unreadable', 0.1, 20);
export const scaleError = () => hundredths('percent-unreadable', 0, 10);

/** The club's own first, then those that clubs are likeliest to have. */
const first = <Value>(own: Value, likely: readonly Value[], all: readonly Value[] = []): Value[] => [
  ...new Set([own, ...likely, ...all]),
];

export const currency = (): Option<Currency> => ({
  kind: 'text',
  read: (text, { option, club }) => {
    const found = currencyOf(fold(text), club.currency);
    if (found === null || found === 'sign') throw new MemberError('currency-unknown', { option, read: text });
    return found;
  },
  complete: (typed, { club, locale, say }) =>
    matching(
      typed,
      first(club.currency, LIKELY_CURRENCIES, CURRENCIES).map((code) => ({
        label: say.club.currencyChoice({ currency: code, name: currencyName(code, locale) }),
        value: code,
      })),
    ),
});

export const zone = (): Option<string> => ({
  kind: 'text',
  read: (text, { option }) => {
    const found = zoneNamed(text);
    if (found !== null) return found;
    const near = fold(text).length < NEAR ? [] : zonesLike(text, []).slice(0, NEAR);
    throw new MemberError('zone-unknown', { option, read: text, near });
  },
  complete: (typed, { club, say }) =>
    zonesLike(typed, first(club.zone, LIKELY_ZONES)).map((name) => ({
      label: say.club.zoneChoice({ zone: name }),
      value: name,
    })),
});

/** 1 to 12. */
export const month = (): Option<number> => ({
  kind: 'text',
  read: (text, { option }: Reader) => {
    const typed = plainLetters(fold(text)).replace(/\.$/, '');
    const found = /^\d{1,2}$/.test(typed) ? Number(typed) : monthNamed(typed);
    if (found === null || found < 1 || found > 12)
      throw new MemberError('month-unreadable', { option, read: text });
    return found;
  },
  complete: (typed, { say }) =>
    matching(
      typed,
      Array.from({ length: 12 }, (_, at) => ({
        label: say.club.month({ month: at + 1 }),
        value: String(at + 1),
      })),
    ),
});

/** BCP 47: how days and numbers are written, and the language where there are words in it. */
export const locale = (): Option<string> => ({
  kind: 'text',
  read: (text, { option }) => {
    const found = knownLocale(text.trim().replaceAll('_', '-'));
    if (found === null) throw new MemberError('locale-unknown', { option, read: text });
    return found;
  },
  complete: (typed, { club, say, today, locale: reader }) =>
    matching(
      typed,
      first(club.locale, LIKELY_LOCALES).map((one) => ({
        label: say.club.localeChoice({ locale: one, name: localeName(one, reader), day: today }),
        value: one,
      })),
    ),
});
