/** The averages of groups of pieces, one row a group: the pieces as dots, their mean, the middle half of them. */
import type { PictureWords } from '../words/en/pictures.ts';
import type { Averaged } from '../yield/measure.ts';
import { chosen, marksOf, rowHeight, TEXT_ROW } from './averages-marks.ts';
import { altOf, footOf, type Grouped, type Row, rowOf } from './averages-rows.ts';
import { AXIS_HEIGHT, axisFor, axisNotes, plainScale, scales } from './axis.ts';
import {
  figureWidth,
  foot,
  head,
  INNER_WIDTH,
  lineHeight,
  MARGIN,
  namesScale,
  options,
  PLAIN_NAMES,
  plainOptions,
  SIZE,
  WIDTH,
} from './frame.ts';
import type { Note } from './notes.ts';
import { INK, OKABE_ITO, QUIET_INK } from './palette.ts';
import type { Picture } from './picture.ts';

/** More rows are more than a phone shows at a time. */
const MOST_GROUPS = 12;
/** Layout pixels: the second column from the right of a row, `1200 by 40`. */
const COUNTS_WIDTH = 130;
const FOOT = 26;

type Words = PictureWords['averages'];

/** The line over a row's dots: the group, how many, its mean, in a column of this width. */
function rowNotes(
  { group, told }: Row,
  y: number,
  { measure, width, words }: { measure: Averaged; width: number; words: Words },
): readonly Note[] {
  const right = { y, align: 'right' } as const;
  return [
    {
      text: group.name,
      x: MARGIN,
      y,
      size: SIZE.label,
      colour: INK,
      width: INNER_WIDTH - width - COUNTS_WIDTH,
    },
    {
      ...right,
      text: words.mean({ measure, share: told }),
      x: WIDTH - MARGIN,
      size: SIZE.label,
      bold: true,
      colour: INK,
    },
    {
      ...right,
      text: words.counts({ count: group.figures.pieces, members: group.figures.members }),
      x: WIDTH - MARGIN - width,
      size: SIZE.small,
      colour: QUIET_INK,
    },
  ];
}

/** The rows' names and means, for a renderer that draws no notes. */
const plainNames = (rows: readonly Row[], measure: Averaged, words: Words) =>
  rows.map(({ group: { name, own }, told }, index) => [
    own ? words.unnamed({ nth: index + 1 }) : name,
    words.mean({ measure, share: told }),
  ]);

/** The picture of one group or of several; of many the twelve with the most pieces. Throws a RangeError without any piece. */
export function averagesOf(grouped: Grouped, words: Words): Picture {
  const { measure, about, mean } = grouped;
  const groups = grouped.groups.filter(({ figures }) => figures.meanShare !== null);
  const whole = groups.slice(0, MOST_GROUPS).flatMap(rowOf);
  const axis = axisFor(
    measure,
    whole.flatMap(({ shares, told, half, range }) => [...shares, told, ...(half ?? []), ...(range ?? [])]),
  );
  const drawn = chosen(axis, whole);
  const rows = whole.map((row, index) => ({ ...row, shares: drawn[index] ?? [] }));
  const key =
    mean === null
      ? null
      : { figure: words.mean({ measure, share: mean }), caption: words.onAverage(), colour: OKABE_ITO.blue };
  const width = figureWidth(rows.map(({ told }) => words.mean({ measure, share: told })));
  const top = head(words.title({ measure }), about, key);
  const dataTop = top.bottom + 12;
  const each = rowHeight(rows.length);
  const bottom = dataTop + rows.length * each;
  const footTexts = footOf(rows, groups.length, words);
  const footTop = bottom + AXIS_HEIGHT + 14;
  const height = footTop + (footTexts.length - 1) * lineHeight(SIZE.small) + FOOT;
  const notes = [
    ...top.notes,
    ...rows.flatMap((row, index) =>
      rowNotes(row, dataTop + index * each + TEXT_ROW / 2, { measure, width, words }),
    ),
    ...axisNotes(axis, bottom, measure, words.axis),
    ...foot(footTexts, footTop),
  ];
  const names = {
    pieces: words.pieces(),
    mine: words.mine(),
    mean: words.means(),
    half: words.halves(),
    range: words.ranges(),
  };
  return {
    name: 'averages',
    width: WIDTH,
    height,
    alt: altOf(rows, grouped, footTexts, words),
    config: {
      type: 'scatter',
      data: { datasets: marksOf(axis, rows, names) },
      options: {
        ...options(dataTop, height - bottom, notes),
        scales: { ...scales(axis, rows.length * each), names: namesScale(plainNames(rows, measure, words)) },
      },
    },
    plain: plainOptions(words.title({ measure }), true, {
      x: plainScale(measure, words.axis),
      names: PLAIN_NAMES,
    }),
  };
}
