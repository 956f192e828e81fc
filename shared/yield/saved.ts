/** Reading what was saved of the trimmings: `tallow 1 lb 2 oz @3, grind 12 oz`. */
import { Ask, MemberError } from '../errors.ts';
import { type PriceReader, readPrice } from '../measure/money.ts';
import { placedIn } from '../measure/placed.ts';
import { readWeight, type WeightReader } from '../measure/weight.ts';
import type { Saved } from './piece.ts';

/** The most parts that are kept of one piece. */
export const MOST_SAVED = 8;
const PART =
  /^(?<name>\p{Letter}[\p{Letter}\s'-]{0,29}?)(?:\s*:\s*|\s+)(?<weight>(?:about\s+|~)?[-−]?[\d½¼¾.].*?)(?:\s*(?<price>@.*|\bfor\s.*))?$/u;

/**
 * The texts of the parts. A comma between digits is a decimal mark, not the end of a part.
 * @example partTexts('fat 1,5 kg, bone 1 kg') // ['fat 1,5 kg', 'bone 1 kg']
 */
export const partTexts = (text: string): string[] => text.trim().split(/\s*(?:;|,(?!\d)|\n)\s*/);

/**
 * @throws MemberError or Ask, as weights and prices do, and for a part without a name or weight.
 * @example readSaved('tallow 1 lb 2 oz @3, grind 12 oz', ...).map((part) => part.name) // ['tallow', 'grind']
 */
export function readSaved(text: string, weights: WeightReader, prices: PriceReader): readonly Saved[] {
  const { option } = weights;
  const parts = partTexts(text);
  if (parts.length > MOST_SAVED) throw new MemberError('saved-unreadable', { option, read: text });
  return parts.map((part) => {
    const read = PART.exec(part)?.groups;
    if (read?.name === undefined || read.weight === undefined) {
      throw new MemberError('saved-unreadable', { option, read: text });
    }
    const { name, weight, price } = read;
    return {
      name: name.replace(/\s+/g, ' '),
      weight: within(text, part, weight, () => readWeight(weight, weights).weight),
      price: price === undefined ? null : within(text, part, price, () => readPrice(price, prices)),
    };
  });
}

/** A reading of a weight or price stands in its part, and the part among the others. */
function within<Value>(text: string, part: string, asked: string, read: () => Value): Value {
  try {
    return read();
  } catch (problem) {
    if (!(problem instanceof Ask)) throw problem;
    const at = text.indexOf(part) + part.lastIndexOf(asked);
    throw placedIn(problem, (taken) => text.slice(0, at) + taken + text.slice(at + asked.length));
  }
}
