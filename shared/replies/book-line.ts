/** What published tables say, in one line of small print beside a club's own figures. */
import type { AskedAverages } from '../findings/averages.ts';
import { type BesideBook, besideBook, type ToldOfPieces } from '../trade/beside-book.ts';
import { cutOf } from '../trade/cuts.ts';
import type { Bone, CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import type { Measure } from '../yield/measure.ts';

function bookLine({ figure, share, unlike }: BesideBook, measure: Measure, say: Speech): string {
  const { cooked, fatInches, bone, source } = figure;
  const of = { measure, share, cooked, fatInches, bone, source };
  return unlike === null ? say.book.comparable(of) : say.book.notComparable({ ...of, unlike });
}

/** Beside averages of a cut: of the fat and the bone that were asked for. No table tells a cost. */
export function bookSmall({ cut, measure, filter }: AskedAverages, say: Speech): string[] {
  if (cut === null || measure === 'cost') return [];
  const bone = (filter.bone ?? null) as Bone | null;
  const found = besideBook(cutOf(cut), measure, { style: filter.style ?? null, bone });
  return found === null ? [] : [bookLine(found, measure, say)];
}

/**
 * On the card of a piece that came to this measure. Where the tables count something else of its cut than members do, that
 * would stand on every card of it: averages say so.
 */
export function bookOnCard(cut: CutKey, measure: Measure, told: ToldOfPieces, say: Speech): string[] {
  const found = besideBook(cutOf(cut), measure, told);
  return found === null || found.figure.notComparable !== null ? [] : [bookLine(found, measure, say)];
}
