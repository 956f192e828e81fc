/** Names of cuts within a sentence. */
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';

/** `whole packer brisket`: the catalogue's names start with a common word. */
export const inside = (key: CutKey): string => {
  const { name } = cutOf(key);
  return name.charAt(0).toLowerCase() + name.slice(1);
};
