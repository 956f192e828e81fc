/** One piece with its place in the club: by cut and by grade, beside both averages, and what was mended. */
import type { Reply } from '../chat/reply.ts';
import type { GroupFigures } from '../club/group.ts';
import type { Piece } from '../club/piece.ts';
import type { Place } from '../club/place.ts';
import type { Columns, CorrectionRecord } from '../club/store.ts';
import { dayAt } from '../measure/day.ts';
import type { Nanograms } from '../measure/units.ts';
import { whereItStands } from '../pictures/stands.ts';
import type { Speech } from '../words/index.ts';
import type { Measure } from '../yield/measure.ts';
import { pieceFigures, WEIGHT_NAMES } from '../yield/piece.ts';
import { aboutPiece, headline } from './piece-line.ts';

export interface Standing {
  piece: Piece;
  measure: Measure;
  columns: Columns;
  club: GroupFigures;
  /** Whether it is unusual here, and nobody stands by it yet. */
  waiting: boolean;
  /** Null where the piece has not come to the measure yet, or is not counted in it. */
  place: Place | null;
  inGrade: Place | null;
  /** Oldest first. */
  corrections: readonly CorrectionRecord[];
  zone: string;
}

/** The latest changes that are told. */
const CHANGES_TOLD = 2;

export function standing(shown: Standing, say: Speech): Reply {
  const { piece, measure, columns, club, place, inGrade } = shown;
  const compared = place !== null && place.others > 0;
  return {
    answer: headline(piece, say),
    lines: compared
      ? comparedLines(shown, say)
      : [shown.waiting ? say.weighing.waiting() : say.pieces.alone(piece)],
    ...(compared
      ? {
          picture: whereItStands(
            { columns, measure, seq: piece.seq, club },
            say.weighing.pictureOf(piece),
            say.pictures.stands,
            say.show,
          ),
        }
      : {}),
    small: [aboutPiece(piece, say), ...changes(shown, say)],
    figures: {
      piece: piece.seq,
      id: piece.id,
      cut: piece.cut,
      grade: piece.grade,
      measure,
      waiting: shown.waiting,
      ...pieceFigures(piece),
      place: place === null ? null : { ...place },
      inGrade: inGrade === null ? null : { ...inGrade },
      club: { ...club },
    },
    piece: piece.id,
  };
}

function comparedLines({ piece, measure, club, place, inGrade }: Standing, say: Speech): string[] {
  const { cut, grade } = piece;
  const { meanShare: mean, pooledShare: pooled } = club;
  return [
    place === null ? null : say.pieces.place({ measure, ...place, cut, grade: null }),
    inGrade === null || inGrade.others === 0 || grade === null
      ? null
      : say.pieces.place({ measure, ...inGrade, cut, grade }),
    mean === null || pooled === null ? null : say.pieces.bothAverages({ mean, pooled }),
  ].filter((line) => line !== null);
}

/** What was mended and when: weights as they were and as they are, everything else only as a day. */
function changes({ corrections, zone }: Standing, say: Speech): string[] {
  const told = corrections.flatMap(({ at, before, after }) => {
    const day = dayAt(at, zone);
    const weights = WEIGHT_NAMES.filter((name) => before[name] != null && before[name] !== after[name]);
    return weights.map((name) =>
      say.pieces.changed({ day, name, before: weightIn(before[name]), after: weightIn(after[name]) }),
    );
  });
  return told.slice(-CHANGES_TOLD);
}

const weightIn = (value: unknown): Nanograms | null =>
  typeof value === 'number' ? (value as Nanograms) : null;
