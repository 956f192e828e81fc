/** Where the weight of one piece went: from what was bought, down stage by stage, to what is on the plate. */
import type { Show } from '../measure/show.ts';
import { NANOGRAMS, type Nanograms } from '../measure/units.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import {
  foot,
  head,
  type KeyFigure,
  MARGIN,
  options,
  PLAIN_FONT,
  plainOptions,
  SIZE,
  WIDTH,
} from './frame.ts';
import type { Note } from './notes.ts';
import { INK, QUIET_INK } from './palette.ts';
import type { Picture } from './picture.ts';
import { gained, type Stage, stagesOf, type WayFigures } from './stages.ts';
import { KEPT, LOST, layers } from './where-bars.ts';

/** Layout pixels: one row is a line of text and the bar below it. */
const ROW = 66;
/** From the middle of a bar up to the middle of its text. */
const TEXT_UP = 28;
/** The share's room at the right edge: `100.0 %`. */
const SHARE_WIDTH = 128;
/** The stage's room at the left edge. */
const NAME_WIDTH = 340;
const FOOT = 44;

type Words = PictureWords['whereItWent'];

const nanograms = (grams: number): Nanograms => Math.round(grams * NANOGRAMS.g) as Nanograms;

/** What stands beside a row, in the picture and in its alt text. */
interface Row {
  stage: Stage;
  name: string;
  /** Never negative; null where not weighed. */
  weight: Nanograms | null;
  /** Of what was bought. */
  share: number | null;
}

function rowOf(stage: Stage, boughtGrams: number, words: Words): Row {
  const name = gained(stage) ? words.gained[stage.name]() : words.stages[stage.name]();
  if (stage.grams === null) return { stage, name, weight: null, share: null };
  const grams = Math.abs(stage.grams);
  return { stage, name, weight: nanograms(grams), share: grams / boughtGrams };
}

/** The line above a bar: the stage's name at the left, its weight and its share in two columns at the right. */
function rowNotes(
  { stage, name, weight, share }: Row,
  at: number,
  words: Words,
  show: Show,
): readonly Note[] {
  const line = { y: { at, shift: -TEXT_UP }, size: SIZE.label };
  const right = { ...line, align: 'right' } as const;
  const left = { ...line, text: name, x: MARGIN, width: NAME_WIDTH };
  if (weight === null || share === null) {
    return [
      { ...left, colour: QUIET_INK },
      { ...right, text: words.notWeighed(stage), x: WIDTH - MARGIN, colour: QUIET_INK },
    ];
  }
  const bold = stage.kind === 'total';
  return [
    { ...left, bold, colour: INK },
    { ...right, text: show.weight(weight), x: WIDTH - MARGIN - SHARE_WIDTH, bold, colour: INK },
    { ...right, text: show.share(share), x: WIDTH - MARGIN, bold, colour: INK },
  ];
}

/** The same for a renderer that does not draw notes: it shows the axis instead. */
const labelOf = ({ stage, name, weight, share }: Row, words: Words, show: Show): readonly string[] =>
  weight === null || share === null
    ? [name, words.notWeighed(stage)]
    : [name, `${show.weight(weight)}, ${show.share(share)}`];

/** The figure to look at first: on the plate, until then what is off the heat, until then what came off. */
function keyOf(rows: readonly Row[], show: Show): KeyFigure | null {
  for (const wanted of ['served', 'cooked', 'trim']) {
    const row = rows.find(({ stage }) => stage.name === wanted);
    if (row && row.share !== null) {
      return {
        figure: show.share(row.share),
        caption: row.name,
        colour: row.stage.kind === 'total' ? KEPT : LOST,
      };
    }
  }
  return null;
}

/** The same in words; no more of `about` than leaves room for every stage. */
function altOf(rows: readonly Row[], about: string, kept: string | null, words: Words): string {
  const sentences = rows.map(({ stage: { kind, name: stage, late }, name, weight, share }) =>
    weight === null
      ? words.altNotWeighed({ name, late })
      : words.altStage({ name, weight, share: kind === 'total' && stage === 'bought' ? null : share }),
  );
  return [
    words.altHead({ about: [...about].slice(0, 160).join('') }),
    ...sentences,
    ...(kept === null ? [] : [`${kept}.`]),
  ].join(' ');
}

/**
 * The picture of one piece, or of one lot weighed together.
 * @param about what it is the picture of: `Whole brisket, piece 128`; drawn as it stands, so no names of people
 */
export function whereItWent(figures: WayFigures, about: string, words: Words, show: Show): Picture {
  const { boughtGrams } = figures;
  const stages = stagesOf(figures);
  const rows = stages.map((stage) => rowOf(stage, boughtGrams, words));
  const kept = words.kept(figures);
  const top = head(words.title(), about, keyOf(rows, show));
  // A bar stands in the middle of its row, and its text above it needs as much room in the first row.
  const rowsTop = top.bottom + TEXT_UP - 4;
  const rowsBottom = rowsTop + rows.length * ROW;
  const height = rowsBottom + (kept === null ? MARGIN / 2 : FOOT);
  const notes = [
    ...top.notes,
    ...rows.flatMap((row, index) => rowNotes(row, index, words, show)),
    ...foot(kept === null ? [] : [kept], rowsBottom + 12),
  ];
  return {
    name: 'where-it-went',
    width: WIDTH,
    height,
    alt: altOf(rows, about, kept, words),
    config: {
      type: 'bar',
      data: { labels: rows.map((row) => labelOf(row, words, show)), datasets: layers(stages, boughtGrams) },
      options: {
        ...options(rowsTop, height - rowsBottom, notes),
        indexAxis: 'y',
        scales: {
          x: { display: false, min: 0, max: Math.max(...stages.flatMap(({ span }) => span)) },
          y: { display: false },
        },
      },
    },
    plain: plainOptions(words.title(), false, {
      y: { display: true, ticks: { font: PLAIN_FONT } },
    }),
  };
}
