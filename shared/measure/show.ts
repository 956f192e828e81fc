/** Printing: what a member reads. What is printed here reads back to the same print. */
import { type Currency, currencyDigits, writtenAs } from './currency.ts';
import { type CalendarDay, dayTime } from './day.ts';
import { localeOf } from './locale.ts';
import { type Money, type Price, roundHalfUp } from './money.ts';
import { fixedText, lowest, ratio, rounded } from './ratio.ts';
import { WHOLE_NANOGRAMS } from './unit-words.ts';
import type { DecimalMark, Nanograms, Units, WeightUnit } from './units.ts';

export { currencyDigits } from './currency.ts';
export { decimalMark } from './locale.ts';

/** The form in which figures are printed for one reader: a club, or one member. */
export interface Form {
  /** BCP 47: decides the decimal mark, the order of a date, where the currency sign stands. `en-US` */
  locale: string;
  units: Units;
  /** The club's own currency, which its sign (`$`) means; others are printed with their code. Without it, none is foreign. */
  currency?: Currency;
}

/** How everything is printed for one reader. */
export interface Show {
  readonly form: Form;
  /** In the reader's units: `2 lb 9.4 oz`, `1.17 kg`, `720 g`. */
  weight(weight: Nanograms): string;
  /** In both systems, so that a slip is seen: `2 lb 9.4 oz (2.59 lb, 1.17 kg)`, `1.17 kg (2 lb 9.4 oz)`. */
  echo(weight: Nanograms): string;
  /** In one given form: `14.83 lb`, `14 lb 13.3 oz`, `6.73 kg`, `6727 g`, `41.4 oz`. */
  weightIn(weight: Nanograms, form: 'lb' | 'lb-oz' | 'kg' | 'g' | 'oz'): string;
  /** A fraction as per cent: 0.1742 -> `17.4 %`. */
  share(fraction: number): string;
  /** Rounded half up to the currency's digits: `$35.62`. */
  money(money: Money): string;
  /** The amount as it was typed, and what it is for: `$4.99/lb`, `$77.96 in all`. Reads back. */
  price(price: Price): string;
  /** `Jul 4, 2026`, `4 Jul 2026`, `4. Juli 2026`: as the locale has it, or ISO where we could not read that back. */
  day(day: CalendarDay): string;
  /** With one digit after the mark: `2.1`. */
  oneDecimal(number: number): string;
  /** With two digits after the mark: `1.67`. */
  twoDecimals(number: number): string;
  /** A whole number, no grouping. */
  count(count: number): string;
}

const IN_ALL: Readonly<Record<string, string>> = { en: 'in all', de: 'insgesamt', es: 'en total' };

/** `weight` in so many parts of a unit, to the nearest: in tenths of an ounce, in hundredths of a pound. */
const inParts = (weight: Nanograms, unit: WeightUnit, parts: bigint): bigint =>
  rounded(ratio(BigInt(weight) * parts, WHOLE_NANOGRAMS[unit]));

/** Rounded to tenths of an ounce first, so that no print ever says 16 oz. */
function poundsAndOunces(weight: Nanograms, mark: DecimalMark): string {
  const tenths = inParts(weight, 'oz', 10n);
  const size = tenths < 0n ? -tenths : tenths;
  const [pounds, rest] = [size / 160n, size % 160n];
  const ounces = rest % 10n === 0n ? fixedText(rest / 10n, 0, mark) : fixedText(rest, 1, mark);
  const parts = [
    ...(pounds > 0n ? [`${pounds} lb`] : []),
    ...(rest > 0n || pounds === 0n ? [`${ounces} oz`] : []),
  ];
  return `${tenths < 0n ? '-' : ''}${parts.join(' ')}`;
}

const WEIGHT_FORMS: Readonly<
  Record<Parameters<Show['weightIn']>[1], (weight: Nanograms, mark: DecimalMark) => string>
