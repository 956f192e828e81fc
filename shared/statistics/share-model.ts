/** The random-intercept models of a cut's shares and costs: members who differ, and what grades add. */
import { pointAt } from './combination.ts';
import { at } from './matrix.ts';
import { type MixedSums, mixedSums } from './mixed-sums.ts';
import { fitTo, type RandomIntercept } from './random-intercept.ts';
import { byRow, type Codes, type Rows } from './rows.ts';
import { logitShare } from './screening.ts';

export interface ShareModel {
  /** Of ln(share / (1 - share)); of a cost, of ln(cost). */
  fit: RandomIntercept;
  /** The grade that has no column; null where the model has no grades. -1: not told. */
  reference: number | null;
  /** The grades with columns, in that order. */
  grades: readonly number[];
}

/** Less variation than this, of all or of what the columns leave of all, is none. */
const NO_VARIATION = 1e-12;
/** A column that varies less than this part within members does not vary there. */
const CONSTANT = 1e-10;
/** Fewer degrees of freedom within members tell nothing of single pieces. */
const FEWEST_DF = 3;

/**
 * Fits the shares of clean rows on the logit scale, with a column for each grade present but the most frequent one (of
 * equals the lower). Where the rows are too few for grades it does without; null where they are too few for any model:
 * 3 members, and 3 pieces more than members, are the least.
 * @param rows clean ones: 0 < loss < base
 * @param grade a code by row, -1 for not told, which is a level of its own
 * @example shareModel(clean, grades)?.fit.ratio // 1.173 in a club whose members differ as much as their pieces
 */
export function shareModel(rows: Rows, grade?: Codes): ShareModel | null {
  const { count, base, loss } = rows;
  return gradedModel(
    byRow(count, (row) => logitShare(base[row] ?? 0, loss[row] ?? 0)),
    rows,
    grade,
  );
}

/**
 * The same of costs, loss / base, on the scale of their logarithms: twice as dear is as far off as half as dear.
 * @param rows money of kilos, both above 0
 * @example costAt(costModel(rows)?.fit.coefficients[0] ?? 0) // 23.5, what a kilo costs of the typical piece
 */
export function costModel(rows: Rows, grade?: Codes): ShareModel | null {
  const { count, base, loss } = rows;
  return gradedModel(
    byRow(count, (row) => Math.log((loss[row] ?? 0) / (base[row] ?? 0))),
    rows,
    grade,
  );
}

function gradedModel(response: Float64Array, rows: Rows, grade?: Codes): ShareModel | null {
  if (!response.every(Number.isFinite)) return null;
  const observed = { count: rows.count, response, member: rows.member };
  const { reference, grades } = gradesOf(rows.count, grade);
  if (grades.length > 0) {
    const codes = grade?.codes ?? [];
    const columns = grades.map((level) => byRow(rows.count, (row) => Number(codes[row] === level)));
    const fit = usableFit(mixedSums({ ...observed, columns }));
    if (fit !== null) return { fit, reference, grades };
  }
  const fit = usableFit(mixedSums({ ...observed, columns: [] }));
  return fit && { fit, reference: null, grades: [] };
}

/**
 * Where a grade stands in the model's columns; the columns' means for one that is unknown or not in the model.
 * @example pointOf(model, null) // [1, 0, 0]
 */
export function pointOf({ fit, reference, grades }: ShareModel, grade: number | null): Float64Array {
  const known = grade !== null && (grade === reference || grades.includes(grade));
  return pointAt(fit, known ? grades.map((level) => Number(level === grade)) : undefined);
}

/** The share at a place on the logit scale. */
export const shareAt = (logit: number): number => 1 / (1 + Math.exp(-logit));

/** The cost at a place on the scale of logarithms. */
export const costAt = (logarithm: number): number => Math.exp(logarithm);

/** The levels present, lowest first and not told last; the most frequent one that was told is the reference. */
function gradesOf(count: number, grade: Codes | undefined): Pick<ShareModel, 'reference' | 'grades'> {
  if (grade === undefined) return { reference: null, grades: [] };
  const { codes, levels } = grade;
  // Of not told first, then by level.
  const counts = new Int32Array(levels + 1);
  for (let row = 0; row < count; row++) {
    const place = (codes[row] ?? 0) + 1;
    counts[place] = (counts[place] ?? 0) + 1;
  }
  const countOf = (level: number) => at(counts, level + 1);
  const present = [...Array.from({ length: levels }, (_, level) => level), -1].filter(
    (level) => countOf(level) > 0,
  );
  let reference: number | null = null;
  for (const level of present) {
    const more = reference === null || countOf(level) > countOf(reference);
    if (more && (level >= 0 || reference === null)) reference = level;
  }
  return { reference, grades: present.filter((level) => level !== reference) };
}

/** The fit, if there are members enough for the columns and noise enough to tell single pieces by. */
function usableFit(sums: MixedSums): RandomIntercept | null {
  const { width, count, members, totalSquares } = sums;
  const enough = members.size >= width + 2 && count - members.size - (width - 1) >= FEWEST_DF;
  if (!enough || !(totalSquares > NO_VARIATION)) return null;
  return leftWithin(sums) > NO_VARIATION * totalSquares ? fitTo(sums) : null;
}

/** The sum of squares that members' means and the columns leave: elimination, over columns that vary within members. */
function leftWithin({ width, products, withResponse, responseSquares, columnSquares }: MixedSums): number {
  const matrix = products.slice();
  const right = withResponse.slice();
  let left = responseSquares;
  for (let pivot = 1; pivot < width; pivot++) {
    const squares = at(matrix, pivot * width + pivot);
    if (squares <= CONSTANT * at(columnSquares, pivot)) continue;
    const along = at(right, pivot) / squares;
    left -= along * at(right, pivot);
    for (let row = pivot + 1; row < width; row++) {
      const part = at(matrix, row * width + pivot);
      right[row] = at(right, row) - part * along;
      for (let column = pivot + 1; column < width; column++) {
        const place = row * width + column;
        matrix[place] = at(matrix, place) - (part * at(matrix, pivot * width + column)) / squares;
      }
    }
  }
  return left;
}
