/** Prices and money: exact integer arithmetic, rounded half up once, when printed. */
import { type Currency, currencyDigits } from './currency.ts';
import { add, lowest, type Ratio, ratio, rounded, times } from './ratio.ts';
import { WHOLE_NANOGRAMS } from './unit-words.ts';
import { NANOGRAMS, type Nanograms, type Units, type WeightUnit } from './units.ts';

export type { Currency } from './currency.ts';
export { readPrice } from './price.ts';

/** What a price is for: a weight, or the whole purchase. */
export type PriceBasis = 'lb' | 'oz' | 'kg' | '100g' | 'all';

/** A price as typed. */
export interface Price {
  /** In ten-thousandths of the currency's unit: 4.99 is 49,900. */
  amount: number;
  basis: PriceBasis;
  currency: Currency;
  /** As typed, trimmed. */
  text: string;
}

/** An exact amount of money: numerator / denominator units of the currency (35.615 is 35615n / 1000n). */
export interface Money {
  numerator: bigint;
  denominator: bigint;
  currency: Currency;
}

/** What reading a price depends on. */
export interface PriceReader {
  option: string;
  /** The unit a bare `@ 4.99` is per. */
  units: Units;
  /** The club's own currency: what `$` means. */
  currency: Currency;
}

/** The ten-thousandths that a price's amount is counted in. */
const AMOUNT_PARTS = 10_000n;

const BASIS_NANOGRAMS: Readonly<Record<Exclude<PriceBasis, 'all'>, bigint>> = {
  lb: WHOLE_NANOGRAMS.lb,
  oz: WHOLE_NANOGRAMS.oz,
  kg: WHOLE_NANOGRAMS.kg,
  '100g': 100n * WHOLE_NANOGRAMS.g,
};

const exact = ({ numerator, denominator }: Money): Ratio => ratio(numerator, denominator);

function moneyOf(value: Ratio, currency: Currency): Money {
  const { n, d } = lowest(value);
  return { numerator: n, denominator: d, currency };
}

/**
 * What a price comes to for a kilo, as a plain number: for figures and averages, not for bills.
 * @param bought what it was paid for, above 0
 * @example pricePerKg({ amount: 49_900, basis: 'lb' }, bought) // 11.0010668...
 */
export function pricePerKg({ amount, basis }: Pick<Price, 'amount' | 'basis'>, bought: Nanograms): number {
  const nanograms = basis === 'all' ? bought : Number(BASIS_NANOGRAMS[basis]);
  return (amount / Number(AMOUNT_PARTS)) * (NANOGRAMS.kg / nanograms);
}

/**
 * An amount that was computed as a plain number, to the ten-thousandth: an estimate, no bill.
 * @example aboutMoney(1.4, usd) // 14000n / 10000n
 */
export const aboutMoney = (amount: number, currency: Currency): Money => ({
  numerator: BigInt(Math.round(amount * Number(AMOUNT_PARTS))),
  denominator: AMOUNT_PARTS,
  currency,
});

/** One currency for both, or a bug: nothing here knows rates of exchange. */
function sameCurrency(a: Money, b: Money): Currency {
  if (a.currency !== b.currency) throw new RangeError(`${a.currency} and ${b.currency} don't add up`);
  return a.currency;
}

/** What was paid for `weight` at `price`, exactly: 8 lb 8 oz at 4.19/lb is 35.615. Throws nothing. */
export function paid(price: Price, weight: Nanograms): Money {
  const amount = ratio(BigInt(price.amount), AMOUNT_PARTS);
  if (price.basis === 'all') return moneyOf(amount, price.currency);
  const per = BASIS_NANOGRAMS[price.basis];
  return moneyOf({ n: amount.n * BigInt(weight), d: amount.d * per }, price.currency);
}

/** `a + b`: 4.60 + 6.10 is 10.70. Throws a RangeError for two currencies. */
export const addMoney = (a: Money, b: Money): Money => moneyOf(add(exact(a), exact(b)), sameCurrency(a, b));

/** `a - b`, which may be below zero: 79.80 - 13 is 66.80. Throws a RangeError for two currencies. */
export const subtractMoney = (a: Money, b: Money): Money =>
  moneyOf(add(exact(a), times(exact(b), -1n)), sameCurrency(a, b));

/** What one `unit` costs if `weight` costs `money`, or null for no weight: 66.80 for 6 lb is 11.1333... a pound. */
export function perWeight(money: Money, weight: Nanograms, unit: WeightUnit): Money | null {
  if (weight === 0) return null;
  const of = { n: money.numerator * WHOLE_NANOGRAMS[unit], d: money.denominator * BigInt(weight) };
  return moneyOf(of, money.currency);
}

/** What `weight` costs if one `unit` costs `each`: 5 oz at 12.00 a pound is 3.75. */
export const forWeight = (each: Money, weight: Nanograms, unit: WeightUnit): Money =>
  moneyOf({ n: each.numerator * BigInt(weight), d: each.denominator * WHOLE_NANOGRAMS[unit] }, each.currency);

/** `money` times `to` / `from`, exactly: 3.48 at 6.65 is 3.7416... at 7.15. Null if `from` is nothing. Throws a RangeError for two currencies. */
export function inProportion(money: Money, from: Money, to: Money): Money | null {
  sameCurrency(from, to);
  if (from.numerator === 0n) return null;
  const n = money.numerator * to.numerator * from.denominator;
  return moneyOf({ n, d: money.denominator * to.denominator * from.numerator }, money.currency);
}

/** `a / b` as a plain number, or null if `b` is nothing: 11.13 over 6.65 is 1.67. Throws a RangeError for two currencies. */
export function moneyRatio(a: Money, b: Money): number | null {
  sameCurrency(a, b);
  return b.numerator === 0n ? null : moneyNumber(a) / moneyNumber(b);
}

/** As a plain number of the currency's units, for `figures`: 35.615. Within one part in 10 ** 15. */
export function moneyNumber({ numerator, denominator }: Money): number {
  const whole = numerator / denominator;
  const rest = ((numerator % denominator) * 10n ** 18n) / denominator;
  return Number(whole) + Number(rest) / 1e18;
}

/**
 * In the currency's smallest unit, halves away from zero: 35.615 USD is 3562n cents, 1.595 is 160n.
 * Halves round up in unit prices: Price Marking Order (NI) 2004, art. 13.
 */
export function roundHalfUp(money: Money): bigint {
  const digits = BigInt(currencyDigits(money.currency));
  return rounded(times(exact(money), 10n ** digits));
}
