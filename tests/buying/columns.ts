/** A made-up club as a store's columns, with what reached the plate, and one member left out of it to buy as a newcomer. */
import type { Columns, Factor } from '../../shared/club/columns.ts';
import { type Club, drawClub, type Habits } from '../calibration/club.ts';
import type { Chance } from '../calibration/random.ts';

/** Of what is left to cook: between members, and between the pieces of one. */
const KEPT = { mean: 0.62, members: 0.02, pieces: 0.03 };
const GRADES = ['usda/select', 'usda/choice', 'usda/prime'];
const GRAMS = 453.59237;

export interface Buying {
  trim: Columns;
  plate: Columns;
  /** A member who weighed in, and the one who did not. */
  known: number;
  newcomer: number;
  /** Grams, and the share of what is left to cook that this member serves of it. */
  next(member: number, grade?: number): { grams: number; trimShare: number; plateYield: number };
}

export const nameOf = (member: number): string => `member-${member}`;
export const gradeAt = (grade: number): string => GRADES[grade] ?? '';

const PLAIN: Habits = {
  slope: 0,
  ownSlopes: 0,
  ownSpreads: 0,
  trimmersBuyBigger: false,
  slips: 0,
  scaleError: 0,
  grades: [0, 0, 0],
};

/**
 * A club in which each grade loses so much more than the one below it.
 * @param apart as a share: 0.02 is two points
 * @param trimmed what is left to trim, as a part of a whole packer's: a quarter for a flat
 */
export function drawBuying(
  pieces: number,
  members: number,
  apart: number,
  chance: Chance,
  trimmed = 1,
): Buying {
  const grades: Habits['grades'] = [-apart, 0, apart];
  // The newcomer is the one in the middle of those who post, so that no most eager or rarest buyer is left out.
  const newcomer = members >> 1;
  const more = Math.ceil(pieces * (1 + 2 / members)) + 10;
  const club = drawClub({ ...PLAIN, grades }, more, members + 1, chance);
  const cooks = Array.from({ length: members + 1 }, () => KEPT.mean + KEPT.members * chance.normal());
  const cook = (member: number) => (cooks[member] ?? KEPT.mean) + KEPT.pieces * chance.normal();
  const rows = Array.from({ length: more }, (_, row) => row)
    .filter((row) => club.rows.member[row] !== newcomer)
    .slice(0, pieces);
  const who = club.rows.member[rows[Math.floor(chance.even() * rows.length)] ?? 0] ?? 0;
  return {
    trim: columnsOf(club, rows, (row) => trimmed * (club.rows.loss[row] ?? 0) * GRAMS),
    plate: columnsOf(club, rows, (row) => {
      const [base, loss] = [club.rows.base[row] ?? 0, trimmed * (club.rows.loss[row] ?? 0)];
      return (base - (base - loss) * cook(club.rows.member[row] ?? 0)) * GRAMS;
    }),
    known: who,
    newcomer,
    next: (member, grade) => {
      let piece = club.next(member);
      while (grade !== undefined && piece.grade !== grade) piece = club.next(member);
      const trimShare = (trimmed * piece.loss) / piece.base;
      return { grams: piece.base * GRAMS, trimShare, plateYield: (1 - trimShare) * cook(member) };
    },
  };
}

function columnsOf(club: Club, rows: readonly number[], lossOf: (row: number) => number): Columns {
  const count = rows.length;
  const none: Factor = { codes: new Int32Array(count).fill(-1), values: [] };
  return {
    version: 1,
    count,
    seq: Int32Array.from(rows),
    base: Float64Array.from(rows, (row) => (club.rows.base[row] ?? 0) * GRAMS),
    loss: Float64Array.from(rows, lossOf),
    pieces: new Int32Array(count).fill(1),
    approximate: new Uint8Array(count),
    confirmed: new Uint8Array(count),
    day: new Int32Array(count),
    pricePerKg: new Float64Array(count).fill(11),
    spent: Float64Array.from(rows, (row) => (((club.rows.base[row] ?? 0) * GRAMS) / 1000) * 11),
    member: factorOf(rows.map((row) => nameOf(club.rows.member[row] ?? 0))),
    cut: { codes: new Int32Array(count), values: ['beef/brisket-whole'] },
    grade: factorOf(rows.map((row) => gradeAt(club.grade.codes[row] ?? 0))),
    currency: { codes: new Int32Array(count), values: ['USD'] },
    style: none,
    bone: none,
    shop: none,
    wrap: none,
    month: none,
  };
}

function factorOf(texts: readonly string[]): Factor {
  const values = [...new Set(texts)];
  return { codes: Int32Array.from(texts, (text) => values.indexOf(text)), values };
}
