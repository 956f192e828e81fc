/** What published tables say, in one line of small print beside a club's own figures. */
import type { AskedAverages } from '../findings/averages.ts';
import { besideBook, type ToldOfPieces } from '../trade/beside-book.ts';
import { cutOf } from '../trade/cuts.ts';
import type { Bone, CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import type { Measure } from '../yield/measure.ts';

/** The line of a cut and a measure, or none where no table has them. */
export function bookLine(cut: CutKey, measure: Measure, told: ToldOfPieces, say: Speech): string[] {
  const found = besideBook(cutOf(cut), measure, told);
  if (found === null) return [];
  const { figure, share, unlike } = found;
  const { cooked, fatInches, bone, source } = figure;
  const of = { measure, share, cooked, fatInches, bone, source };
  return [unlike === null ? say.book.comparable(of) : say.book.notComparable({ ...of, unlike })];
}

/** Beside averages of a cut: of the fat and the bone that were asked for. No table tells a cost. */
export const bookSmall = ({ cut, measure, filter }: AskedAverages, say: Speech): string[] =>
  cut === null || measure === 'cost'
    ? []
    : bookLine(
        cut,
        measure,
        { style: filter.style ?? null, bone: (filter.bone ?? null) as Bone | null },
        say,
      );
