/** What some pieces come to together: a member's season. */
import { addMoney, type Currency, type Money, paid } from '../measure/money.ts';
import type { Nanograms } from '../measure/units.ts';
import type { CutKey, StyleKey } from '../trade/keys.ts';
import { lossOf, type Measure } from '../yield/measure.ts';
import { costsOf, weightsOf } from '../yield/piece.ts';
import { shareShown } from './group.ts';
import { isInjected, type Piece } from './piece.ts';

/** One weight of all pieces that have it. */
export interface Part {
  weight: Nanograms;
  /** What these pieces weighed when they were bought. */
  of: Nanograms;
  pieces: number;
}

/** Weights and money of some pieces together. */
export interface Totals {
  pieces: number;
  bought: Nanograms;
  /** Came off raw; on the plate. Null where no piece has come so far. */
  trim: Part | null;
  plate: Part | null;
  /** Saved of the trimmings, and the worth of what was given a value; null where nothing was. */
  saved: { weight: Nanograms; worth: Money | null } | null;
  /** In the one currency that is added up; null without a price in it. */
  paid: Money | null;
  /** Pieces with a price in that currency, and in another one. */
  priced: number;
  foreign: number;
  /** What the pieces on the plate that have a price cost, less the worth of what was saved of them. */
  plateCost: { cost: Money; weight: Nanograms } | null;
}

const sum = (weights: readonly Nanograms[]): Nanograms =>
  weights.reduce((total, weight) => total + weight, 0) as Nanograms;

const sumMoney = (amounts: readonly Money[]): Money | null =>
  amounts.length === 0 ? null : amounts.reduce(addMoney);

function partOf(pieces: readonly Piece[], name: 'trim' | 'served'): Part | null {
  const found = pieces.flatMap((piece) => {
    const weight = weightsOf(piece)[name];
    return weight === null ? [] : [{ weight, of: piece.bought }];
  });
  if (found.length === 0) return null;
  return {
    weight: sum(found.map(({ weight }) => weight)),
    of: sum(found.map(({ of }) => of)),
    pieces: found.length,
  };
}

/**
 * Adds pieces up. Money is added in one currency only: nothing here knows rates of exchange.
 * @example totalsOf([12 lb with 3 lb off, 8 lb not trimmed yet], 'USD').trim // { 3 lb, of 12 lb, 1 piece }
 */
export function totalsOf(pieces: readonly Piece[], currency: Currency): Totals {
  const parts = pieces.flatMap(({ saved }) => saved);
  const worth = parts.flatMap(({ price, weight }) =>
    price?.currency === currency ? [paid(price, weight)] : [],
  );
  const priced = pieces.filter(({ price }) => price?.currency === currency);
  return {
    pieces: pieces.length,
    bought: sum(pieces.map(({ bought }) => bought)),
    trim: partOf(pieces, 'trim'),
    plate: partOf(pieces, 'served'),
    saved:
      parts.length === 0 ? null : { weight: sum(parts.map(({ weight }) => weight)), worth: sumMoney(worth) },
    paid: sumMoney(priced.flatMap((piece) => costsOf(piece)?.paid ?? [])),
    priced: priced.length,
    foreign: pieces.filter(({ price }) => price !== null && price.currency !== currency).length,
    plateCost: plateCostOf(priced),
  };
}

function plateCostOf(priced: readonly Piece[]): Totals['plateCost'] {
  const plated = priced.filter((piece) => (weightsOf(piece).served ?? 0) > 0);
  const cost = sumMoney(plated.flatMap((piece) => costsOf(piece)?.net ?? []));
  return cost === null
    ? null
    : { cost, weight: sum(plated.map((piece) => weightsOf(piece).served ?? (0 as Nanograms))) };
}

/** A piece's share in a measure, as a member reads it. */
export interface PieceShare {
  piece: Piece;
  measure: Measure;
  share: number;
}

/**
 * The pieces that compare in a measure, in their order: those that lost something, not all of it, and took up no brine.
 * @example sharesIn([12 lb with 3 lb off], 'trim')[0].share // 0.25
 */
export const sharesIn = (pieces: readonly Piece[], measure: Measure): PieceShare[] =>
  pieces.flatMap((piece) => {
    const found = lossOf(measure, piece);
    if (found === null || isInjected(piece) || found.loss <= 0 || found.loss >= found.base) return [];
    return [{ piece, measure, share: shareShown(measure, found.loss / found.base) }];
  });

/**
 * By what the pieces of a season are compared: what got to the plate, or, before any did, what came off.
 * @example measureOf([a piece with its trim alone]) // 'trim'
 */
export const measureOf = (pieces: readonly Piece[]): 'plate' | 'trim' =>
  sharesIn(pieces, 'plate').length > 0 ? 'plate' : 'trim';

/**
 * The pieces that compare in a measure, the best first: most on the plate, least off.
 * @example bestFirst(pieces, 'trim')[0] // the one with the least off
 */
export const bestFirst = (pieces: readonly Piece[], measure: Measure): PieceShare[] =>
  sharesIn(pieces, measure).toSorted((one, other) =>
    measure === 'trim' ? one.share - other.share : other.share - one.share,
  );

/** What is most often among the pieces; of two alike the one that came last. `style` is null where none was told. */
export interface Favourite {
  cut: CutKey;
  style: StyleKey | null;
}

/**
 * The cut that a member cooks most, and the fat left on most often on that cut; null without a piece.
 * @example favouriteOf([two butts, a brisket])?.cut // 'pork/butt'
 */
export function favouriteOf(pieces: readonly Piece[]): Favourite | null {
  const cut = mostFrequent(pieces.map((piece) => piece.cut));
  if (cut === null) return null;
  return {
    cut,
    style: mostFrequent(pieces.flatMap((piece) => (piece.cut === cut ? (piece.style ?? []) : []))),
  };
}

function mostFrequent<Value>(values: readonly Value[]): Value | null {
  const counts = new Map<Value, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const most = Math.max(...counts.values());
  return values.findLast((value) => counts.get(value) === most) ?? null;
}
