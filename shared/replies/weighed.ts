/** The card of a piece: what it comes to so far, with the club's figures beside it. */
import type { Action, ActionId, Doubtful, Reply } from '../chat/reply.ts';
import type { Club } from '../club/club.ts';
import type { GroupFigures } from '../club/group.ts';
import type { Piece } from '../club/piece.ts';
import type { Nanograms } from '../measure/units.ts';
import { whereItWent } from '../pictures/where.ts';
import { cutOf } from '../trade/cuts.ts';
import { gradesFor } from '../trade/grades.ts';
import type { Speech } from '../words/index.ts';
import { lossOf, type Measure } from '../yield/measure.ts';
import { costFactor, costPer, costsOf, pieceFigures, type WeightName, weightsOf } from '../yield/piece.ts';

/** A weight that was just told, as it is kept, and the pan that was taken off it. */
export interface Told {
  name: WeightName;
  weight: Nanograms;
  pan: Nanograms | null;
}

export interface Weighing {
  piece: Piece;
  club: Club;
  /** The club's figures for the measure that this piece has come to; null before it has come to one. */
  beside: GroupFigures | null;
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

/** The last measure that a piece has come to; `trim` before any. */
export function measureReached(piece: Piece): Measure {
  const { plateYield, cookingYield } = pieceFigures(piece);
  return plateYield !== null ? 'plate' : cookingYield !== null ? 'cooking' : 'trim';
}

export function weighed(weighing: Weighing, say: Speech): Reply {
  const { piece, beside, doubts } = weighing;
  const figures = pieceFigures(piece);
  return {
    answer: answer(piece, say),
    lines: lines(weighing, say).slice(0, 4),
    picture: whereItWent(figures, say.weighing.pictureOf(piece), say.pictures.whereItWent, say.show),
    small: smallPrint(weighing, say),
    actions: actions(weighing, say),
    figures: {
      piece: piece.seq,
      id: piece.id,
      cut: piece.cut,
      grade: piece.grade,
      style: piece.style,
      approximate: piece.approximate,
      ...figures,
      currency: piece.price?.currency ?? null,
      club: beside === null ? null : { measure: measureReached(piece), ...beside },
    },
    piece: piece.id,
    again: { piece: String(piece.seq) },
    doubts,
  };
}

function answer(piece: Piece, say: Speech): string {
  const { bought, trim, intoHeat, cooked, served } = weightsOf(piece);
  const { trimShare, cookingYield, plateYield } = pieceFigures(piece);
  if (served !== null && plateYield !== null)
    return say.weighing.plate({ share: plateYield, served, bought });
  if (cooked !== null && cookingYield !== null && intoHeat !== null) {
    return say.weighing.cooking({ share: cookingYield, cooked, from: intoHeat });
  }
  if (cooked !== null) return say.weighing.heatAlone({ cooked, bought });
  if (trim !== null && trimShare !== null) return say.weighing.trim({ share: trimShare, trim, bought });
  return say.weighing.bought({ bought, cut: piece.cut });
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
  if (beside === null || beside.meanShare === null) return null;
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

function smallPrint({ piece, beside }: Weighing, say: Speech): string[] {
  const parts = [
    say.trade.cut(piece.cut),
    piece.pieces > 1 ? say.weighing.lot({ count: piece.pieces }) : null,
    piece.grade === null ? null : say.trade.grade(piece.grade),
    piece.style === null ? null : say.trade.style(piece.style),
    piece.bone === null || cutOf(piece.cut).bone !== 'both' ? null : say.trade.bone(piece.bone),
    say.show.day(piece.day),
    piece.approximate ? say.weighing.approximate() : null,
  ].filter((part) => part !== null);
  const pooled = beside?.pooledShare ?? null;
  const measure = measureReached(piece);
  return [
    say.weighing.aboutPiece({ seq: piece.seq, parts }),
    pooled === null || beside?.pieces === 1 ? null : say.averages.pooled({ measure, share: pooled }),
    piece.saved.length === 0 ? null : say.weighing.rawTrimmings(),
  ].filter((line) => line !== null);
}

/** What is asked after the answer, never before it; and the ways to mend. */
function actions({ piece, club, others, added, shops, interaction }: Weighing, say: Speech): Action[] {
  const id = (action: string, ...about: string[]): ActionId => ({
    command: 'weigh',
    action,
    by: 'owner',
    owner: piece.member,
    about: [piece.id, ...about],
  });
  const { species, bone } = cutOf(piece.cut);
  const grades = piece.grade === null ? gradesFor(species, club.gradeCountry) : [];
  return [
    grades.length === 0
      ? null
      : menu(
          say.weighing.gradeMenu(),
          id('grade'),
          grades.map((key) => ({ label: say.trade.grade(key), value: key })),
        ),
    bone !== 'both' || piece.bone !== null
      ? null
      : menu(
          say.weighing.boneMenu(),
          id('bone'),
          (['in', 'out'] as const).map((key) => ({ label: say.trade.bone(key), value: key })),
        ),
    shops.length === 0 || piece.shop !== null
      ? null
      : menu(
          say.weighing.shopMenu(),
          id('shop'),
          shops.slice(0, 25).map((name) => ({ label: name, value: name })),
        ),
    { kind: 'button' as const, label: say.desk.fixIt(), id: id('mend') },
    added && others
      ? { kind: 'button' as const, label: say.weighing.anotherPiece(), id: id('another', interaction) }
      : null,
  ].filter((action) => action !== null);
}

const menu = (
  label: string,
  id: Action['id'],
  choices: readonly { label: string; value: string }[],
): Action => ({
  kind: 'menu',
  label,
  id,
  choices,
});
