/** What groups of pieces are called, by their keys. */
import { readBand } from '../club/size-band.ts';
import type { ApartBy, FoundGroup } from '../findings/averages.ts';
import type { Bone, CutKey, GradeKey, StyleKey, Wrap } from '../trade/keys.ts';
import { isOwnCut } from '../trade/own-cuts.ts';
import type { Speech } from '../words/index.ts';

/** People are numbers here: the small print says who, where a name is no text. */
export function namesOf(
  by: ApartBy,
  groups: readonly FoundGroup[],
  say: Speech,
): (key: string | null) => string {
  const places = new Map(groups.map(({ figures: { key } }, place) => [key, say.show.count(place + 1)]));
  const named: Record<ApartBy, (key: string) => string> = {
    cut: (key) => say.trade.cut(key as CutKey),
    grade: (key) => say.trade.grade(key as GradeKey),
    style: (key) => say.trade.style(key as StyleKey),
    bone: (key) => say.trade.bone(key as Bone),
    wrap: (key) => say.trade.wrap(key as Wrap),
    size: (key) => {
      const band = readBand(key);
      return band === null ? key : say.trade.band(band);
    },
    shop: (key) => key,
    month: (key) => key,
    member: (key) => places.get(key) ?? '',
  };
  return (key) => (key === null ? say.trade.notTold() : named[by](key));
}

/**
 * The club's own words: they are drawn here, and never sent out.
 * @example isOwnWord('shop', 'Market hall') // true
 */
export const isOwnWord = (by: ApartBy, key: string | null): boolean =>
  by === 'shop' || (by === 'cut' && key !== null && isOwnCut(key));
