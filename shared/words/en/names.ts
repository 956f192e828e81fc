/** Names of cuts and grades within a sentence. */
import { hasLeft } from '../../club/member.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import { small } from './capitals.ts';

export { gradeName } from './grade-names.ts';

/** `whole packer brisket`, `Denver roast`: a name that starts with a proper name keeps its capital. */
export const inside = (key: CutKey): string => {
  const { name, proper } = cutOf(key);
  return proper ? name : small(name);
};

/** A member in a sentence: a mention, which calls nobody; without one for whoever left. */
export const person = (id: string): string => (hasLeft(id) ? 'someone who left' : `<@${id}>`);