> = {
  lb: (weight, mark) => `${fixedText(inParts(weight, 'lb', 100n), 2, mark)} lb`,
  'lb-oz': poundsAndOunces,
  kg: (weight, mark) => `${fixedText(inParts(weight, 'kg', 100n), 2, mark)} kg`,
  g: (weight, mark) => `${fixedText(inParts(weight, 'g', 1n), 0, mark)} g`,
  oz: (weight, mark) => `${fixedText(inParts(weight, 'oz', 10n), 1, mark)} oz`,
};

/** Grams up to 999, kilos from there on, decided on what would be printed. */
function metric(weight: Nanograms, mark: DecimalMark): string {
  const wholeGrams = inParts(weight, 'g', 1n);
  return WEIGHT_FORMS[wholeGrams > -1000n && wholeGrams < 1000n ? 'g' : 'kg'](weight, mark);
}

function echo(weight: Nanograms, units: Units, mark: DecimalMark): string {
  if (units === 'kg') return `${metric(weight, mark)} (${poundsAndOunces(weight, mark)})`;
  const pounds = WEIGHT_FORMS.lb(weight, mark);
  return `${poundsAndOunces(weight, mark)} (${pounds}, ${metric(weight, mark)})`;
}

/** A plain number to so many decimals, halves away from zero. */
function fixed(value: number, digits: number, mark: DecimalMark): string {
  const parts = Math.sign(value) * Math.round(Math.abs(value) * 10 ** digits);
  return fixedText(BigInt(parts), digits, mark);
}

const tenth = (value: number, mark: DecimalMark): string => fixed(value, 1, mark);

/** An amount with its currency: `$4.99`, `4,99 €`, `CAD 4.99`. */
function withSign(amount: string, sign: string, first: boolean): string {
  if (!first) return `${amount} ${sign}`;
  const minus = amount.startsWith('-') ? '-' : '';
  return `${minus}${sign}${/\p{Sc}$/u.test(sign) ? '' : ' '}${amount.slice(minus.length)}`;
}

/** The amount of a price with as few decimals as hold it; never three, which might be thousands. */
function amountText({ amount, currency }: Price, mark: DecimalMark): string {
  const { n, d } = lowest(ratio(BigInt(amount), 10_000n));
  const digits =
    [currencyDigits(currency), 2].find((count) => count < 3 && 10n ** BigInt(count) % d === 0n) ?? 4;
  return fixedText((n * 10n ** BigInt(digits)) / d, digits, mark);
}

/**
 * The printing of one form. Any text will do as a locale; what Intl does not know is printed as `en-US`.
 * Weights may be below zero (`-3 oz`); numbers must be finite.
 *
 * @example shows({ locale: 'de', units: 'kg' }).weight(1_173_670_257_375) // '1,17 kg'
 */
export function shows(form: Form): Show {
  const { mark, signFirst, language, days } = localeOf(form.locale);
  const inAll = IN_ALL[language] ?? 'in all';
  const sign = (currency: Currency) => writtenAs(currency, form.currency ?? currency);
  return {
    form,
    weight: (weight) => (form.units === 'lb' ? poundsAndOunces : metric)(weight, mark),
    echo: (weight) => echo(weight, form.units, mark),
    weightIn: (weight, as) => WEIGHT_FORMS[as](weight, mark),
    share: (fraction) => `${tenth(fraction * 100, mark)} %`,
    money: (money) =>
      withSign(
        fixedText(roundHalfUp(money), currencyDigits(money.currency), mark),
        sign(money.currency),
        signFirst,
      ),
    price: (price) => {
      const amount = withSign(amountText(price, mark), sign(price.currency), signFirst);
      return price.basis === 'all'
        ? `${amount} ${inAll}`
        : `${amount}/${price.basis === '100g' ? '100 g' : price.basis}`;
    },
    day: (day) => days()?.format(dayTime(day)).replace(/\s/g, ' ') ?? day,
    oneDecimal: (number) => tenth(number, mark),
    twoDecimals: (number) => fixed(number, 2, mark),
    count: (count) => fixedText(BigInt(Math.round(count)), 0, mark),
  };
}
