/** A member beside the rest of the club, for them alone. */
import type { Reply } from '../chat/reply.ts';
import type { FoundAverages } from '../findings/averages.ts';
import { averagesOf } from '../pictures/averages.ts';
import type { Picture } from '../pictures/picture.ts';
import { isOwnCut } from '../trade/own-cuts.ts';
import type { Speech } from '../words/index.ts';
import {
  type Compared,
  type Comparison,
  figuresOf,
  measuresOf,
  needed,
  onOneLine,
  rulesOf,
  toldOf,
} from './comparison.ts';

/** @param pieces of the first measure that is compared, with the member's own among them */
export function besideTheRest(comparison: Comparison, pieces: FoundAverages, say: Speech): Reply {
  const { cut, currency, found } = comparison;
  const measures = measuresOf(comparison);
  const [first = 'trim', second] = measures;
  const lines = [
    onOneLine(found[first], currency, say) ?? needed(found[first], say),
    ...(second === undefined
      ? []
      : [
          say.compare.line({ measure: second, ...toldOf(found[second]) }),
          secondLine(comparison, first, second, say),
        ]),
  ];
  return {
    answer: say.compare.answer({ cut, measure: first, ...toldOf(found[first]) }),
    lines: lines.filter((line) => line !== null),
    table: tableOf(comparison, measures, say),
    ...pictureOf(comparison, first, pieces, say),
    small: rulesOf(comparison, measures, say),
    figures: figuresOf(comparison),
  };
}

/** The same need is told once. */
function secondLine(
  { found, currency }: Comparison,
  first: Compared,
  second: Compared,
  say: Speech,
): string | null {
  const need = needed(found[second], say);
  return onOneLine(found[second], currency, say) ?? (need === needed(found[first], say) ? null : need);
}

function tableOf({ found }: Comparison, measures: readonly Compared[], say: Speech): string[][] {
  const { head, row, cell, clubCell } = say.compare;
  return [
    [head.measure(), head.you(), head.club()],
    ...measures.map((measure) => {
      const { own, club } = found[measure];
      return [
        row[measure](),
        cell({ share: own.level?.share ?? null, count: own.pieces }),
        clubCell({ share: club?.share ?? null }),
      ];
    }),
  ];
}

/** One piece needs no picture. */
const FEWEST_DRAWN = 2;

function pictureOf(
  { cut }: Comparison,
  measure: Compared,
  { whole }: FoundAverages,
  say: Speech,
): { picture?: Picture } {
  const { figures, shares, mine } = whole;
  if (figures.pieces < FEWEST_DRAWN) return {};
  const name = say.trade.cut(cut);
  // A cut of the club's own is the club's own word: drawn on this machine only.
  const own = isOwnCut(cut);
  const groups = [{ name, own, shares, mine, figures }];
  const about = { about: name, mean: figures.meanShare, groups };
  return { picture: averagesOf({ measure, ...about }, say.pictures.averages) };
}
