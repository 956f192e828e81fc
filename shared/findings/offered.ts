/** What is expected of pieces that are on offer: what comes off, what gets to the plate, and what others came to. */
import { type Columns, columnsAt, eachOf, rowsOf } from '../club/columns.ts';
import { narrowed } from '../club/narrow.ts';
import { rangeOf } from '../club/shares.ts';
import { sift } from '../club/sift.ts';
import { jointExpectation } from '../statistics/joint-expectation.ts';
import { type Expectation, usualWeights } from '../statistics/prediction.ts';
import { lostShares } from '../statistics/rows.ts';
import { thumbExpectation } from '../statistics/rule-of-thumb.ts';
import { shrinkGrades } from '../statistics/shrunk-grades.ts';
import { cutOf } from '../trade/cuts.ts';
import { plateOverLeft } from '../trade/kept.ts';
import type { Bone, CutKey, GradeKey, StyleKey } from '../trade/keys.ts';
import { THUMB_SPREAD, thumbOf } from '../trade/thumbs.ts';
import { usualOf } from './debate.ts';
import type { About, Looked } from './finding.ts';
import { memberModel } from './member-model.ts';

/** Of one cut, by what comes off; `also` is `plate`. */
export interface AskedOffered extends About {
  cut: CutKey;
  measure: 'trim';
  also: 'plate';
  /** Of each label of this cut; null where it says none. */
  grades: readonly (GradeKey | null)[];
  member: string;
  style: StyleKey | null;
  bone: Bone | null;
  /** In which prices are compared. */
  currency: string;
}

/** Whose pieces or figures something is told by, the surest first. */
export type Source = 'member' | 'club' | 'book' | 'rule of thumb';

/** What is expected of pieces on offer. Shares are fractions, weights grams, money in the asked currency. */
export interface FoundOffered {
  /** What comes off raw is told; or, where a club weighs only the plate, what does not get there. */
  stage: 'trim' | 'plate';
  /** On the logit scale of that share, one a grade asked for; and what they share of the doubt, row by row. */
  each: readonly Expectation[];
  shared: readonly number[];
  source: Exclude<Source, 'book'>;
  pieces: number;
  members: number;
  /** Of those, the asker's own. */
  own: number;
  waiting: number;
  /** What gets to the plate of what is left to cook. 1 where the share is that of the plate. */
  kept: { share: number; source: Exclude<Source, 'member'>; pieces: number; members: number };
  /** Grams between which the pieces usually are; null without any. */
  usual: { low: number; high: number } | null;
  /** The least and the greatest share among the pieces; null without any. */
  posted: { low: number; high: number } | null;
  /** Whether pieces trimmed so, or sold so, are enough to be looked at by themselves. */
  narrowed: { style: boolean; bone: boolean };
  /** By the piece, the newest last: what a kilo of the club's last ten came to on the plate. */
  lastCosts: readonly number[];
  /** What a kilo of it usually costs; null where nobody told. */
  pricePerKg: number | null;
}

/** The cut's yield at the board is the club's own from so many pieces on. */
const FEWEST_KEPT = 3;
const LAST = 10;

/** By the club's own pieces where they are enough for a model, drawn towards who asks; else by a rule of thumb. */
export function findOffered({ plain, also }: Looked, asked: AskedOffered): FoundOffered {
  const trim = sift(plain);
  const plate = sift(also ?? columnsAt(plain, []));
  const kept = keptOf(trim.counted, plate.counted, asked.cut);
  // Nobody trims it raw: then what they serve says it all.
  const whole = trim.counted.count < trim.untouched.count || trim.counted.count === 0;
  const stage = whole && plate.counted.count > 0 ? 'plate' : 'trim';
  const counted = stage === 'plate' ? plate.counted : trim.counted;
  const looked = narrowedTo(counted, asked);
  const found = expected(looked.rows, stage, asked);
  const factor =
    stage === 'plate'
      ? { share: 1, source: 'club' as const, pieces: plate.counted.count, members: found.members }
      : kept;
  return {
    stage,
    ...found,
    waiting: (stage === 'plate' ? plate : trim).waiting.count,
    kept: factor,
    usual: usualWeights(eachOf(looked.rows).base),
    posted: rangeOf(lostShares(rowsOf(looked.rows))),
    narrowed: looked.narrowed,
    lastCosts: lastCosts(looked.rows, asked.currency, factor.share),
    pricePerKg: usualOf(counted, asked.currency).pricePerKg,
  };
}

