/** Made-up clubs, of which the truth is known. Weights in pounds, shares as fractions. */
import type { Codes, Rows } from '../../shared/statistics/rows.ts';
import type { Chance } from './random.ts';

/** How the members of a club buy, trim and type. */
export interface Habits {
  /** What a pound more does to the share of each. */
  slope: number;
  /** How far members' own slopes are from it, as a standard deviation. */
  ownSlopes: number;
  /** How far the logarithms of members' own spreads between their pieces are apart, as a standard deviation. */
  ownSpreads: number;
  /** Whether those who trim more buy bigger. */
  trimmersBuyBigger: boolean;
  /** How many pieces are typed with a slip, as a fraction. */
  slips: number;
  /** The relative error of the weight bought, as a standard deviation. */
  scaleError: number;
  /** What a grade adds to the share. */
  grades: readonly [number, number, number];
}

export interface Club {
  rows: Rows;
  grade: Codes;
  /** One more piece, without a slip: of this member, or of somebody new. */
  next(member: number | null): Piece;
}

export interface Piece {
  base: number;
  loss: number;
  grade: number;
}

/** The share of all pieces to come, where no slope and no habit goes with the weight. */
export const USUAL_SHARE = 0.25;
/** Between members, and between the pieces of one. */
const MEMBER_SPREAD = 0.038;
const PIECE_SPREAD = 0.038;
const SHARES = { least: 0.02, most: 0.8 };

const USUAL_POUNDS = 13.5;
const POUNDS_SPREAD = 2.9;
const LEAST_POUNDS = 5;
/** Of POUNDS_SPREAD, what is between members: usually, and where those who trim more buy bigger. */
const BUYING_SPREAD = 1.2;
const WIDE_BUYING_SPREAD = 2;
/** How closely buying then goes with trimming: a correlation. */
const TRIMMING_AND_BUYING = 0.8;

/** The width of the usual range, from the 10th to the 90th percentile of a normal. */
export const USUAL_RANGE_POUNDS = 2 * 1.2815515655446004 * POUNDS_SPREAD;

/** How often each grade is bought; how often a member takes the grade that they mostly take. */
const GRADE_CHANCES = [0.3, 0.5, 0.2];
const TRUE_TO_GRADE = 0.6;
/** One point from grade to grade, and none for all together. */
export const GRADES_APART: Habits['grades'] = [-0.009, 0.001, 0.011];

const POUNDS_PER_KILO = 2.20462262;

/** Slips as they are made, likelier ones more than once: what the two weights are multiplied by. */
const SLIPS: readonly { base: number; loss: number }[] = [
  // The weight bought read in kilos, the trimmings, or both.
  { base: 1 / POUNDS_PER_KILO, loss: 1 },
  { base: 1 / POUNDS_PER_KILO, loss: 1 },
  { base: 1, loss: 1 / POUNDS_PER_KILO },
  { base: 1 / POUNDS_PER_KILO, loss: 1 / POUNDS_PER_KILO },
  // The other way round.
  { base: POUNDS_PER_KILO, loss: 1 },
  { base: 1, loss: POUNDS_PER_KILO },
  // The decimal point.
  { base: 10, loss: 1 },
  { base: 0.1, loss: 1 },
  { base: 1, loss: 10 },
  { base: 1, loss: 0.1 },
];

interface Member {
  share: number;
  pounds: number;
  poundsSpread: number;
  slope: number;
  spread: number;
  grade: number;
}

/** Few members post much, most a little: in proportion to a power of their rank, as Zipf found of words. */
const POSTING_POWER = -0.8;

/** A club of so many pieces. */
export function drawClub(habits: Habits, pieces: number, members: number, chance: Chance): Club {
  const drawn = Array.from({ length: members }, () => drawMember(habits, chance));
  const posting = drawn.map((_member, rank) => (rank + 1) ** POSTING_POWER);
  const base = new Float64Array(pieces);
  const loss = new Float64Array(pieces);
  const member = new Int32Array(pieces);
  const grade = new Int32Array(pieces);
  for (let row = 0; row < pieces; row++) {
    const who = oneOf(posting, chance);
    const piece = drawPiece(drawn[who] ?? drawMember(habits, chance), habits, chance);
    const slip = chance.even() < habits.slips ? SLIPS[Math.floor(chance.even() * SLIPS.length)] : undefined;
    const weighed = 1 + habits.scaleError * chance.normal();
    base[row] = piece.base * weighed * (slip?.base ?? 1);
    loss[row] = piece.loss * (slip?.loss ?? 1);
    member[row] = who;
    grade[row] = piece.grade;
  }
  return {
    rows: { count: pieces, base, loss, member },
    grade: { codes: grade, levels: GRADE_CHANCES.length },
    next: (who) => drawPiece(drawn[who ?? -1] ?? drawMember(habits, chance), habits, chance),
  };
}

function drawMember(habits: Habits, chance: Chance): Member {
  const trimming = chance.normal();
  const tie = habits.trimmersBuyBigger ? TRIMMING_AND_BUYING : 0;
  const buying = tie * trimming + Math.sqrt(1 - tie ** 2) * chance.normal();
  const between = habits.trimmersBuyBigger ? WIDE_BUYING_SPREAD : BUYING_SPREAD;
  return {
    share: USUAL_SHARE + MEMBER_SPREAD * trimming,
    pounds: USUAL_POUNDS + between * buying,
    poundsSpread: Math.sqrt(POUNDS_SPREAD ** 2 - between ** 2),
    slope: habits.slope + habits.ownSlopes * chance.normal(),
    // The mean variance stays what it is.
    spread: PIECE_SPREAD * Math.exp(habits.ownSpreads * chance.normal() - habits.ownSpreads ** 2),
    grade: oneOf(GRADE_CHANCES, chance),
  };
}

function drawPiece(member: Member, habits: Habits, chance: Chance): Piece {
  const base = Math.max(LEAST_POUNDS, member.pounds + member.poundsSpread * chance.normal());
  const grade = chance.even() < TRUE_TO_GRADE ? member.grade : oneOf(GRADE_CHANCES, chance);
  const share =
    member.share +
    member.slope * (base - USUAL_POUNDS) +
    (habits.grades[grade] ?? 0) +
    member.spread * chance.normal();
  return { base, loss: base * Math.min(SHARES.most, Math.max(SHARES.least, share)), grade };
}

/** A place, as often as its weight among all weights says. */
function oneOf(weights: readonly number[], chance: Chance): number {
  let left = chance.even() * weights.reduce((sum, weight) => sum + weight, 0);
  for (const [place, weight] of weights.entries()) {
    left -= weight;
    if (left < 0) return place;
  }
  return weights.length - 1;
}
