/** One piece with its place in the club: by cut and by grade, beside both averages, and what was mended. */
import type { Reply } from '../chat/reply.ts';
import type { Piece } from '../club/piece.ts';
import type { CorrectionRecord } from '../club/store.ts';
import type { FoundStanding } from '../findings/standing.ts';
import { dayAt } from '../measure/day.ts';
import type { Nanograms } from '../measure/units.ts';
import { whereItStands } from '../pictures/stands.ts';
import type { Speech } from '../words/index.ts';
import type { Measure } from '../yield/measure.ts';
import { pieceFigures, WEIGHT_NAMES } from '../yield/piece.ts';
import { aboutPiece, headline } from './piece-line.ts';

/** A piece with what was found of it. */
export interface Standing extends FoundStanding {
  piece: Piece;
  measure: Measure;
  /** Oldest first. */
  corrections: readonly CorrectionRecord[];
  zone: string;
}

/** The latest changes that are told. */
const CHANGES_TOLD = 2;

/** The reply of `/piece show`. */
export function standing(shown: Standing, say: Speech): Reply {
  const { piece, measure, shares, club, place, inGrade } = shown;
  const compared = place !== null && place.others > 0;
  return {
    answer: headline(piece, say),
    lines: compared ? comparedLines(shown, say) : [apart(shown, say)],
    ...(compared
      ? {
          picture: whereItStands(
            { shares, measure, club },
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
      setAside: piece.setAsideAt !== null,
      ...pieceFigures(piece),
      place: place === null ? null : { ...place },
      inGrade: inGrade === null ? null : { ...inGrade },
      club: { ...club },
    },
    piece: piece.id,
  };
}

/** Why it stands beside no other. */
function apart({ piece, waiting }: Standing, { pieces, weighing }: Speech): string {
  if (piece.setAsideAt !== null) return pieces.setAside({ why: piece.setAsideWhy });
  return waiting ? weighing.waiting() : pieces.alone(piece);
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
