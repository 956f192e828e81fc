/** Names of cuts and grades within a sentence. */
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';

export { gradeName } from './grade-names.ts';

/** `whole packer brisket`, `Denver roast`: a name that starts with a proper name keeps its capital. */
export const inside = (key: CutKey): string => {
  const { name, proper } = cutOf(key);
  return proper ? name : name.charAt(0).toLowerCase() + name.slice(1);
};
