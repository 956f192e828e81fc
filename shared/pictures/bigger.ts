/** Do bigger pieces lose less? Pieces by weight, each member's own line, and the finding over the usual range. */
import type { Scatter } from '../findings/scatter.ts';
import type { Show } from '../measure/show.ts';
import { NANOGRAMS, grams as plainGrams } from '../measure/units.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import type { Measure } from '../yield/measure.ts';
import { shortened, withinAlt } from './alt.ts';
import { axisNotes, endNotes, FIGURES_WIDTH, sharesOf, WEIGHTS_HEIGHT, weightsOf } from './bigger-axes.ts';
import { type BiggerMarks, biggerMarks, boldLineOf, chosenPieces, type Turning } from './bigger-marks.ts';
import {
  foot,
  head,
  lineHeight,
  MARGIN,
  options,
  PERCENT,
  PLAIN_FONT,
  plainOptions,
  SIZE,
  WIDTH,
} from './frame.ts';
import type { Note } from './notes.ts';
import { OKABE_ITO, QUIET_INK } from './palette.ts';
import type { Json, Picture } from './picture.ts';
import { type Ticks, tickScale } from './ticks.ts';

/** Layout pixels: the data, and the lines of words above and below them. */
const DATA_HEIGHT = 460;
const CAPTION_DOWN = 20;
const ENDS_DOWN = CAPTION_DOWN + lineHeight(SIZE.small) + 7;
const TO_DATA = 28;
const FOOT_BELOW = WEIGHTS_HEIGHT + 24;
const FOOT = 28;

type Words = PictureWords['bigger'];

/** What the pieces say: the difference in shares, big less small, and its ends. */
export type BiggerFinding = Turning;

/** What the picture of a question about size shows. */
export interface Bigger extends Scatter {
  measure: Measure;
  /** What it is of: `Whole packer brisket, this year`. Drawn as it stands, so no names of people. */
  about: string;
  /** Null while it is too early: then neither a line nor a band is drawn. */
  finding: BiggerFinding | null;
  /** Whether the finding settles the question; else it is how it stands so far. */
  settled: boolean;
}

/** What is drawn of it, on which axes. */
interface Drawn extends BiggerMarks {
  weights: Ticks;
  shares: Ticks;
}

function drawnOf({ pieces: given, lines, middle, finding }: Bigger, gramsPerUnit: number): Drawn {
  const bold = finding === null || middle === null ? null : boldLineOf(finding, middle);
  const pieces = chosenPieces(given, lines.length, bold !== null);
  const ends = lines.flatMap(({ small, big }) => [small, big]);
  const grams = [
    ...[...pieces, ...ends].map((point) => point.grams),
    ...(bold === null ? [] : [bold.smallGrams, bold.bigGrams]),
  ];
  const reached = [
    ...ends.map(({ share }) => share),
    ...(bold === null ? [] : [...bold.share, ...bold.low, ...bold.high]),
  ];
  return {
    pieces,
    lines,
    bold,
    weights: weightsOf(grams.map((weight) => weight / gramsPerUnit)),
    shares: sharesOf(
      pieces.map(({ share }) => share),
      reached,
    ),
  };
}

function footOf({ count, members, settled }: Bigger, { pieces, lines, bold }: Drawn, words: Words): string[] {
  return [
    words.reading({ lines: lines.length > 0 }),
    bold === null ? words.early() : words.readingFinding({ settled }),
    words.counts({ count, members, drawn: pieces.length }),
  ];
}

function altOf(of: Bigger, { pieces, bold }: Drawn, words: Words): string {
  const { about, measure, finding, settled, count, members } = of;
  const shares = pieces.map(({ share }) => share);
  return withinAlt([
    words.altHead({ about: shortened(about), measure }),
    finding === null || bold === null ? `${words.early()}.` : words.altFinding({ ...finding, settled }),
    words.altRange({ low: Math.min(...shares), high: Math.max(...shares) }),
    `${words.counts({ count, members, drawn: pieces.length })}.`,
  ]);
}

function plainOf(
  { measure, finding }: Bigger,
  { bold }: Drawn,
  words: Words,
): { readonly [key: string]: Json } {
  const axis = (text: string, format: Json) => ({
    display: true,
    ticks: { display: true, padding: 4, font: PLAIN_FONT, ...(format === null ? {} : { format }) },
    title: { display: true, text, font: PLAIN_FONT },
  });
  const told =
    finding === null || bold === null
      ? words.early()
      : `${words.points(finding)} ${words.inPoints()}, ${words.bigAgainstSmall()}`;
  return plainOptions([words.title(), told], true, {
    x: axis(words.axis.weights({ measure }), null),
    y: axis(words.axis.shares({ measure }), PERCENT),
  });
}

/**
 * The picture of a question about size. Of many pieces an even choice is drawn, which says so.
 * Throws a RangeError without any piece.
 */
export function biggerOf(of: Bigger, words: Words, show: Show): Picture {
  if (of.pieces.length === 0) throw new RangeError('there is no piece to draw');
  const { measure, about, finding } = of;
  const gramsPerUnit = plainGrams(NANOGRAMS[show.form.units]);
  const drawn = drawnOf(of, gramsPerUnit);
  const { bold } = drawn;
  const key =
    finding === null || bold === null
      ? null
      : { figure: words.points(finding), caption: words.inPoints(), colour: OKABE_ITO.vermillion };
  const top = head(words.title(), about, key);
  const caption = top.bottom + CAPTION_DOWN;
  const dataTop = (bold === null ? caption : top.bottom + ENDS_DOWN) + TO_DATA;
  const bottom = dataTop + DATA_HEIGHT;
  const footTexts = footOf(of, drawn, words);
  const footTop = bottom + FOOT_BELOW;
  const height = footTop + (footTexts.length - 1) * lineHeight(SIZE.small) + FOOT;
  const quiet = { size: SIZE.small, colour: QUIET_INK };
  const notes: Note[] = [
    ...top.notes,
    ...(key === null
      ? []
      : [
          { ...quiet, text: words.bigAgainstSmall(), x: WIDTH - MARGIN, y: caption, align: 'right' } as const,
        ]),
    ...axisNotes(drawn, measure, { caption, bottom }, words.axis),
    ...(bold === null ? [] : endNotes(bold, gramsPerUnit, top.bottom + ENDS_DOWN, words)),
    ...foot(footTexts, footTop),
  ];
  const names = {
    pieces: words.pieces(),
    lines: words.lines(),
    finding: words.finding(),
    band: words.band(),
    ends: bold === null ? '' : words.ends(bold),
  };
  return {
    name: 'bigger',
    width: WIDTH,
    height,
    alt: altOf(of, drawn, words),
    config: {
      type: 'scatter',
      data: { datasets: biggerMarks(drawn, gramsPerUnit, drawn.shares, names) },
      options: {
        ...options(dataTop, height - bottom, notes),
        layout: {
          autoPadding: false,
          padding: { left: MARGIN + FIGURES_WIDTH, right: MARGIN, top: dataTop, bottom: height - bottom },
        },
        scales: { x: tickScale(drawn.weights), y: tickScale(drawn.shares) },
      },
    },
    plain: plainOf(of, drawn, words),
  };
}
