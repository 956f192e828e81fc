/** Reading what was saved of the trimmings: `tallow 1 lb 2 oz @3, grind 12 oz`. */
import { Ask, MemberError, type Reading } from '../errors.ts';
import { type PriceReader, readPrice } from '../measure/money.ts';
import { readWeight, type WeightReader } from '../measure/weight.ts';
import type { Saved } from './piece.ts';

/** The most parts that are kept of one piece. */
const MOST = 8;
const PART =
  /^(?<name>\p{Letter}[\p{Letter}\s'-]{0,29}?)(?:\s*:\s*|\s+)(?<weight>(?:about\s+|~)?[-−]?[\d½¼¾.].*?)(?:\s*(?<price>@.*|\bfor\s.*))?$/u;

/** A comma between digits is a decimal mark, not the end of a part. */
export const partTexts = (text: string): string[] => text.trim().split(/\s*(?:;|,(?!\d)|\n)\s*/);

/**
 * @throws MemberError or Ask, as weights and prices do, and for a part without a name or weight.
 * @example readSaved('tallow 1 lb 2 oz @3, grind 12 oz', ...).map((part) => part.name) // ['tallow', 'grind']
 */
export function readSaved(text: string, weights: WeightReader, prices: PriceReader): readonly Saved[] {
  const { option } = weights;
  const parts = partTexts(text);
  if (parts.length > MOST) throw new MemberError('saved-unreadable', { option, read: text });
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
    const placed = (taken: string) => text.slice(0, at) + taken + text.slice(at + asked.length);
    const readings = problem.readings.map((reading: Reading) => ({
      ...reading,
      set: Object.fromEntries(
        Object.entries(reading.set).map(([option, taken]) => [
          option,
          typeof taken === 'string' ? placed(taken) : taken,
        ]),
      ),
    }));
    throw new Ask(problem.code, problem.values, readings);
  }
}
