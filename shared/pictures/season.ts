/** A season on one card: large figures, and a strip of its pieces. Nobody is named. */
import type { Season, WholeSpan } from '../club/season.ts';
import type { Totals } from '../club/totals.ts';
import { type Money, perWeight } from '../measure/money.ts';
import type { Show } from '../measure/show.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import { axisOf } from './axis.ts';
import {
  head,
  INNER_WIDTH,
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
import { INK, OKABE_ITO, QUIET_INK } from './palette.ts';
import type { Picture } from './picture.ts';
import { chosenDots, type Dot, stripNotes, stripScales, stripSeries } from './season-strip.ts';

/** Layout pixels: a large figure and what it is of, below it. */
const FIGURE = 122;
const CAPTION_DOWN = 56;
/** Where the second figure of a row begins. */
const SECOND_AT = 300;
const STRIP = { title: 56, over: 34, height: 230, under: 54, left: 72 } as const;

type Words = PictureWords['season'];

/** What the card of a season shows. */
export interface SeasonCard {
  season: Season;
  /** Told below the title. */
  span: WholeSpan;
  totals: Totals;
  /** The pieces that compare, in posting order; none where no piece does. */
  dots: readonly Dot[];
  measure: 'plate' | 'trim';
  /** When the strip begins and ends. */
  time: WholeSpan;
}

/** The pooled share of one weight. */
const shareOf = ({ weight, of }: { weight: number; of: number }): number => (of === 0 ? 0 : weight / of);

/** The cost on the plate, in the reader's unit. */
const plateCost = ({ plateCost: found }: Totals, show: Show): Money | null =>
  found === null ? null : perWeight(found.cost, found.weight, show.form.units);

interface Large {
  figure: string;
  caption: string;
  colour: string;
}

/** The large figures, one row each or two. */
function largeFigures({ totals }: SeasonCard, words: Words, show: Show): readonly (readonly Large[])[] {
  const { pieces: count, bought, plate, paid } = totals;
  const large = (figure: string, caption: string, colour: string = INK) => ({ figure, caption, colour });
  return [
    [
      large(show.count(count), words.pieces({ count })),
      ...(paid === null ? [] : [large(show.money(paid), words.paid())]),
    ],
    [large(show.weight(bought), words.bought())],
    ...(plate === null
      ? []
      : [
          [
            large(
              show.weight(plate.weight),
              words.plate({ count: plate.pieces < count ? plate.pieces : null }),
              OKABE_ITO.blue,
            ),
          ],
        ]),
  ];
}

const largeNotes = (rows: readonly (readonly Large[])[], top: number): readonly Note[] =>
  rows.flatMap((row, index) =>
    row.flatMap(({ figure, caption, colour }, place): readonly Note[] => {
      const x = MARGIN + place * SECOND_AT;
      const y = top + index * FIGURE + SIZE.key / 2;
      const width = row.length > 1 && place === 0 ? SECOND_AT - MARGIN : WIDTH - MARGIN - x;
      return [
        { text: figure, x, y, size: SIZE.key, bold: true, colour, width },
        { text: caption, x, y: y + CAPTION_DOWN, size: SIZE.label, colour: QUIET_INK, width },
      ];
    }),
  );

/** What else there is to tell, a line each. */
function details({ totals }: SeasonCard, words: Words, show: Show): readonly string[] {
  const { trim, saved } = totals;
  const cost = plateCost(totals, show);
  return [
    trim === null ? null : words.trim({ weight: trim.weight, share: shareOf(trim) }),
    saved === null ? null : words.saved(saved),
    cost === null ? null : words.plateCost({ cost }),
  ].filter((line) => line !== null);
}

const lineNotes = (lines: readonly string[], top: number): readonly Note[] =>
  lines.map((text, index) => ({
    text,
    x: MARGIN,
    y: top + index * lineHeight(SIZE.label),
    size: SIZE.label,
    colour: INK,
    width: INNER_WIDTH,
  }));

const stripTitle = (text: string, y: number): Note => ({
  text,
  x: MARGIN,
  y,
  size: SIZE.small,
  colour: QUIET_INK,
});

/** All its figures in sentences. */
function told(card: SeasonCard, words: Words, show: Show): readonly string[] {
  const { pieces: count, bought, plate, paid } = card.totals;
  return [
    words.altPieces({ count, bought }),
    ...(plate === null ? [] : [words.altPlate({ weight: plate.weight, share: shareOf(plate) })]),
    ...details(card, words, show).map((line) => `${line}.`),
    ...(paid === null ? [] : [words.altPaid({ paid })]),
  ];
}

function altOf(card: SeasonCard, best: string | null, words: Words, show: Show): string {
  const { season, span, dots } = card;
  const shares = dots.map(({ share }) => share);
  return [
    words.altHead({ season, span: words.span(span) }),
    ...told(card, words, show),
    shares.length === 0
      ? ''
      : words.altStrip({ count: shares.length, low: Math.min(...shares), high: Math.max(...shares) }),
    best === null ? '' : `${words.strip({ measure: card.measure })}, ${best}.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** The picture of a member's season. Its text says whose; the picture never does. */
export function seasonCardOf(card: SeasonCard, words: Words, show: Show): Picture {
  const { season, span, totals, measure, time } = card;
  const dots = chosenDots(card.dots);
  const best = dots.find((dot) => dot.best) ?? null;
  const bestText = best === null ? null : words.best({ measure, share: best.share });
  const key =
    totals.plate === null
      ? null
      : {
          figure: show.share(shareOf(totals.plate)),
          caption: words.onThePlate(),
          colour: OKABE_ITO.blue,
        };
  const top = head(words.title({ season }), words.span(span), key);
  const figuresTop = top.bottom + 24;
  const rows = largeFigures(card, words, show);
  const lines = details(card, words, show);
  const linesTop = figuresTop + rows.length * FIGURE + SIZE.label / 2;
  const linesBottom = linesTop + lines.length * lineHeight(SIZE.label);
  const drawn = dots.length > 0;
  const dataTop = linesBottom + (drawn ? STRIP.title + STRIP.over : 0);
  const bottom = dataTop + (drawn ? STRIP.height : 0);
  const height = bottom + (drawn ? STRIP.under : MARGIN / 2);
  const left = MARGIN + STRIP.left;
  const axis = axisOf(drawn ? dots.map(({ share }) => share) : [0]);
  const notes: readonly Note[] = [
    ...top.notes,
    ...largeNotes(rows, figuresTop),
    ...lineNotes(lines, linesTop),
    ...(drawn
      ? [
          stripTitle(words.strip({ measure }), linesBottom + STRIP.title / 2),
          ...stripNotes(
            dots,
            axis,
            time,
            { bottom, left, below: measure === 'trim', best: bestText ?? '' },
            words,
          ),
        ]
      : []),
  ];
  const common = options(dataTop, height - bottom, notes);
  const padding = { left, right: MARGIN, top: dataTop, bottom: height - bottom };
  return {
    name: 'season',
    width: WIDTH,
    height,
    alt: altOf(card, bestText, words, show),
    config: {
      type: 'scatter',
      data: {
        datasets: stripSeries(dots, { bestName: bestText ?? '', dotsName: words.dots() }),
      },
      options: {
        ...common,
        layout: { autoPadding: false, padding },
        scales: drawn ? stripScales(axis, time) : { x: { display: false }, y: { display: false } },
      },
    },
    plain: plainOptions([words.title({ season }), ...told(card, words, show)], drawn, {
      y: { display: drawn, ticks: { display: drawn, font: PLAIN_FONT, format: PERCENT } },
    }),
  };
}
