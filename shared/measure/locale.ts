/** What a locale decides about print, asked from Intl once a locale. */
import type { DecimalMark } from './units.ts';

/** How one locale prints. */
export interface Locale {
  /** `en`, `de`: the language alone. */
  readonly language: string;
  readonly mark: DecimalMark;
  /** Whether the sign of a currency stands before the amount. */
  readonly signFirst: boolean;
  /** The format of a day, or null for languages whose names of months are not read back. */
  days(): Intl.DateTimeFormat | null;
}

const TAG = /^([a-z]{2,3})(?:-([a-z]{4}))?(?:-([a-z]{2}|\d{3}))?(?:-|$)/i;
const FALLBACK = 'en-US';
const DAY_LANGUAGES = new Set(['en', 'de', 'es']);
/** Latin digits and the common calendar, whatever the locale has of its own: they are what is read back. */
const PLAIN = { numberingSystem: 'latn', calendar: 'gregory' } as const;
const DAY = { ...PLAIN, day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' } as const;
const MONEY = {
  numberingSystem: 'latn',
  style: 'currency',
  currency: 'USD',
  minimumFractionDigits: 2,
} as const;

/**
 * What stands before the first hyphen.
 * @example languageOf('de-AT') // 'de'
 */
export const languageOf = (locale: string): string => locale.split('-')[0] ?? '';

/**
 * The language, script and region of a locale that Intl knows, as they are spelled; null for any other text.
 * @example knownLocale('DE-at') // 'de-AT'
 */
export function knownLocale(locale: string): string | null {
  const [, language, script, region] = TAG.exec(locale) ?? [];
  if (language === undefined) return null;
  const tag = [language, script, region].filter((part) => part !== undefined).join('-');
  return Intl.NumberFormat.supportedLocalesOf([tag])[0] ?? null;
}

function ask(tag: string): Locale {
  const parts = new Intl.NumberFormat(tag, MONEY).formatToParts(0.5);
  const place = (kind: Intl.NumberFormatPartTypes) => parts.findIndex(({ type }) => type === kind);
  const language = languageOf(tag);
  let days: Intl.DateTimeFormat | null = null;
  return {
    language,
    mark: new Intl.NumberFormat(tag, PLAIN).format(0.5).includes(',') ? ',' : '.',
    signFirst: place('currency') < place('integer'),
    days: () => {
      if (DAY_LANGUAGES.has(language)) days ??= new Intl.DateTimeFormat(tag, DAY);
      return days;
    },
  };
}

/** By the text as it came: Intl takes its time to say which locale it is. Any text may come, so not all are kept. */
const MOST_KNOWN = 500;
const known = new Map<string, Locale>();

/** How `locale` (any text: a BCP 47 tag that Intl knows, or it is taken for `en-US`) prints. Throws nothing. */
export function localeOf(locale: string): Locale {
  const found = known.get(locale) ?? ask(knownLocale(locale) ?? FALLBACK);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(locale, found);
  return found;
}

/** How a locale writes decimals: `,` for `de`, `.` for `en-US` and for what Intl does not know. */
export const decimalMark = (locale: string): DecimalMark => localeOf(locale).mark;

/**
 * What the language of a locale is called in another.
 * @param locale one that `knownLocale` knows; `inLocale` any text: English where it is none
 * @example localeName('en-GB', 'de') // 'Englisch (Vereinigtes Königreich)'
 */
export const localeName = (locale: string, inLocale: string): string =>
  new Intl.DisplayNames(knownLocale(inLocale) ?? 'en', {
    type: 'language',
    languageDisplay: 'standard',
  }).of(locale) ?? locale;
