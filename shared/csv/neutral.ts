/** Weights, prices and saved parts written so that every reader reads the same, exactly. */
import { Ask, MemberError } from '../errors.ts';
import { type Currency, type Price, type PriceBasis, readPrice } from '../measure/money.ts';
import { exactText, ratio } from '../measure/ratio.ts';
import { shows } from '../measure/show.ts';
import { NANOGRAMS, type Nanograms } from '../measure/units.ts';
import { readWeight, type WeightReader } from '../measure/weight.ts';
import type { Saved } from '../yield/piece.ts';
import { readSaved } from '../yield/saved.ts';
import { startsFormula } from './defuse.ts';
import { mayBeThousands } from './survey.ts';

/** Readers who agree on nothing but what is written: with another decimal mark and other units, and without pans. */
const READERS = (['.', ','] as const).map(
  (decimalMark): Omit<WeightReader, 'option'> => ({
    units: null,
    decimals: null,
    decimalMark,
    pans: new Map(),
  }),
);
/** For what has no price. */
const ANY_CURRENCY = 'USD' as Currency;
const PRICE_UNITS = ['lb', 'kg'] as const;

/** The result of reading, or null where the text can't be read or could be read two ways. */
function tryRead<Value>(read: () => Value): Value | null {
  try {
    return read();
  } catch (problem) {
    if (problem instanceof Ask || problem instanceof MemberError) return null;
    throw problem;
  }
}

/** A cell starts no formula, is one line, and holds no number that the marks of other rows could turn. */
const fitsCell = (text: string): boolean =>
  text !== '' && !startsFormula(text) && !/[\r\n\t]/.test(text) && !mayBeThousands(text);

function readsAs(text: string, weight: Nanograms, approximate: boolean): boolean {
  // Without a mark there is nothing that they could differ about.
  const readers = /[.,]/.test(text) ? READERS : READERS.slice(0, 1);
  return (
    fitsCell(text) &&
    readers.every((reader) => {
      const read = tryRead(() => readWeight(text, { option: 'bought', ...reader }));
      return read !== null && read.weight === weight && read.approximate === approximate;
    })
  );
}

const SHOW = shows({ locale: 'en-US', units: 'lb' });
const FORMS = ['lb', 'lb-oz', 'kg', 'g', 'oz'] as const;

/**
 * A weight as it was typed, where everybody reads that as just this weight; else written anew, exactly.
 * @example weightText('14.8', lb(14.8), false) // '14.80 lb'
 * @example weightText('2 lb 9.4 oz', ..., false) // '2 lb 9.4 oz'
 */
export function weightText(typed: string | undefined, weight: Nanograms, approximate: boolean): string {
  const text = typed?.trim() ?? '';
  if (readsAs(text, weight, approximate)) return text;
  const about = approximate ? 'about ' : '';
  const exact = `${about}${exactText(ratio(BigInt(weight), BigInt(NANOGRAMS.g)), '.')} g`;
  const short = FORMS.map((form) => `${about}${SHOW.weightIn(weight, form)}`);
  return short.find((one) => readsAs(one, weight, approximate)) ?? exact;
}

const BASES: Readonly<Record<PriceBasis, string>> = {
  lb: '/lb',
  oz: '/oz',
  kg: '/kg',
  '100g': '/100 g',
  all: ' in all',
};

const samePrice = (one: Price | null, other: Price | null): boolean =>
  one === null || other === null
    ? one === other
    : one.amount === other.amount && one.basis === other.basis && one.currency === other.currency;

/** Two decimals where one would do: `4.90`. */
const amountOf = ({ amount }: Price): string =>
  exactText(ratio(BigInt(amount), 10_000n), '.').replace(/(\.\d)$/, '$10');

/**
 * A price as it was typed, where everybody reads that as just this price beside its currency; else written anew.
 * @example priceText({ amount: 49_900, basis: 'lb', currency: 'USD', text: '@ 4.99' }) // '4.99/lb'
 */
export function priceText(price: Price): string {
  const { text, currency } = price;
  const same =
    fitsCell(text) &&
    PRICE_UNITS.every((units) =>
      samePrice(
        tryRead(() => readPrice(text, { option: 'price', units, currency })),
        price,
      ),
    );
  return same ? text : `${amountOf(price)}${BASES[price.basis]}`;
}

/**
 * What was saved as it was typed, where everybody reads that the same beside this currency; else written anew.
 * @example savedText(undefined, [{ name: 'tallow', weight: lb(1), price: null }], 'USD') // 'tallow 1.00 lb'
 */
export function savedText(
  typed: string | undefined,
  saved: readonly Saved[],
  currency: Currency | null,
): string {
  const text = typed?.trim() ?? '';
  const same =
    fitsCell(text) &&
    READERS.every((reader) =>
      PRICE_UNITS.every((units) => {
        const option = 'saved';
        const prices = { option, units, currency: currency ?? ANY_CURRENCY };
        const read = tryRead(() => readSaved(text, { option, ...reader }, prices));
        return read !== null && sameSaved(read, saved);
      }),
    );
  return same ? text : saved.map((part) => partText(part, currency)).join(', ');
}

const sameSaved = (one: readonly Saved[], other: readonly Saved[]): boolean =>
  one.length === other.length &&
  one.every((part, at) => {
    const like = other[at];
    return (
      like !== undefined &&
      part.name === like.name &&
      part.weight === like.weight &&
      samePrice(part.price, like.price)
    );
  });

function partText({ name, weight, price }: Saved, currency: Currency | null): string {
  const weighed = `${name} ${weightText(undefined, weight, false)}`;
  if (price === null) return weighed;
  const code = price.currency === currency ? '' : `${price.currency} `;
  return `${weighed} @ ${code}${amountOf(price)}${BASES[price.basis]}`;
}
