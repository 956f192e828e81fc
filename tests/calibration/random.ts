/** Chance that comes out the same each time: what is simulated can be repeated from its seed. */

export interface Chance {
  /** 32 bits, as a whole number from 0. */
  bits(): number;
  /** Evenly from 0 to below 1, in steps of 2^-53. */
  even(): number;
  /** Of mean 0 and standard deviation 1. */
  normal(): number;
}

/**
 * The generator xoshiro128** (Blackman & Vigna, "Scrambled Linear Pseudorandom Number Generators", ACM Transactions on
 * Mathematical Software 47:36, 2021). Normal values by Box & Muller (Annals of Mathematical Statistics 29:610, 1958).
 * @param state four numbers of 32 bits, not all 0
 */
export function chanceFrom(state: readonly [number, number, number, number]): Chance {
  let [one, two, three, four] = state;
  const bits = () => {
    const result = Math.imul(turned(Math.imul(two, 5), 7), 9) >>> 0;
    const shifted = two << 9;
    three ^= one;
    four ^= two;
    two ^= three;
    one ^= four;
    three ^= shifted;
    four = turned(four, 11);
    return result;
  };
  const even = () => ((bits() >>> 5) * 2 ** 26 + (bits() >>> 6)) / 2 ** 53;
  const normal = () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
  return { bits, even, normal };
}

/**
 * A generator of its own for each of many draws, so that it does not matter who draws them, or in which order. The seeds
 * are spread over the state by the finisher of MurmurHash3 (Appleby, public domain).
 */
export function chanceOf(seed: number, name: string, draw: number): Chance {
  let mixed = seed | 0;
  for (const value of [draw, ...Array.from(name, (letter) => letter.codePointAt(0) ?? 0)])
    mixed = finished(mixed ^ finished(value + 0x9e3779b9));
  const next = () => {
    mixed = (mixed + 0x9e3779b9) | 0;
    return finished(mixed);
  };
  return chanceFrom([next(), next(), next(), next() | 1]);
}

const turned = (value: number, by: number): number => (value << by) | (value >>> (32 - by));

function finished(value: number): number {
  let mixed = value;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}
