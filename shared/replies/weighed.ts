/** The card of a piece: what it comes to so far, with the club's figures beside it. */
import type { Doubtful, Reply } from '../chat/reply.ts';
import type { Club } from '../club/club.ts';
import type { GroupFigures } from '../club/group.ts';
import { isInjected, type Piece } from '../club/piece.ts';
import type { Nanograms } from '../measure/units.ts';
import { whereItWent } from '../pictures/where.ts';
import { type CautionPlace, cautionsFor } from '../trade/cautions.ts';
import { cutOf } from '../trade/cuts.ts';
import { gradeOfAnother } from '../trade/grades.ts';
import type { Speech } from '../words/index.ts';
import { lossOf, setsInjectedApart } from '../yield/measure.ts';
import { costFactor, costPer, costsOf, pieceFigures, type WeightName, weightsOf } from '../yield/piece.ts';
import { bookOnCard } from './book-line.ts';
import { cardActions } from './card-actions.ts';
import { aboutPiece, headline, measureReached } from './piece-line.ts';

/** A weight that was just told, as it is kept, and the pan that was taken off it. */
export interface Told {
  name: WeightName;
  weight: Nanograms;
  pan: Nanograms | null;
}

/** A piece, what was just told of it, and what stands beside it. */
export interface Weighing {
  piece: Piece;
  club: Club;
  /** The club's figures for the measure that this piece has come to. */
  beside: GroupFigures;
  /** Unusual in the club, and nobody stands by it yet. */
  waiting: boolean;
  /** What this message told. */
  told: readonly Told[];
  /** The interaction that told it. */
  interaction: string;
  /** Whether it added to a piece that was there, rather than starting one. */
  added: boolean;
  /** False where the same message was kept before. */
  fresh: boolean;
  /** Whether the member has other pieces that it could have been meant for. */
  others: boolean;
  shops: readonly string[];
  doubts: readonly Doubtful[];
}

/** The card of a piece, for all to see. */
export function weighed(weighing: Weighing, say: Speech): Reply {
  const { piece, beside, doubts, added, others, interaction } = weighing;
  const figures = pieceFigures(piece);
  return {
    answer: headline(piece, say),
    lines: lines(weighing, say).slice(0, 4),
    picture: whereItWent(figures, say.weighing.pictureOf(piece), say.pictures.whereItWent, say.show),
    small: smallPrint(weighing, say),
    actions: cardActions({ ...weighing, addedBy: added && others ? interaction : null }, say),
    figures: {
      piece: piece.seq,
      id: piece.id,
      cut: piece.cut,
      grade: piece.grade,
      style: piece.style,
      approximate: piece.approximate,
      waiting: weighing.waiting,
      ...figures,
      currency: piece.price?.currency ?? null,
      club: { measure: measureReached(piece), name: say.trade.cut(piece.cut), ...beside },
    },
    piece: piece.id,
    again: { piece: String(piece.seq) },
    doubts,
  };
}

/** In the order in which they matter; only four stand before the picture. */
function lines(weighing: Weighing, say: Speech): string[] {
  const { piece, told, added, fresh } = weighing;
  const { seq, cut, day } = piece;
  return [
    fresh ? null : say.weighing.again({ seq }),
    fresh && added ? say.weighing.addedTo({ seq, cut, day }) : null,
    // A piece that is only bought says its weight in the answer already.
    told.every(({ name }) => name === 'bought') && weightsOf(piece).trim === null
      ? null
      : echoes(piece, told, say),
    costLine(piece, say),
    besideLine(weighing, say),
    juiceLine(piece, say),
    savedLine(piece, say),
  ].filter((line) => line !== null);
}

/** What was told in both systems, and with what came off also what is left. */
function echoes(piece: Piece, told: readonly Told[], say: Speech): string | null {
  if (told.length === 0) return null;
  const { left } = weightsOf(piece);
  const toldTrim = told.some(({ name }) => name === 'trim');
  const echo = say.weighing.echo({ told });
  return toldTrim && left !== null ? `${echo}; ${say.weighing.left({ left })}.` : `${echo}.`;
}

function costLine(piece: Piece, say: Speech): string | null {
  const costs = costsOf(piece);
  if (costs === null || piece.price === null) return null;
  for (const [part, line] of [
    ['served', 'costOnPlate'],
    ['left', 'costToCook'],
  ] as const) {
    const cost = costPer(piece, part, say.show.form.units);
    const factor = costFactor(piece, part);
    if (cost !== null && factor !== null) return say.weighing[line]({ cost, factor });
  }
  return say.weighing.paid({ paid: costs.paid, price: piece.price });
}

function besideLine({ piece, beside, added }: Weighing, say: Speech): string | null {
  if (beside.meanShare === null) return null;
  const { cut } = piece;
  const measure = measureReached(piece);
  const itself = lossOf(measure, piece) !== null;
  if (itself && beside.pieces === 1) return added ? null : say.weighing.first({ cut });
  return say.weighing.beside({
    measure,
    share: beside.meanShare,
    count: beside.pieces,
    members: beside.members,
    cut,
  });
}

function juiceLine(piece: Piece, say: Speech): string | null {
  const { juice, bought } = weightsOf(piece);
  return juice === null ? null : say.weighing.juice({ juice, share: juice / bought });
}

function savedLine(piece: Piece, say: Speech): string | null {
  if (piece.saved.length === 0) return null;
  const weight = piece.saved.reduce((sum, part) => sum + part.weight, 0) as Nanograms;
  return say.weighing.saved({ weight, credit: costsOf(piece)?.credit ?? null });
}

function smallPrint({ piece, beside, waiting }: Weighing, say: Speech): string[] {
  const pooled = beside.pooledShare;
  const measure = measureReached(piece);
  return [
    aboutPiece(piece, say),
    piece.setAsideAt !== null ? say.pieces.setAside({ why: piece.setAsideWhy }) : null,
    waiting ? say.weighing.waiting() : null,
    pooled === null || beside.pieces === 1 ? null : say.averages.pooled({ measure, share: pooled }),
    ...bookOf(piece, say),
    ...cautionsOf(piece, say),
    anothersGrade(piece, say),
  ].filter((line) => line !== null);
}

/** What the tables say of the measure that it came to. Pieces that took up brine have none to stand beside. */
function bookOf(piece: Piece, say: Speech): string[] {
  const measure = measureReached(piece);
  if (lossOf(measure, piece) === null || (isInjected(piece) && setsInjectedApart(measure))) return [];
  return bookOnCard(piece.cut, measure, piece, say);
}

/** Fat that was saved is there to be rendered. Words of the trade, as they are typed in English. */
const FAT = /\b(?:fat|suet|tallow|lard)\b/i;

function cautionsOf({ saved }: Piece, { cautions }: Speech): string[] {
  if (saved.length === 0) return [];
  const places: CautionPlace[] = saved.some(({ name }) => FAT.test(name))
    ? ['saved', 'saved-fat']
    : ['saved'];
  return places.flatMap(cautionsFor).map((code) => cautions[code]());
}

/** A grade of another animal is kept with a note. */
function anothersGrade({ grade, cut }: Piece, { weighing }: Speech): string | null {
  const species = grade === null ? null : gradeOfAnother(grade, cutOf(cut).species);
  return species === null ? null : weighing.anothersGrade({ species });
}
