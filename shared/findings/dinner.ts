/** What gets to the plate of pieces that one cook buys: for knowing how much is enough. */
import type { Columns } from '../club/columns.ts';
import { sift } from '../club/sift.ts';
import { grams, type Nanograms } from '../measure/units.ts';
import { type Expectation, expectation } from '../statistics/prediction.ts';
import { cutOf } from '../trade/cuts.ts';
import { plateOverBought } from '../trade/kept.ts';
import type { CutKey } from '../trade/keys.ts';
import { usualOf } from './debate.ts';
import type { About, Looked } from './finding.ts';
import { memberModel } from './member-model.ts';
import type { Source } from './offered.ts';

/** Of one cut, by what does not get to the plate; `also` is `trim`. */
export interface AskedDinner extends About {
  cut: CutKey;
  measure: 'plate';
  also: 'trim';
  /** Who buys and cooks. */
  member: string;
  /** In which it is told what it usually costs. */
  currency: string;
}

/** What is known of how much gets to the plate. Shares are fractions of what is bought. */
export interface FoundDinner {
  /** On the logit scale of the share that does not get to the plate; null where the pieces are too few. */
  expected: Expectation | null;
  /** Where they are: what a table or a rule of thumb says, and how far single pieces are from it. */
  instead: { share: number; deviation: number | null };
  source: Source;
  /** Pieces with a plate that were looked at, and whose they are. */
  pieces: number;
  members: number;
  /** Of those, the asker's own. */
  own: number;
  waiting: number;
  /** The usual piece: its weight, and what a kilo of it costs; the price null where nobody told one. */
  usualGrams: number;
  pricePerKg: number | null;
  /** Whether that weight is the club's own. */
  weighed: boolean;
}

/** Fewer pieces, or of fewer people, tell nothing of what is enough. */
const FEWEST = { pieces: 8, members: 3 };
/** What usually comes off is the club's own from so many pieces on. */
const FEWEST_TRIMMED = 3;

/**
 * From eight pieces of three people on the club's own, drawn towards who cooks; before that a table or a rule of
 * thumb.
 */
export function findDinner({ plain, also }: Looked, asked: AskedDinner): FoundDinner {
  const { cut, member, currency } = asked;
  const plate = sift(plain);
  const { model, rows, members, counts } = memberModel(plate.counted);
  const code = members.indexOf(member);
  const enough = rows.count >= FEWEST.pieces && members.length >= FEWEST.members;
  const trim = also == null ? null : sift(also).counted;
  const usual = firstTold([rows, plate.counted, also ?? null], currency);
  const { low, high } = cutOf(cut).usual;
  const instead = plateOverBought(cutOf(cut), trim === null ? null : usualTrim(trim));
  const about = { grade: null, member: code < 0 ? null : code };
  const expected = enough && model !== null ? expectation(model, about) : null;
  return {
    expected,
    instead: { share: instead.share, deviation: instead.deviation },
    source: expected === null ? instead.source : expected.known ? 'member' : 'club',
    pieces: rows.count,
    members: members.length,
    own: counts[code] ?? 0,
    waiting: plate.waiting.count,
    usualGrams: usual.grams ?? grams(((low + high) / 2) as Nanograms),
    pricePerKg: usual.pricePerKg,
    weighed: usual.grams !== null,
  };
}

/** What the first of these tell of a usual piece: its weight and its price. */
function firstTold(columns: readonly (Columns | null)[], currency: string) {
  const told = columns.flatMap((one) => (one === null ? [] : [usualOf(one, currency)]));
  return {
    grams: told.find((one) => one.grams !== null)?.grams ?? null,
    pricePerKg: told.find(({ pricePerKg }) => pricePerKg !== null)?.pricePerKg ?? null,
  };
}

function usualTrim({ count, base, loss }: Columns): number | null {
  if (count < FEWEST_TRIMMED) return null;
  let sum = 0;
  for (let row = 0; row < count; row++) sum += (loss[row] ?? 0) / (base[row] ?? 1);
  return sum / count;
}
