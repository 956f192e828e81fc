/** Where one piece stands among the club's pieces of its cut: each a dot along the share, this one marked. */
import { FEWEST_FOR_HALF, type GroupFigures } from '../club/group.ts';
import type { StandingShares } from '../findings/standing.ts';
import type { Show } from '../measure/show.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import type { Measure } from '../yield/measure.ts';
import { AXIS_HEIGHT, along, axisNotes, axisOf, centred, plainScale, scales } from './axis.ts';
import { foot, head, INNER_WIDTH, options, plainOptions, SIZE, WIDTH } from './frame.ts';
import type { Note } from './notes.ts';
import { INK, QUIET_INK } from './palette.ts';
import type { Picture } from './picture.ts';
import { MARK, type Marks, MEAN_STRIP, marksOf, THIS } from './stands-marks.ts';

/** Layout pixels: the middle half's text, above the data. */
const HALF_ROW = 34;
/** From the middle of the mark to its text. */
const BESIDE = MARK + 8;
const FOOT = 50;

type Words = PictureWords['stands'];

/** What the picture of one piece among the others shows. */
export interface Standing {
  /** Of the pieces that are counted in the measure, one at least. */
  shares: StandingShares;
  measure: Measure;
  club: GroupFigures;
}

/** What is drawn: the marks, and of how many pieces. */
interface Drawn extends Marks {
  /** Of every piece, drawn or not. */
  range: readonly [number, number];
  drawn: number;
}

function drawnOf({ shares: { own, others, range }, club }: Standing): Drawn {
  if (range === null) throw new RangeError('there is no piece to draw');
  const { pieces: count, meanShare, lowerQuartile: low, upperQuartile: high } = club;
  return {
    own,
    others,
    // The mean of one piece is that piece.
    mean: count < 2 ? null : meanShare,
    half: count < FEWEST_FOR_HALF || low === null || high === null ? null : [low, high],
    range,
    drawn: others.length + (own === null ? 0 : 1),
  };
}

/** This piece's text goes to the side where there is more room. */
function ownNote(share: number, text: string, y: number, rightHalf: boolean): Note {
  const side = rightHalf ? -1 : 1;
  const align = rightHalf ? 'right' : 'left';
  return {
    text,
    x: { at: share, shift: side * BESIDE },
    y,
    align,
    size: SIZE.label,
    bold: true,
    colour: INK,
  };
}

/** The same figures in words; no more of `about` than leaves room for them. */
function altOf(
  { own, mean, half, range: [low, high], drawn }: Drawn,
  about: string,
  of: Standing,
  words: Words,
): string {
  const { measure, club } = of;
  return [
    words.altHead({ about: [...about].slice(0, 160).join(''), measure }),
    own === null ? null : words.altThis({ share: own, measure }),
    mean === null ? null : words.altMean({ share: mean }),
    half === null ? null : words.altHalf({ low: half[0], high: half[1] }),
    club.pieces < 2 ? null : words.altRange({ low, high }),
    `${words.counts({ count: club.pieces, members: club.members, drawn })}.`,
  ]
    .filter((sentence) => sentence !== null)
    .join(' ');
}

/**
 * The picture of one piece among the others. Of more than 400 an even choice is drawn, which says so.
 * Throws a RangeError without any piece.
 * @param about what it is the picture of: `Whole brisket, piece 128`; drawn as it stands, so no names of people
 */
export function whereItStands(standing: Standing, about: string, words: Words, show: Show): Picture {
  const { measure, club } = standing;
  const drawn = drawnOf(standing);
  const { own, mean, half, range } = drawn;
  const axis = axisOf([...range, ...(half ?? []), ...(mean === null ? [] : [mean])]);
  const names = {
    own: own === null ? '' : words.thisPiece({ share: own }),
    mean: mean === null ? '' : words.mean({ share: mean }),
    others: words.others(),
    half: half === null ? '' : words.half({ low: half[0], high: half[1] }),
  };
  const { datasets, height: dataHeight, lane } = marksOf(axis, drawn, names);
  const key =
    own === null ? null : { figure: show.share(own), caption: words.ofPiece({ measure }), colour: THIS };
  const top = head(words.title(), about, key);
  const dataTop = top.bottom + 14 + (half === null ? 0 : HALF_ROW);
  const bottom = dataTop + dataHeight;
  const height = bottom + AXIS_HEIGHT + FOOT;
  const { small } = SIZE;
  const notes = [
    ...top.notes,
    ...(half === null
      ? []
      : [
          {
            ...centred(axis, (half[0] + half[1]) / 2, names.half, small),
            text: names.half,
            y: dataTop - HALF_ROW / 2,
            size: small,
            colour: QUIET_INK,
          },
        ]),
    ...(mean === null
      ? []
      : [
          {
            ...centred(axis, mean, names.mean, small),
            text: names.mean,
            y: dataTop + MEAN_STRIP / 2 - 2,
            size: small,
            bold: true,
            colour: INK,
          },
        ]),
    ...(own === null ? [] : [ownNote(own, names.own, dataTop + lane, along(axis, own) > INNER_WIDTH / 2)]),
    ...axisNotes(axis, bottom, measure, words.axis),
    ...foot(
      [words.counts({ count: club.pieces, members: club.members, drawn: drawn.drawn })],
      bottom + AXIS_HEIGHT + 14,
    ),
  ];
  return {
    name: 'where-it-stands',
    width: WIDTH,
    height,
    alt: altOf(drawn, about, standing, words),
    config: {
      type: 'scatter',
      data: { datasets },
      options: { ...options(dataTop, height - bottom, notes), scales: scales(axis, dataHeight) },
    },
    plain: plainOptions(words.title(), true, { x: plainScale(measure, words.axis) }),
  };
}
