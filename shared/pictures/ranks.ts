/** People by rank, as numbers: each a mark at a share that a lucky piece can't lead with, and its likely range. */
import type { PictureWords } from '../words/en/pictures.ts';
import type { Averaged } from '../yield/measure.ts';
import { AXIS_HEIGHT, axisFor, axisNotes, plainScale, scales } from './axis.ts';
import {
  figureWidth,
  foot,
  head,
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
import { OKABE_ITO, QUIET_INK } from './palette.ts';
import type { Picture } from './picture.ts';
import { HEAD_ROW, headNotes, marksWidth, paddingOf, rankNotes } from './rank-columns.ts';
import { dividerScale, rankSeries } from './ranks-marks.ts';
import { altOf, DIVIDED, footOf, laidOut, type Ranks, type Row } from './ranks-rows.ts';

/** Layout pixels: the divider below the last placed row, and the small print. */
const DIVIDER = 6;
const FOOT = 26;

type Words = PictureWords['ranks'];

/** The columns of a row, from `top` of the data. */
const notesOf = (
  { place, pieces, share, standing, middle }: Row,
  top: number,
  { measure, figures, words }: { measure: Averaged; figures: number; words: Words },
) =>
  rankNotes(
    {
      place: words.place({ place }),
      pieces: words.pieces({ count: pieces }),
      figure: words.share({ measure, share }),
      weight: standing === 'leads' ? 'bold' : standing === 'new' ? 'quiet' : 'plain',
    },
    top + middle,
    figures,
  );

/** What stands below the divider. */
const newNote = (y: number, words: Words): Note => ({
  text: words.newHere(),
  x: MARGIN,
  y,
  size: SIZE.small,
  colour: QUIET_INK,
});

/** The picture of a ranking by share; of many the first twelve. Throws a RangeError without a row. */
export function ranksOf(ranks: Ranks, words: Words): Picture {
  const { measure, about, all } = ranks;
  const { rows, provisional, height: dataHeight } = laidOut(ranks.rows, measure);
  const axis = axisFor(
    measure,
    rows.flatMap(({ share, low, high }) => [share, low, high]),
  );
  const leader = rows.find(({ standing }) => standing === 'leads');
  const key =
    leader === undefined
      ? null
      : {
          figure: words.share({ measure, share: leader.share }),
          caption: words.inTheLead(),
          colour: OKABE_ITO.blue,
        };
  const figures = figureWidth(rows.map(({ share }) => words.share({ measure, share })));
  const top = head(words.title({ measure }), about, key);
  const dataTop = top.bottom + 8 + HEAD_ROW;
  const bottom = dataTop + dataHeight;
  const footTexts = footOf(rows, all, words);
  const footTop = bottom + AXIS_HEIGHT + 14;
  const height = footTop + (footTexts.length - 1) * lineHeight(SIZE.small) + FOOT;
  const notes = [
    ...top.notes,
    ...headNotes(figures, dataTop - HEAD_ROW / 2, words),
    ...rows.flatMap((row) => notesOf(row, dataTop, { measure, figures, words })),
    ...(provisional === null ? [] : [newNote(dataTop + provisional + DIVIDED / 2 + 4, words)]),
    ...axisNotes(axis, bottom, measure, words.axis, marksWidth(figures)),
    ...foot(footTexts, footTop),
  ];
  const common = options(dataTop, height - bottom, notes);
  return {
    name: 'ranks',
    width: WIDTH,
    height,
    alt: altOf(rows, ranks, words),
    config: {
      type: 'scatter',
      data: { datasets: rankSeries(rows, words) },
      options: {
        ...common,
        layout: { autoPadding: false, padding: paddingOf(figures, dataTop, height - bottom) },
        scales: {
          ...scales(axis, dataHeight),
          ...(provisional === null || leader === undefined
            ? {}
            : { divider: dividerScale(provisional + DIVIDER, dataHeight) }),
          names: namesScale(
            rows.map(({ place, share }) => [words.place({ place }), words.share({ measure, share })]),
          ),
        },
      },
    },
    plain: plainOptions(words.title({ measure }), true, {
      x: plainScale(measure, words.axis),
      names: PLAIN_NAMES,
    }),
  };
}
