/** What a new club is taken to be like, from the locale its server is set to, until somebody says otherwise. */
import { languageOf } from '../measure/locale.ts';
import type { Currency } from '../measure/money.ts';
import type { Units } from '../measure/units.ts';
import { own } from '../own.ts';
import type { Club } from './club.ts';

interface Habits {
  currency: string;
  units: Units;
  zone: string;
  /** ISO 3166 */
  country: string;
}

const US: Habits = { currency: 'USD', units: 'lb', zone: 'America/Chicago', country: 'US' };

const metric = (currency: string, zone: string, country: string): Habits => ({
  currency,
  units: 'kg',
  zone,
  country,
});

/** By locale, then by language: the likeliest of its countries. */
const HABITS: Readonly<Record<string, Habits>> = {
  'en-US': US,
  'en-GB': metric('GBP', 'Europe/London', 'GB'),
  'es-419': metric('MXN', 'America/Mexico_City', 'MX'),
  'pt-BR': metric('BRL', 'America/Sao_Paulo', 'BR'),
  'zh-TW': metric('TWD', 'Asia/Taipei', 'TW'),
  bg: metric('EUR', 'Europe/Sofia', 'BG'),
  cs: metric('CZK', 'Europe/Prague', 'CZ'),
  da: metric('DKK', 'Europe/Copenhagen', 'DK'),
  de: metric('EUR', 'Europe/Berlin', 'DE'),
  el: metric('EUR', 'Europe/Athens', 'GR'),
  en: US,
  es: metric('EUR', 'Europe/Madrid', 'ES'),
  fi: metric('EUR', 'Europe/Helsinki', 'FI'),
  fr: metric('EUR', 'Europe/Paris', 'FR'),
  hi: metric('INR', 'Asia/Kolkata', 'IN'),
  hr: metric('EUR', 'Europe/Zagreb', 'HR'),
  hu: metric('HUF', 'Europe/Budapest', 'HU'),
  id: metric('IDR', 'Asia/Jakarta', 'ID'),
  it: metric('EUR', 'Europe/Rome', 'IT'),
  ja: metric('JPY', 'Asia/Tokyo', 'JP'),
  ko: metric('KRW', 'Asia/Seoul', 'KR'),
  lt: metric('EUR', 'Europe/Vilnius', 'LT'),
  nl: metric('EUR', 'Europe/Amsterdam', 'NL'),
  no: metric('NOK', 'Europe/Oslo', 'NO'),
  pl: metric('PLN', 'Europe/Warsaw', 'PL'),
  ro: metric('RON', 'Europe/Bucharest', 'RO'),
  ru: metric('RUB', 'Europe/Moscow', 'RU'),
  sv: metric('SEK', 'Europe/Stockholm', 'SE'),
  th: metric('THB', 'Asia/Bangkok', 'TH'),
  tr: metric('TRY', 'Europe/Istanbul', 'TR'),
  uk: metric('UAH', 'Europe/Kyiv', 'UA'),
  vi: metric('VND', 'Asia/Ho_Chi_Minh', 'VN'),
  zh: metric('CNY', 'Asia/Shanghai', 'CN'),
};

/** What clubs are likeliest to have, the likeliest first: offered before all others. */
const likely = <Of extends keyof Habits>(what: Of): Habits[Of][] => [
  ...new Set(Object.values(HABITS).map((habits) => habits[what])),
];

/** ISO 4217. */
export const LIKELY_CURRENCIES = likely('currency') as Currency[];

/** IANA names. */
export const LIKELY_ZONES: readonly string[] = likely('zone');
/** BCP 47, as a server is set to: each has habits of its own. */
export const LIKELY_LOCALES: readonly string[] = Object.keys(HABITS).filter((locale) => locale !== 'en');

/** Two points of share, and scales off by 2 %: what findings care about until a club says otherwise. */
const MARGIN = 0.02;
const SCALE_ERROR = 0.02;

/**
 * A club as its locale suggests.
 * @example guessClub('7', 'de').currency // 'EUR'
 */
export function guessClub(id: string, locale: string): Club {
  const { currency, units, zone, country } = own(HABITS, locale) ?? own(HABITS, languageOf(locale)) ?? US;
  return {
    id,
    locale,
    currency: currency as Currency,
    units,
    zone,
    gradeCountry: country,
    margin: MARGIN,
    scaleError: SCALE_ERROR,
    seasonStart: 1,
    welcomedAt: null,
  };
}
