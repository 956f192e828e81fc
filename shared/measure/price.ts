/** Reading a price as a member types it. */
import { Ask, MemberError, type Reading } from '../errors.ts';
import { type Currency, currencyOf } from './currency.ts';
import { fold, LONGEST_TEXT } from './fold.ts';
import type { Price, PriceBasis, PriceReader } from './money.ts';
import { readNumber } from './number.ts';
import { exactText, type Ratio, times } from './ratio.ts';
import type { Typed } from './terms.ts';
import { UNIT_WORDS } from './unit-words.ts';

/** In units of the currency. */
const HIGHEST = 1_000_000n;
const MOST_DECIMALS = 4;

const IN_ALL =
  'for all|in all|all in|in total|total|altogether|insgesamt|gesamt|zusammen|en total|en todo|au total';
const NUMBER = /\d+(?:[.,']\d+)*|[.,]\d+/;
/** What may stand first, before a currency: `@`, `for`, `in all`; not `all`, which is a currency's code. */
const LEAD = new RegExp(`^(?:(@|at\\b|zu\\b)|(${IN_ALL}|for|für|por|pour)(?!\\p{L})) ?`, 'u');
const ENDS_IN_ALL = new RegExp(`(?:^|[^\\p{L}])(${IN_ALL}|all)\\.?$`, 'u');
/** `/lb`, `per 100 g`, `das Kilo`, `el kilo`. */
const ENDS_PER =
  /(?:\/|(?:^|(?<=[^\p{L}]))(?:per|pro|je|an?|the|das|der|die|ein|el|la|por|le|par|au)(?![\p{L}])) ?(?:(\d+) ?)?([#℔]|\p{L}+)\.?$/u;
const ENDS_UNIT = / ([#℔]|\p{L}+)\.?$/u;

/** What an amount can be for, and how many of that basis the typed one makes (a metric pound: 2 to the kilo). */
interface Per {
  readonly basis: PriceBasis;
  readonly times: bigint;
}

const IN_ALL_PER: Per = { basis: 'all', times: 1n };
const BASIS: Readonly<Record<string, readonly Per[]>> = {
  lb: [{ basis: 'lb', times: 1n }],
  oz: [{ basis: 'oz', times: 1n }],
  kg: [{ basis: 'kg', times: 1n }],
  'some-pound': [
    { basis: 'kg', times: 2n },
    { basis: 'lb', times: 1n },
  ],
};
const PER_100_G: readonly Per[] = [{ basis: '100g', times: 1n }];

interface Ending {
  /** What stands between the amount and the basis: a currency, or nothing. */
  readonly rest: string;
  readonly per: readonly Per[] | null;
}

function perUnit(count: string | undefined, unit: string, typed: Typed): readonly Per[] {
  const kind = UNIT_WORDS.get(unit)?.kind;
  const known =
    kind === 'g' && count === '100' ? PER_100_G : (count ?? '1') === '1' ? BASIS[kind ?? ''] : undefined;
  if (known) return known;
  throw new MemberError('price-basis', { ...typed, unit: count === undefined ? unit : `${count} ${unit}` });
}

/** Takes the basis off the end of what follows the amount. `4.99 lb` is a weight, but `$4.99 lb` is per pound. */
function endingOf(after: string, own: Currency, currencyFirst: boolean, typed: Typed): Ending {
  const all = after === 'all' && own === 'ALL' ? null : ENDS_IN_ALL.exec(after);
  if (all) return { rest: after.slice(0, after.lastIndexOf(all[1] ?? '')).trim(), per: [IN_ALL_PER] };
  const per = ENDS_PER.exec(after);
  if (per) return { rest: after.slice(0, per.index).trim(), per: perUnit(per[1], per[2] ?? '', typed) };
  const bare = ENDS_UNIT.exec(` ${after}`);
  const unit = bare?.[1] ?? '';
  const rest = ` ${after}`.slice(0, bare?.index).trim();
  if (bare && UNIT_WORDS.has(unit) && (currencyFirst || rest !== ''))
    return { rest, per: perUnit(undefined, unit, typed) };
  return { rest: after, per: null };
}

/** The currency written before the amount or after it; the club's own if there is none. */
function currencyFor(
  written: readonly string[],
  own: Currency,
  typed: Typed,
): { currency: Currency; code: string } {
  const found = new Set<Currency>();
  for (const text of written.filter((one) => one !== '')) {
    const currency = currencyOf(text, own);
    if (currency === null) throw new MemberError('price-unreadable', { ...typed, part: text });
    if (currency === 'sign') throw new MemberError('price-sign', { ...typed, sign: text });
    found.add(currency);
  }
  const [currency = own, other] = found;
  if (other !== undefined) throw new MemberError('price-two-currencies', typed);
  return { currency, code: found.size === 0 ? '' : `${currency} ` };
}

interface Possible {
  readonly price: Price;
  readonly value: Ratio;
}

/** Every price that one amount and one basis make; ten-thousandths that are no whole number are left out. */
function possible(
  raw: string,
  pers: readonly Per[],
  currency: Currency,
  code: string,
  typed: Typed,
): Possible[] {
  const numbers = readNumber(raw, '.', true);
  if (numbers.length === 0) throw new MemberError('price-unreadable', { ...typed, part: raw });
  if (numbers.some(({ decimals }) => decimals.length > MOST_DECIMALS))
    throw new MemberError('price-decimals', typed);
  const values = numbers.map(({ value }) => value).filter(({ n, d }) => n <= HIGHEST * d);
  if (values.length === 0) throw new MemberError('price-too-high', typed);
  return values.flatMap((value) =>
    pers.map((per) => {
      const whole = times(value, per.times);
      const end = per.basis === 'all' ? ' in all' : per.basis === '100g' ? '/100 g' : `/${per.basis}`;
      const text = `${code}${exactText(whole, '.')}${end}`;
      return {
        value,
        price: { amount: Number((whole.n * 10_000n) / whole.d), basis: per.basis, currency, text },
      };
    }),
  );
}

function question(all: readonly Possible[], bare: boolean, typed: Typed): Ask {
  const readings = all.map(
    ({ price }): Reading => ({
      label: { code: 'price', values: { price } },
      set: { [typed.option]: price.text },
    }),
  );
  const oneAmount = new Set(all.map(({ value: { n, d } }) => `${n}/${d}`)).size === 1;
  return new Ask(bare && oneAmount ? 'per-weight-or-in-all' : 'which-price', typed, readings);
}

/** The parts of a folded text: what leads, what stands before the amount, the amount, what follows it. */
function split(folded: string, typed: Typed) {
  const lead = LEAD.exec(folded);
  const text = lead ? folded.slice(lead[0].length) : folded;
  const number = NUMBER.exec(text);
  if (!number) throw new MemberError('price-unreadable', { ...typed, part: folded });
  const before = text.slice(0, number.index).trim();
  if (folded.startsWith('-') || /^-|-$/.test(before)) throw new MemberError('price-negative', typed);
  const after = text.slice(number.index + number[0].length).trim();
  return {
    lead: lead?.[1] ? ('each' as const) : lead ? ('all' as const) : null,
    before,
    raw: number[0],
    after,
  };
}

/**
 * Reads a price of 0 to 1,000,000 with at most four decimals: `4.99/lb`, `4,99 €/kg`, `1.29/100 g`,
 * `@ 4.99` (per the reader's unit), `77.96 in all`, `for 77.96`.
 *
 * Throws an {@link Ask} for a bare amount, for three digits after a mark, for a Pfund or a libra, and a
 * {@link MemberError} for what is no price; nothing else.
 *
 * @example readPrice('$4.99/lb', reader) // { amount: 49_900, basis: 'lb', currency: 'USD', text: '$4.99/lb' }
 */
export function readPrice(text: string, reader: PriceReader): Price {
  const read = text.trim();
  const typed = { option: reader.option, read };
  const folded = read.length > LONGEST_TEXT ? '' : fold(read);
  const { lead, before, raw, after } = split(folded, typed);
  const { rest, per } = endingOf(after, reader.currency, before !== '', typed);
  if (lead === 'each' && per?.[0] === IN_ALL_PER)
    throw new MemberError('price-unreadable', { ...typed, part: after });
  const { currency, code } = currencyFor([before, rest], reader.currency, typed);
  const own = BASIS[reader.units] ?? [];
  const bare = per === null && lead === null;
  const pers = per ?? (lead === 'each' ? own : lead === 'all' ? [IN_ALL_PER] : [...own, IN_ALL_PER]);
  const all = possible(raw, pers, currency, code, typed);
  const [first] = all;
  if (first && (all.length === 1 || (bare && first.value.n === 0n))) {
    return { ...first.price, basis: bare ? 'all' : first.price.basis, text: read };
  }
  throw question(all, bare, typed);
}
