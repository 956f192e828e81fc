/** Kinds of pieces against each other, two a row: the difference within people, and where it likely lies. */
import type { PictureWords } from '../words/en/pictures.ts';
import type { Measure } from '../yield/measure.ts';
import {
  foot,
  head,
  INNER_WIDTH,
  lineHeight,
  MARGIN,
  namesScale,
  options,
  PLAIN_FONT,
  PLAIN_NAMES,
  plainOptions,
  SIZE,
  WIDTH,
} from './frame.ts';
import type { Note } from './notes.ts';
import { type PairRowMark, pairSeries } from './pairs-marks.ts';
import { altOf, axisOf, type Pairs, POINTS, plainNames, type Row, rowOf } from './pairs-rows.ts';
import { INK, QUIET_INK } from './palette.ts';
import type { Picture } from './picture.ts';
import { type Ticks, tickScale } from './ticks.ts';

/** More rows are more than a phone shows at a time. */
const MOST_PAIRS = 10;

/** Layout pixels: a row is a line of text, a strip of marks, and room to the next. */
const TEXT_ROW = 34;
const STRIP = 34;
const ROW = TEXT_ROW + STRIP + 12;
/** The columns at the right of a row's name: `-12.2 to +10.4`, `-2.2`. */
const LIKELY_WIDTH = 160;
const POINTS_WIDTH = 84;
const ZONE_ROW = 34;
const FIGURES_DOWN = 20;
const SIDES_DOWN = FIGURES_DOWN + lineHeight(SIZE.small) + 2;
const FOOT_DOWN = SIDES_DOWN + 38;
const FOOT = 28;

type Words = PictureWords['pairs'];

export type { Pair, Pairs } from './pairs-rows.ts';

/** The line over a row's marks: which two, the difference, where it likely lies. */
function rowNotes({ pair, mark }: Row, margin: number, top: number, words: Words): Note[] {
  const { name, difference, low, high } = pair;
  const y = top + TEXT_ROW / 2;
  const right = { y, align: 'right' } as const;
  const told = mark !== null && difference !== null && low !== null && high !== null;
  return [
    {
      text: name,
      x: MARGIN,
      y,
      size: SIZE.label,
      colour: INK,
      width: INNER_WIDTH - (told ? LIKELY_WIDTH + POINTS_WIDTH : 0),
    },
    ...(told
      ? [
          {
            ...right,
            text: words.points({ difference }),
            x: WIDTH - MARGIN,
            size: SIZE.label,
            bold: true,
            colour: INK,
          },
          {
            ...right,
            text: words.likely({ low, high }),
            x: WIDTH - MARGIN - POINTS_WIDTH,
            size: SIZE.small,
            colour: QUIET_INK,
          },
        ]
      : [
          {
            text: words.early(),
            x: { at: margin * POINTS, shift: 12 },
            y: top + TEXT_ROW + STRIP / 2,
            size: SIZE.small,
            colour: QUIET_INK,
          },
        ]),
  ];
}

/** The figures below the rows, and what either side of 0 means. */
function axisNotes({ ticks, step }: Ticks, bottom: number, measure: Measure, words: Words['axis']): Note[] {
  const quiet = { size: SIZE.small, colour: QUIET_INK };
  const side = { ...quiet, y: bottom + SIDES_DOWN };
  return [
    ...ticks.map((value): Note => {
      const text = words.points({ value, step });
      return { ...quiet, text, x: { at: value }, y: bottom + FIGURES_DOWN, align: 'center' };
    }),
    { ...side, text: words.less({ measure }), x: MARGIN },
    { ...side, text: words.more({ measure }), x: WIDTH - MARGIN, align: 'right' },
  ];
}

function footOf({ pairs, count, members }: Pairs, rows: readonly Row[], axis: Ticks, words: Words): string[] {
  const marks = rows.flatMap(({ mark }) => (mark === null ? [] : [mark]));
  return [
    marks.length === 0 ? null : words.reading(),
    marks.some(({ low, high }) => low < axis.min || high > axis.max) ? words.beyond() : null,
    rows.length < pairs.length ? words.shown({ drawn: rows.length, all: pairs.length }) : null,
    words.counts({ count, members }),
  ].filter((line) => line !== null);
}

/** The picture of pairs; of many the first ten. Throws a RangeError without any pair. */
export function pairsOf(of: Pairs, words: Words): Picture {
  if (of.pairs.length === 0) throw new RangeError('there is no pair to draw');
  const { measure, about, margin } = of;
  const rows = of.pairs.slice(0, MOST_PAIRS).map((pair) => rowOf(pair, margin));
  const axis = axisOf(
    rows.flatMap(({ mark }) => (mark === null ? [] : [mark])),
    margin * POINTS,
  );
  const top = head(words.title(), about, null);
  const zoneY = top.bottom + 14 + ZONE_ROW / 2;
  const dataTop = zoneY + ZONE_ROW / 2;
  const bottom = dataTop + rows.length * ROW;
  const footTexts = footOf(of, rows, axis, words);
  const footTop = bottom + FOOT_DOWN;
  const height = footTop + (footTexts.length - 1) * lineHeight(SIZE.small) + FOOT;
  const small = { y: zoneY, size: SIZE.small, colour: QUIET_INK };
  const notes: Note[] = [
    ...top.notes,
    { ...small, text: words.zone({ margin }), x: MARGIN },
    { ...small, text: words.inPoints(), x: WIDTH - MARGIN, align: 'right' },
    ...rows.flatMap((row, index) => rowNotes(row, margin, dataTop + index * ROW, words)),
    ...axisNotes(axis, bottom, measure, words.axis),
    ...foot(footTexts, footTop),
  ];
  const marks = rows.map(
    ({ mark }, index): PairRowMark => ({ mark, middle: index * ROW + TEXT_ROW + STRIP / 2 }),
  );
  const names = {
    differences: words.differences(),
    ranges: words.ranges(),
    none: words.none(),
    same: words.same(),
  };
  return {
    name: 'pairs',
    width: WIDTH,
    height,
    alt: altOf(of, rows, words),
    config: {
      type: 'scatter',
      data: { datasets: pairSeries(marks, { margin: margin * POINTS, height: STRIP }, axis, names) },
      options: {
        ...options(dataTop, height - bottom, notes),
        scales: {
          x: tickScale(axis),
          y: { type: 'linear', display: false, offset: false, min: 0, max: rows.length * ROW, reverse: true },
          names: namesScale(plainNames(rows, words)),
        },
      },
    },
    plain: plainOptions(words.title(), true, {
      x: {
        display: true,
        ticks: { display: true, padding: 4, font: PLAIN_FONT },
        title: { display: true, text: words.axis.caption({ measure }), font: PLAIN_FONT },
      },
      names: PLAIN_NAMES,
    }),
  };
}
