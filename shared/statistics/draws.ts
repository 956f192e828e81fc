/** Numbers that look like chance and come out the same each time, for sums that have no closed form. */

/**
 * Standard normal values one after another: the generator SplitMix (Steele, Lea & Flood, "Fast Splittable Pseudorandom
 * Number Generators", OOPSLA 2014) with 32 bits and the finisher of MurmurHash3 (Appleby, public domain), made normal
 * by Box & Muller (Annals of Mathematical Statistics 29:610, 1958).
 * @param seed any whole number
 * @example normalDraws(1)() === normalDraws(1)() // true
 */
export function normalDraws(seed: number): () => number {
  let state = seed | 0;
  const even = () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    // Never 0, whose logarithm is not there.
    return (((mixed ^ (mixed >>> 16)) >>> 0) + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
}