/** Only pieces trimmed and sold alike, as far as they are enough for a model. */
function narrowedTo(counted: Columns, { style, bone }: AskedOffered) {
  let rows = counted;
  const kept = { style: false, bone: false };
  const filters = [
    ['bone', bone],
    ['style', style],
  ] as const;
  for (const [name, value] of filters) {
    if (value === null) continue;
    const some = narrowed(rows, { [name]: value });
    if (memberModel(some).model === null) continue;
    rows = some;
    kept[name] = true;
  }
  return { rows, narrowed: kept };
}

function expected(
  counted: Columns,
  stage: FoundOffered['stage'],
  { cut, grades, member }: AskedOffered,
): Pick<FoundOffered, 'each' | 'shared' | 'source' | 'pieces' | 'members' | 'own'> {
  const { model, rows, members, counts, grades: levels } = memberModel(counted);
  const code = members.indexOf(member);
  const about = { pieces: rows.count, members: members.length, own: counts[code] ?? 0 };
  if (model === null) {
    const { trim, plate } = thumbOf(cutOf(cut));
    const rule = { share: stage === 'trim' ? trim : 1 - plate, ...THUMB_SPREAD };
    const expectation = thumbExpectation(rule, rowsOf(rows));
    const size = grades.length;
    return {
      ...about,
      each: grades.map(() => expectation),
      shared: Array.from({ length: size * size }, () => expectation.sharedVariance),
      source: 'rule of thumb',
    };
  }
  const known = grades.map((grade) => {
    const level = grade === null ? -1 : levels.indexOf(grade);
    return level < 0 ? null : level;
  });
  const { each, shared } = jointExpectation(shrinkGrades(model), known, code < 0 ? null : code);
  return { ...about, each, shared: [...shared], source: each.some((one) => one.known) ? 'member' : 'club' };
}

/** Of the pieces that were weighed raw and on the plate, by the average piece; else the book's, or the rule of thumb's. */
function keptOf(trim: Columns, plate: Columns, cut: CutKey): FoundOffered['kept'] {
  const left = new Map<number, number>();
  for (let row = 0; row < trim.count; row++) {
    if (trim.approximate[row] === 0)
      left.set(trim.seq[row] ?? -1, (trim.base[row] ?? 0) - (trim.loss[row] ?? 0));
  }
  let [sum, pieces] = [0, 0];
  const members = new Set<string>();
  for (let row = 0; row < plate.count; row++) {
    const raw = left.get(plate.seq[row] ?? -1);
    if (raw === undefined) continue;
    sum += ((plate.base[row] ?? 0) - (plate.loss[row] ?? 0)) / raw;
    pieces += 1;
    members.add(plate.member.values[plate.member.codes[row] ?? -1] ?? '');
  }
  if (pieces >= FEWEST_KEPT) return { share: sum / pieces, source: 'club', pieces, members: members.size };
  const { share, source } = plateOverLeft(cutOf(cut));
  return { share, source, pieces: 0, members: 0 };
}

const pricedIn = ({ currency, pricePerKg, count }: Columns, code: string): number[] => {
  const own = currency.values.indexOf(code);
  return Array.from({ length: count }, (_, row) => row).filter(
    (row) => currency.codes[row] === own && own >= 0 && !Number.isNaN(pricePerKg[row]),
  );
};

function lastCosts(rows: Columns, currency: string, kept: number): number[] {
  return pricedIn(rows, currency)
    .slice(-LAST)
    .map((row) => {
      const base = rows.base[row] ?? 1;
      return ((rows.pricePerKg[row] ?? 0) * base) / ((base - (rows.loss[row] ?? 0)) * kept);
    });
}
