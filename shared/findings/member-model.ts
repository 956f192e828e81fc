/** The model of a cut's shares by member: what boards and comparisons are read from. */
import { type Columns, columnsAt, type Factor, placesWhere, rowsFor } from '../club/columns.ts';
import { shareShown } from '../club/group.ts';
import { combination, pointAt } from '../statistics/combination.ts';
import { studentT } from '../statistics/distributions.ts';
import { codesAt, type Rows, rowsAt } from '../statistics/rows.ts';
import { costModel, type ShareModel, shareAt, shareModel } from '../statistics/share-model.ts';
import { ALL_GRADES } from '../trade/grades.ts';
import type { Averaged } from '../yield/measure.ts';

/** What a model of members still needs: any piece, a third person, more pieces a person, or pieces that differ. */
export type Missing = 'pieces' | 'people' | 'more-pieces' | 'variation';

/** The pieces of a cut by member, and the model of their shares where there is one. */
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
 * Models the counted pieces of one cut, by their shares or, for `cost`, by what a kilo on the plate cost. In which order
 * they were posted, and what their members are called, changes no digit: sums in floating point depend on their order, so
 * rows are taken by weight.
 */
export function memberModel(counted: Columns, measure: Averaged = 'trim'): MemberModel {
  const { approximate } = counted;
  const rows = columnsAt(
    counted,
    placesWhere(counted, (row) => approximate[row] === 0),
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
  const isPresent = new Uint8Array(values.length);
  for (const code of codes) if (code >= 0) isPresent[code] = 1;
  const sorted = values
    .map((value, code) => ({ value, code, key: by(value) }))
    .filter(({ code }) => isPresent[code] === 1)
    .sort((one, other) => (one.key < other.key ? -1 : 1));
  const place = new Int32Array(values.length);
  sorted.forEach(({ code }, at) => {
    place[code] = at;
  });
  return { codes: codes.map((code) => place[code] ?? -1), values: sorted.map(({ value }) => value) };
}

/** Of one length, so that ranks sort as text. */
const rankOf = (grade: string): string => {
  const rank = GRADES.indexOf(grade);
  return String(rank < 0 ? GRADES.length : rank).padStart(3, '0');
};

/** Rows from the lightest to the heaviest; those of one weight by their loss, then by their grade. */
function placesByWeight({ count, base, loss }: Rows, grades: Int32Array): Int32Array {
  // Numbers by themselves sort many times as fast as rows by their numbers.
  const sorted = new Float64Array(base).sort();
  const places = new Int32Array(count);
  const taken = new Int32Array(count);
  for (let row = 0; row < count; row++) {
    const first = firstOf(sorted, base[row] ?? 0);
    places[first + (taken[first] ?? 0)] = row;
    taken[first] = (taken[first] ?? 0) + 1;
  }
  const apart = (of: ArrayLike<number>, one: number, other: number) => (of[one] ?? 0) - (of[other] ?? 0);
  for (let first = 0; first < count; first += taken[first] ?? 1) {
    if (taken[first] === 1) continue;
    places
      .subarray(first, first + (taken[first] ?? 1))
      .sort((one, other) => apart(loss, one, other) || apart(grades, one, other));
  }
  return places;
}

/** The first place of a value among sorted ones. */
function firstOf(sorted: Float64Array, value: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((sorted[middle] ?? value) < value) low = middle + 1;
    else high = middle;
  }
  return low;
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
