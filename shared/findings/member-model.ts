/** The model of a cut's shares by member: what boards and comparisons are read from. */
import { columnsAt, placesWhere, rowsFor } from '../club/columns.ts';
import { shareShown } from '../club/group.ts';
import type { Columns, Factor } from '../club/store.ts';
import { combination, pointAt } from '../statistics/combination.ts';
import { studentT } from '../statistics/distributions.ts';
import { codesAt, type Rows, rowsAt } from '../statistics/rows.ts';
import { costModel, type ShareModel, shareAt, shareModel } from '../statistics/share-model.ts';
import { ALL_GRADES } from '../trade/grades.ts';
import type { Averaged } from '../yield/measure.ts';

/** What a model of members still needs: any piece, a third person, more pieces a person, or pieces that differ. */
export type Missing = 'pieces' | 'people' | 'more-pieces' | 'variation';

export interface MemberModel {
  /** Pieces that are no estimates, in posting order. */
  rows: Columns;
  /** By code: in the order of their ids. */
  members: readonly string[];
  /** By code. */
  counts: readonly number[];
  /** Keys by code: the low end of each scale first. */
  grades: readonly string[];
  /** Null where the pieces are too few, or too much alike. */
  model: ShareModel | null;
  /** Null where there is a model. */
  missing: Missing | null;
}

/** The low end of each scale first. */
const GRADES: readonly string[] = ALL_GRADES.toReversed();
/** The fewest people that a model tells apart, and how many more pieces than people it needs. */
const FEWEST_PEOPLE = 3;
const FEWEST_MORE = 3;

/**
 * Models the counted pieces of one cut, by their shares or, for `cost`, by what a kilo on the plate cost. In which order they were posted, and what their members are called, changes no
 * digit: sums in floating point depend on their order, so rows are taken by weight.
 */
export function memberModel(counted: Columns, measure: Averaged = 'trim'): MemberModel {
  const rows = columnsAt(
    counted,
    placesWhere(counted, (row) => counted.approximate[row] === 0),
  );
  const taken = rowsFor(rows, measure);
  const member = inOrder(rows.member, (id) => id);
  const grade = inOrder(rows.grade, (key) => `${rankOf(key)} ${key}`);
  const counts = member.values.map(() => 0);
  for (const code of member.codes) counts[code] = (counts[code] ?? 0) + 1;
  const places = placesByWeight(taken, grade.codes);
  const modelOf = measure === 'cost' ? costModel : shareModel;
  const model = modelOf(
    rowsAt({ ...taken, member: member.codes }, places),
    codesAt({ codes: grade.codes, levels: grade.values.length }, places),
  );
  return {
    rows,
    members: member.values,
    counts,
    grades: grade.values,
    model,
    missing: model === null ? missingOf(counts) : null,
  };
}

/** A factor of the values that rows have, coded in the order of what `by` makes of them. */
function inOrder({ codes, values }: Factor, by: (value: string) => string): Factor {
  const present = new Set(codes);
  const sorted = values
    .filter((_value, code) => present.has(code))
    .map((value) => ({ value, key: by(value) }))
    .sort((one, other) => (one.key < other.key ? -1 : 1))
    .map(({ value }) => value);
  const codeOf = new Map(sorted.map((value, code) => [value, code]));
  return { codes: codes.map((code) => codeOf.get(values[code] ?? '') ?? -1), values: sorted };
}

/** Of one length, so that ranks sort as text. */
const rankOf = (grade: string): string => {
  const rank = GRADES.indexOf(grade);
  return String(rank < 0 ? GRADES.length : rank).padStart(3, '0');
};

function placesByWeight({ count, base, loss }: Rows, grades: Int32Array): number[] {
  const places: number[] = [];
  for (let row = 0; row < count; row++) places.push(row);
  const apart = (of: ArrayLike<number>, one: number, other: number) => (of[one] ?? 0) - (of[other] ?? 0);
  return places.sort(
    (one, other) => apart(base, one, other) || apart(loss, one, other) || apart(grades, one, other),
  );
}

function missingOf(counts: readonly number[]): Missing {
  const pieces = counts.reduce((sum, count) => sum + count, 0);
  if (pieces === 0) return 'pieces';
  if (counts.length < FEWEST_PEOPLE) return 'people';
  return pieces - counts.length < FEWEST_MORE ? 'more-pieces' : 'variation';
}

/** What a member loses of a typical piece, drawn towards the club, and where it likely lies. */
export interface DrawnIn {
  share: number;
  low: number;
  high: number;
}

/** 19 times in 20. */
const LEVEL = 0.95;

/** A member's level; the whole club's for null. */
export function levelOf({ fit }: ShareModel, member: number | null): DrawnIn {
  const weights = member === null ? new Map<number, number>() : new Map([[member, 1]]);
  const { estimate, variance } = combination(fit, pointAt(fit), weights);
  const reach = studentT((1 + LEVEL) / 2, fit.members.size - 1) * Math.sqrt(variance);
  return { share: shareAt(estimate), low: shareAt(estimate - reach), high: shareAt(estimate + reach) };
}

/** The same as a member reads it: what is lost least is kept most, so the ends change places. */
export const asRead = (measure: Averaged, { share, low, high }: DrawnIn): DrawnIn =>
  measure === 'trim' || measure === 'cost'
    ? { share, low, high }
    : { share: shareShown(measure, share), low: shareShown(measure, high), high: shareShown(measure, low) };
