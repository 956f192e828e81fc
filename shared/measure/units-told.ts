/** Which system a line is written in: whoever writes `trim:2:9.4` beside a bare `bought:14.83` means pounds. */
import type { Units } from './units.ts';

/** Marks of each system, as words or signs after a number. `2:9.4` is pounds and ounces. */
const MARKS: Readonly<Record<Units, RegExp>> = {
  lb: /(?:[\d½¼¾]|\/)\s*(?:lbs?|pounds?|#|oz|ounces?)(?![\p{Letter}])|\d\s*:\s*\d|\ba pound\b/iu,
  kg: /(?:[\d½¼¾]|\/)\s*(?:kgs?|kilos?|kilograms?|gr?|grams?)(?![\p{Letter}])|\ba kilo\b/iu,
};

/**
 * The one system that the texts of a line name; null where they name none, or both.
 * @example unitsTold(['14.83', '2:9.4', '4.99/lb']) // 'lb'
 */
export function unitsTold(texts: readonly string[]): Units | null {
  const named = (['lb', 'kg'] as const).filter((units) => texts.some((text) => MARKS[units].test(text)));
  return named.length === 1 ? (named[0] ?? null) : null;
}
