/** Currencies and the signs they are written with. */
import { fold } from './fold.ts';
import { knownLocale } from './locale.ts';

/** An ISO 4217 code, upper case: `USD`. */
export type Currency = string & { readonly code: 'ISO 4217' };

/** Every currency, by code in the order of the alphabet. */
export const CURRENCIES: readonly Currency[] = Intl.supportedValuesOf('currency') as Currency[];
const CODES: ReadonlySet<string> = new Set(CURRENCIES);
const EURO = 'EUR' as Currency;

/** Signs that stand for one currency everywhere. */
const OWN_SIGNS: ReadonlyMap<string, Currency> = new Map(
  Object.entries({
    '€': 'EUR',
    euro: 'EUR',
    euros: 'EUR',
    us$: 'USD',
    c$: 'CAD',
    ca$: 'CAD',
    a$: 'AUD',
    au$: 'AUD',
    nz$: 'NZD',
    mx$: 'MXN',
    hk$: 'HKD',
    r$: 'BRL',
  }).map(([sign, code]) => [sign, code as Currency]),
);

/** Whether `code` is a currency's ISO 4217 code in capitals: `USD` is, `usd` and `XYZ` are not. */
export const isCurrency = (code: string): code is Currency => CODES.has(code);

const formats = new Map<Currency, { sign: string; digits: number }>();

function formatOf(currency: Currency): { sign: string; digits: number } {
  const known = formats.get(currency);
  if (known) return known;
  if (!isCurrency(currency)) return { sign: currency, digits: 2 };
  const format = new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
  });
  const sign = format.formatToParts(1).find(({ type }) => type === 'currency')?.value ?? currency;
  const found = {
    sign: sign.replace(/\s/g, ' '),
    digits: format.resolvedOptions().maximumFractionDigits ?? 2,
  };
  formats.set(currency, found);
  return found;
}

/**
 * What a currency is called in a language.
 * @param locale BCP 47; English for any other text
 * @example currencyName('USD' as Currency, 'de') // 'US-Dollar'
 */
export const currencyName = (currency: Currency, locale: string): string =>
  new Intl.DisplayNames(knownLocale(locale) ?? 'en', { type: 'currency' }).of(currency) ?? currency;

/** The sign a currency is written with at home: `$` for USD and for CAD, `zł` for PLN, `CHF` for CHF. */
export const signOf = (currency: Currency): string => formatOf(currency).sign;

/** The digits that a currency is printed with: 2 for USD, 0 for JPY. */
export const currencyDigits = (currency: Currency): number => formatOf(currency).digits;

/**
 * The currency that a folded sign or code stands for in a club whose own is `own`: `$` is the club's own if
 * that is written so, `€` is always EUR, any ISO code is itself. `'sign'` for a sign of other currencies than
 * the club's, null for no currency at all.
 *
 * @example currencyOf('$', 'CAD') // 'CAD'; currencyOf('$', 'GBP') is 'sign'
 */
export function currencyOf(written: string, own: Currency): Currency | 'sign' | null {
  if (written === fold(signOf(own))) return own;
  const known = OWN_SIGNS.get(written);
  if (known !== undefined) return known;
  const code = written.toUpperCase();
  if (isCurrency(code)) return code;
  return /\p{Sc}/u.test(written) || written === 'kr' ? 'sign' : null;
}

/** How `currency` is written in a club whose own is `own`: its sign if that can mean no other, else its code. */
export const writtenAs = (currency: Currency, own: Currency): string =>
  currency === own || currency === EURO ? signOf(currency) : currency;
