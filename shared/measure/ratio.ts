/** Exact fractions of whole numbers: what weights and prices are computed in before they are rounded, once. */
import type { DecimalMark } from './units.ts';

/** `n / d`, exactly; `d` is above zero. */
export interface Ratio {
  readonly n: bigint;
  readonly d: bigint;
}

/** `n / d` as a {@link Ratio}: `ratio(3n, 4n)` is three quarters. */
export const ratio = (n: bigint, d = 1n): Ratio => ({ n, d });

/** `a + b`, exactly: 1/2 + 1/3 is 5/6. */
export const add = (a: Ratio, b: Ratio): Ratio =>
  a.d === b.d ? { n: a.n + b.n, d: a.d } : { n: a.n * b.d + b.n * a.d, d: a.d * b.d };

/** `a * k`, exactly: 3/4 times 16 is 48/4. */
export const times = (a: Ratio, k: bigint): Ratio => ({ n: a.n * k, d: a.d });

/** Whether `a` is below the whole number `k`: 47/3 is below 16. */
export const below = (a: Ratio, k: bigint): boolean => a.n < a.d * k;

/** The greatest common divisor of two whole numbers, never negative: of 12 and 18 it is 6. */
export function greatestDivisor(a: bigint, b: bigint): bigint {
  let [x, y] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}

/** In lowest terms: 48/4 is 12/1, 0/7 is 0/1. */
export function lowest({ n, d }: Ratio): Ratio {
  const common = greatestDivisor(n, d);
  return { n: n / common, d: d / common };
}

/** To the nearest whole number, halves away from zero: 5/2 is 3, -5/2 is -3, 7/3 is 2. */
export function rounded({ n, d }: Ratio): bigint {
  const size = n < 0n ? -n : n;
  const whole = (2n * size + d) / (2n * d);
  return n < 0n ? -whole : whole;
}

/** How often `factor` divides `value`, and what is left of it: 80 is 2 four times, and 5. */
function strip(value: bigint, factor: bigint): { count: number; rest: bigint } {
  let [count, rest] = [0, value];
  while (rest % factor === 0n) {
    rest /= factor;
    count += 1;
  }
  return { count, rest };
}

/**
 * A whole number of `10 ** -digits` written with a decimal mark: 1483n with 2 digits is `14.83`.
 * Negative numbers get a `-`.
 */
export function fixedText(value: bigint, digits: number, mark: DecimalMark): string {
  const sign = value < 0n ? '-' : '';
  const text = (value < 0n ? -value : value).toString().padStart(digits + 1, '0');
  return digits === 0 ? sign + text : `${sign}${text.slice(0, -digits)}${mark}${text.slice(-digits)}`;
}

/**
 * A value of zero or more written so that it reads back exactly and one way only: a decimal where there is
 * one (`2.9`), else a fraction (`14 1/3`). Three decimals get a zero (`1.2340`): `1.234` may be a thousand.
 */
export function exactText(value: Ratio, mark: DecimalMark): string {
  const { n, d } = lowest(value);
  const twos = strip(d, 2n);
  const fives = strip(twos.rest, 5n);
  if (fives.rest !== 1n) {
    const whole = n / d;
    return `${whole === 0n ? '' : `${whole} `}${n % d}/${d}`;
  }
  const exact = Math.max(twos.count, fives.count);
  const digits = exact === 3 ? 4 : exact;
  return fixedText((n * 10n ** BigInt(digits)) / d, digits, mark);
}
