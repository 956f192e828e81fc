/** What is drawn of averages: the groups that are told, or all of a cut. */
import type { AskedAverages, FoundAverages, FoundGroup } from '../findings/averages.ts';
import { averagesOf } from '../pictures/averages.ts';
import type { Group, Grouped } from '../pictures/averages-rows.ts';
import type { Picture } from '../pictures/picture.ts';
import type { Speech } from '../words/index.ts';
import { isOwnWord } from './average-names.ts';
import { toldRanges } from './averages-told.ts';

/** One piece needs no picture: the answer says its share. */
const FEWEST_DRAWN = 2;

/** The picture of the groups that are told, or of the whole where none is. */
export function averagesPicture(
  { measure, cut, by }: AskedAverages,
  { whole }: FoundAverages,
  groups: readonly FoundGroup[],
  nameOf: (key: string | null) => string,
  say: Speech,
): { picture?: Picture } {
  if (whole.figures.pieces < FEWEST_DRAWN) return {};
  const words = say.pictures.averages;
  const rowOf = (group: FoundGroup, name: string, own: boolean): Group => {
    const { figures, shares, mine } = group;
    return { name, own, shares, mine, figures, ...toldRanges(measure, figures).mean };
  };
  const grouped: Omit<Grouped, 'measure'> =
    cut !== null && groups.length === 0
      ? {
          about: say.trade.cut(cut),
          mean: whole.figures.meanShare,
          groups: [rowOf(whole, say.trade.cut(cut), isOwnWord('cut', cut))],
        }
      : {
          about: cut === null ? words.byCut() : words.ofCutBy({ cut, by }),
          mean: cut === null ? null : whole.figures.meanShare,
          groups: groups.map((group) =>
            rowOf(group, nameOf(group.figures.key), isOwnWord(by, group.figures.key)),
          ),
        };
  return { picture: averagesOf({ measure, ...grouped }, words) };
}
