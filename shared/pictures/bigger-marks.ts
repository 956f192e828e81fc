/** The marks of *bigger*: pieces, people's own lines, and over them the finding as a line in its bow tie. */
import type { OwnLine, Point } from '../findings/scatter.ts';
import { MOST_MARKS, thin } from './dots.ts';
import { GROUND, OKABE_ITO, OUTLINE, PALE_VERMILLION } from './palette.ts';
import type { Json } from './picture.ts';

/** Layout pixels. */
const OWN_WIDTH = 1.25;
const BOLD_WIDTH = 7;
const END_WIDTH = 2;
/** The more dots, the smaller: of at most so many. */
const RADII = [
  [30, 8],
  [100, 6.5],
  [200, 5.5],
  [MOST_MARKS, 4.5],
] as const;

/** Lines from the small to the big end of the usual range, as fractions. */
export interface BoldLine {
  smallGrams: number;
  bigGrams: number;
  /** At the small and at the big end. */
  share: readonly [number, number];
  low: readonly [number, number];
  high: readonly [number, number];
}

/** What is drawn of a question about size. */
export interface BiggerMarks {
  pieces: readonly Point[];
  lines: readonly OwnLine[];
  bold: BoldLine | null;
}

/** What the series are called in a legend. */
export interface BiggerNames {
  pieces: string;
  lines: string;
  finding: string;
  band: string;
  ends: string;
}

/** A line that turns around its middle: as steep as this difference from end to end. */
export interface Turning {
  smallGrams: number;
  bigGrams: number;
  difference: number;
  low: number;
  high: number;
}

/** The finding through the middle; null over a range that has no width. */
export function boldLineOf(
  { smallGrams, bigGrams, difference, low, high }: Turning,
  middle: Point,
): BoldLine | null {
  if (!(bigGrams > smallGrams)) return null;
  const ends = (rise: number): readonly [number, number] => {
    const at = (grams: number) => middle.share + (rise * (grams - middle.grams)) / (bigGrams - smallGrams);
    return [at(smallGrams), at(bigGrams)];
  };
  return { smallGrams, bigGrams, share: ends(difference), low: ends(low), high: ends(high) };
}

/** An own line is its two ends and the gap to the next one. */
const OWN_MARKS = 3;
/** The bold line, its bow tie, and the ends of the usual range with the gap between them. */
const BOLD_MARKS = 2 + 4 + 5;

/** As many of the pieces, evenly out of their order, as there is room for beside the lines. */
export function chosenPieces<Piece>(pieces: readonly Piece[], lines: number, bold: boolean): Piece[] {
  const most = MOST_MARKS - lines * OWN_MARKS - (bold ? BOLD_MARKS : 0);
  const places = thin([...pieces.keys()], most);
  return places.flatMap((place) => pieces.slice(place, place + 1));
}

/** Weights in the axis' unit to a thousandth, shares to a thousandth of a point: less than a pixel. Never -0. */
const rounded = (value: number, parts: number): number => Math.round(value * parts) / parts + 0;

const LINE = { showLine: true, pointStyle: 'line', radius: 0 } as const;

/**
 * The chart's series, the topmost first.
 * @param gramsPerUnit of the axis of weights
 * @param axis of shares: the ends of the usual range are drawn from its foot to its head
 */
export function biggerMarks(
  { pieces, lines, bold }: BiggerMarks,
  gramsPerUnit: number,
  axis: { min: number; max: number },
  names: BiggerNames,
): readonly Json[] {
  const at = (grams: number, share: number): Json => ({
    x: rounded(grams / gramsPerUnit, 1e3),
    y: rounded(share, 1e5),
  });
  const gap = (grams: number): Json => ({ x: rounded(grams / gramsPerUnit, 1e3), y: null });
  const ends = (bold: BoldLine, share: readonly [number, number]) => [
    at(bold.smallGrams, share[0]),
    at(bold.bigGrams, share[1]),
  ];
  const upright = (grams: number) => [at(grams, axis.min), at(grams, axis.max)];
  return [
    bold === null
      ? null
      : {
          ...LINE,
          label: names.finding,
          data: ends(bold, bold.share),
          borderColor: OKABE_ITO.vermillion,
          borderWidth: BOLD_WIDTH,
          borderCapStyle: 'round',
        },
    {
      label: names.pieces,
      data: pieces.map(({ grams, share }) => at(grams, share)),
      radius: (RADII.find(([most]) => pieces.length <= most) ?? RADII[3])[1],
      backgroundColor: OKABE_ITO.blue,
      borderColor: GROUND,
      borderWidth: 1,
      clip: false,
    },
    lines.length === 0
      ? null
      : {
          ...LINE,
          label: names.lines,
          data: lines.flatMap(({ small, big }, index) => [
            ...(index === 0 ? [] : [gap(small.grams)]),
            at(small.grams, small.share),
            at(big.grams, big.share),
          ]),
          borderColor: OUTLINE,
          borderWidth: OWN_WIDTH,
        },
    bold === null
      ? null
      : {
          ...LINE,
          label: names.ends,
          data: [...upright(bold.smallGrams), gap(bold.bigGrams), ...upright(bold.bigGrams)],
          borderColor: OUTLINE,
          borderWidth: END_WIDTH,
          borderDash: [6, 6],
          clip: false,
        },
    bold === null
      ? null
      : {
          ...LINE,
          label: names.band,
          // Around: along the one edge and back along the other.
          data: [...ends(bold, bold.low), ...ends(bold, bold.high).toReversed()],
          pointStyle: 'rect',
          fill: 'shape',
          backgroundColor: PALE_VERMILLION,
          borderColor: PALE_VERMILLION,
          borderWidth: 0,
        },
  ].filter((series) => series !== null);
}
