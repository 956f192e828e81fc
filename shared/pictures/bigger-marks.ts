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

/** A point of the chart at so many grams; with no share, a gap in a line. */
type At = (grams: number, share: number | null) => Json;

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
  const at: At = (grams, share) => ({
    x: rounded(grams / gramsPerUnit, 1e3),
    y: share === null ? null : rounded(share, 1e5),
  });
  return [
    ...(bold === null ? [] : [boldLine(bold, at, names.finding)]),
    dots(pieces, at, names.pieces),
    ...(lines.length === 0 ? [] : [ownLines(lines, at, names.lines)]),
    ...(bold === null ? [] : [rangeEnds(bold, axis, at, names.ends), bowTie(bold, at, names.band)]),
  ];
}

const endsOf = ({ smallGrams, bigGrams }: BoldLine, [small, big]: BoldLine['share'], at: At): Json[] => [
  at(smallGrams, small),
  at(bigGrams, big),
];

const boldLine = (bold: BoldLine, at: At, label: string): Json => ({
  ...LINE,
  label,
  data: endsOf(bold, bold.share, at),
  borderColor: OKABE_ITO.vermillion,
  borderWidth: BOLD_WIDTH,
  borderCapStyle: 'round',
});

const dots = (pieces: readonly Point[], at: At, label: string): Json => ({
  label,
  data: pieces.map(({ grams, share }) => at(grams, share)),
  radius: (RADII.find(([most]) => pieces.length <= most) ?? RADII[3])[1],
  backgroundColor: OKABE_ITO.blue,
  borderColor: GROUND,
  borderWidth: 1,
  clip: false,
});

const ownLines = (lines: readonly OwnLine[], at: At, label: string): Json => ({
  ...LINE,
  label,
  data: lines.flatMap(({ small, big }, index) => [
    ...(index === 0 ? [] : [at(small.grams, null)]),
    at(small.grams, small.share),
    at(big.grams, big.share),
  ]),
  borderColor: OUTLINE,
  borderWidth: OWN_WIDTH,
});

function rangeEnds(
  { smallGrams, bigGrams }: BoldLine,
  { min, max }: { min: number; max: number },
  at: At,
  label: string,
): Json {
  const upright = (grams: number) => [at(grams, min), at(grams, max)];
  return {
    ...LINE,
    label,
    data: [...upright(smallGrams), at(bigGrams, null), ...upright(bigGrams)],
    borderColor: OUTLINE,
    borderWidth: END_WIDTH,
    borderDash: [6, 6],
    clip: false,
  };
}

const bowTie = (bold: BoldLine, at: At, label: string): Json => ({
  ...LINE,
  label,
  // Around: along the one edge and back along the other.
  data: [...endsOf(bold, bold.low, at), ...endsOf(bold, bold.high, at).toReversed()],
  pointStyle: 'rect',
  fill: 'shape',
  backgroundColor: PALE_VERMILLION,
  borderColor: PALE_VERMILLION,
  borderWidth: 0,
});
