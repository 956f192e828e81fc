/** Differences that a regression within members can show, with errors that hold when members differ in noise and slope. */
import { addMember, carry, squaresOf, startWork, type Work } from './cluster-variance.ts';
import { studentT } from './distributions.ts';
import { at, dot, rowProducts } from './matrix.ts';
import { ownPart } from './own-part.ts';
import type { Reason } from './verdict.ts';
import type { WithinFit } from './within-member.ts';

/** The effect of one column, or what it has over another's. Columns by number; -1 is one that no piece has. */
export interface Contrast {
  of: number;
  over?: number;
}

export interface WithinContrast {
  /** Whether the data can show it at all. */
  estimable: boolean;
  /** In the response's unit; null if not estimable. */
  estimate: number | null;
  /** Robust against members' own noise; null where the pieces do not give one. */
  standardError: number | null;
  /** Degrees of freedom of that error, not whole; null as it. */
  df: number | null;
  /** The error if all noise were alike. For comparison only. */
  modelStandardError: number | null;
  /** The variance of the estimate for noise of variance 1. */
  unitVariance: number;
  /** How many members it comes from. */
  members: number;
  /** The part of it that comes from the one who gives most, 0 to 1. */
  topMemberShare: number;
  /** The sum of the squares of the members' parts. */
  squaredShares: number;
  /** Whether in some direction a single member's pieces are all there is. */
  restsOnOne: boolean;
  /** Why no interval may be shown; null if one may. */
  reason: Reason | null;
}

/** The number of a column that no piece has, or that a contrast is not over. */
const NONE = -1;
/** A contrast with more than this part of its square outside the fit's directions cannot be told. */
const OUTSIDE = 1e-8;
/** Residuals below this part of the response's squares are rounding. */
const NO_RESIDUAL = 1e-13;

/**
 * Contrasts of a fit with their bias-reduced cluster-robust variance, clusters being the members (CR2: Bell &
 * McCaffrey 2002; with absorbed effects and a possibly singular adjustment: Pustejovsky & Tipton 2018), and its
 * Satterthwaite degrees of freedom.
 * @example
 * // of one measured column alone this is the cluster-t of the members' slopes: estimate sum of Sxy / sum of Sxx
 */
export function withinContrasts(fit: WithinFit, contrasts: readonly Contrast[]): WithinContrast[] {
  const works = contrasts.map((contrast) => {
    const along = alongDirections(fit, contrast);
    return along && startWork(along);
  });
  if (works.some((work) => work !== null)) addMembers(fit, contrasts, works);
  return contrasts.map((contrast, place) => {
    const work = works[place] ?? null;
    return work === null ? notEstimable(fit) : finish(fit, contrast, work);
  });
}

/** Adds every member to every contrast. Many contrasts share a column, which is carried through a member once. */
function addMembers(fit: WithinFit, contrasts: readonly Contrast[], works: readonly (Work | null)[]): void {
  const { sums, basis, rank } = fit;
  const asked = [...new Set(contrasts.flatMap(({ of, over }) => [of, over ?? NONE]))];
  // In the fit's directions: zeros for a column that is none.
  const columns = Float64Array.from({ length: asked.length * rank }, (_, place) => {
    const column = asked[Math.floor(place / rank)] ?? NONE;
    return column < 0 ? 0 : at(basis, (place % rank) * sums.columns + column);
  });
  const rows = contrasts.map(({ of, over = NONE }) => ({ of: asked.indexOf(of), over: asked.indexOf(over) }));
  for (let member = 0; member < sums.members; member++) {
    const part = ownPart(fit, member);
    if (part === null) continue;
    const carried = carry(part, columns, rank);
    rows.forEach(({ of, over }, place) => {
      const work = works[place] ?? null;
      if (work !== null) addMember(work, carried, of, over);
    });
  }
}

/** What may be shown of a contrast. */
export interface ShownContrast {
  estimate: number;
  standardError: number;
  df: number;
  low: number;
  high: number;
}

/**
 * A contrast with its interval; null while none may be shown.
 * @param level how often such intervals hold the truth, between 0 and 1
 * @example
 * // estimate 0.02 with standardError 0.005 and df 4, at 0.95: low 0.0061, high 0.0339
 */
export function intervalOf(contrast: WithinContrast, level: number): ShownContrast | null {
  const { estimate, standardError, df, reason } = contrast;
  if (reason !== null || estimate === null || standardError === null || df === null) return null;
  const reach = studentT(1 - (1 - level) / 2, df) * standardError;
  return { estimate, standardError, df, low: estimate - reach, high: estimate + reach };
}

/** The contrast in the fit's directions; null if part of it lies outside them. */
function alongDirections(fit: WithinFit, { of, over }: Contrast): Float64Array | null {
  const { columns } = fit.sums;
  const signs = new Map([[of, 1], ...(over === undefined ? [] : [[over, -1] as const])]);
  const raw = new Float64Array(columns);
  const scaled = new Float64Array(columns);
  for (const [column, sign] of signs) {
    if (column < 0 || at(fit.scales, column) === 0) return null;
    raw[column] = sign;
    scaled[column] = sign * at(fit.scales, column);
  }
  const inside = fit.directions.map((direction) => dot(direction, scaled));
  if (!(dot(inside, inside) >= (1 - OUTSIDE) * dot(scaled, scaled))) return null;
  return rowProducts(fit.basis, raw, columns);
}

function finish(fit: WithinFit, { of, over }: Contrast, work: Work): WithinContrast {
  const { effects, residualDf, residualSquares } = fit;
  const worth = work.squaredTraces + squaresOf(work.outer, work.along.length) - work.squaredLengths;
  const df = worth > 0 ? work.trace ** 2 / worth : null;
  const found = {
    estimable: true,
    estimate: at(effects, of) - (over === undefined ? 0 : at(effects, over)),
    standardError: df === null ? null : Math.sqrt(work.squaredScores),
    df,
    modelStandardError:
      residualDf >= 1 ? Math.sqrt((residualSquares / residualDf) * work.unitVariance) : null,
    unitVariance: work.unitVariance,
    members: work.members,
    topMemberShare: work.topMemberShare,
    squaredShares: work.squaredShares,
    restsOnOne: work.restsOnOne,
  };
  return { ...found, reason: gate(fit, found) };
}

function notEstimable(fit: WithinFit): WithinContrast {
  const found = {
    estimable: false,
    estimate: null,
    standardError: null,
    df: null,
    modelStandardError: null,
    unitVariance: 0,
    members: 0,
    topMemberShare: 0,
    squaredShares: 0,
    restsOnOne: false,
  };
  return { ...found, reason: gate(fit, found) };
}

/** What an interval needs, the plainest want first. */
function gate({ sums, residualDf, residualSquares }: WithinFit, found: Omit<WithinContrast, 'reason'>) {
  const wants: readonly [boolean, Reason][] = [
    [sums.count === 0, 'no_pieces'],
    [sums.members === 1, 'one_member'],
    [!found.estimable, 'nobody_both'],
    [residualDf < 1, 'saturated'],
    [!(residualSquares > NO_RESIDUAL * sums.rawResponseSquares), 'no_variation'],
    [found.restsOnOne, 'rests_on_one'],
    [found.members < 3, 'few_members'],
    [found.df === null || !(found.df >= 2), 'mostly_one_member'],
  ];
  return wants.find(([missing]) => missing)?.[1] ?? null;
}
