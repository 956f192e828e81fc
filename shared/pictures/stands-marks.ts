/** The marks of *where it stands*: this piece, the mean, the others as dots, the middle half behind them. */
import { type Axis, along, shareAt } from './axis.ts';
import { bandsOf } from './bands.ts';
import { radiusOf, stacks } from './dots.ts';
import { INK, OKABE_ITO, PALE_BLUE } from './palette.ts';
import type { Json } from './picture.ts';

const DOTS = OKABE_ITO.blue;
/** This piece differs in shape, size and place as well. */
export const THIS = OKABE_ITO.vermillion;

/** Layout pixels, from the top of the data down: the mean's text, the dots, and this piece below them. */
export const MEAN_STRIP = 36;
const FIELD = { least: 60, most: 280 } as const;
const LEAST_STEP = 5;
const LANE = 44;

/** The radius of this piece's mark. */
export const MARK = 17;
/** The dots stand this high over the lane of this piece. */
const ABOVE_LANE = 4;

/** What is drawn of a piece among the others. */
export interface Marks {
  /** Shares as fractions; null where there is none to be marked. */
  own: number | null;
  /** Ascending. */
  others: readonly number[];
  mean: number | null;
  half: readonly [number, number] | null;
}

/** What each is called where a legend tells them apart. */
export interface MarkNames {
  own: string;
  mean: string;
  others: string;
  half: string;
}

/** The chart's series, the topmost first, and how high they are together; `lane`: the middle of this piece's mark. */
export function marksOf(
  axis: Axis,
  { own, others, mean, half }: Marks,
  names: MarkNames,
): { datasets: readonly Json[]; height: number; lane: number } {
  const { step, rows } = stacks([others.map((share) => along(axis, share))], FIELD.most, LEAST_STEP);
  const dots = rows[0] ?? [];
  const highest = Math.max(0, ...dots.map(({ of }) => of));
  const strip = mean === null ? 0 : MEAN_STRIP;
  const base = strip + Math.max(FIELD.least, highest * step + ABOVE_LANE);
  const height = base + LANE;
  const lane = base + LANE / 2;
  const dotAt = ({ along, level }: { along: number; level: number }) => ({
    x: shareAt(axis, along),
    y: base - ABOVE_LANE - (level + 0.5) * step,
  });
  return {
    height,
    lane,
    datasets: [
      own === null
        ? null
        : {
            label: names.own,
            data: [{ x: own, y: lane }],
            pointStyle: 'rectRot',
            radius: MARK,
            backgroundColor: THIS,
            borderColor: INK,
            borderWidth: 2,
            clip: false,
          },
      mean === null
        ? null
        : {
            label: names.mean,
            data: [
              { x: mean, y: strip - 4 },
              { x: mean, y: base },
            ],
            showLine: true,
            pointStyle: 'line',
            radius: 0,
            borderColor: INK,
            borderWidth: 3,
            clip: false,
          },
      dots.length === 0
        ? null
        : {
            label: names.others,
            data: dots.map(dotAt),
            radius: radiusOf(step),
            backgroundColor: DOTS,
            borderWidth: 0,
            clip: false,
          },
      half === null ? null : bandsOf(names.half, [{ span: half, middle: base / 2 }], base, PALE_BLUE),
    ].filter((series) => series !== null),
  };
}
