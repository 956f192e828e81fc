/** Round figures along an axis of any unit: in steps of 1, 2 or 5 and so many noughts. */
import type { Axis } from './axis.ts';
import { GRID } from './palette.ts';
import type { Json } from './picture.ts';

/** All in the axis' own unit. It may begin and end between two figures. */
export interface Ticks extends Axis {
  step: number;
}

const MOST_TICKS = 8;
const STEPS = [1, 2, 5, 10] as const;
/** Keeps a figure that is an end, but for its last digits. */
const DUST = 1e-9;
/** Of a step. */
const A_LITTLE = 0.02;

/**
 * An axis from `low` to `high`, with at most eight figures on it, evenly apart.
 * @param high above `low`; both finite
 * @example ticksOf(8.2, 21.9) // { min: 8.2, max: 21.9, step: 2, ticks: [10, 12, 14, 16, 18, 20] }
 */
export function ticksOf(low: number, high: number): Ticks {
  const noughts = 10 ** Math.floor(Math.log10((high - low) / MOST_TICKS));
  const ends = (step: number) => [Math.ceil(low / step - DUST), Math.floor(high / step + DUST)] as const;
  const steps = STEPS.map((digit) => digit * noughts);
  const step = steps.find((one) => ends(one)[1] - ends(one)[0] < MOST_TICKS) ?? 20 * noughts;
  const [first, last] = ends(step);
  // Products of a tenth are a little off: 3 * 0.1 is not 0.3.
  const at = (index: number) => Number((index * step).toPrecision(12));
  const ticks = Array.from({ length: last - first + 1 }, (_none, index) => at(first + index));
  return { min: low, max: notWhole(low, high, step), step: at(1), ticks };
}

/** An axis of whole steps would have its lines from its end on, wherever the figures are (Chart.js, linear scale). */
function notWhole(low: number, high: number, step: number): number {
  const steps = (high - low) / step;
  return Math.abs(steps - Math.round(steps)) < A_LITTLE / 2 ? high + A_LITTLE * step : high;
}

/** The chart's scale of it: a line to read along at each figure, which our notes tell. */
export const tickScale = ({ min, max, step }: Ticks): Json => ({
  type: 'linear',
  min,
  max,
  border: { display: false },
  grid: { color: GRID, drawTicks: false, lineWidth: 2 },
  ticks: { display: false, includeBounds: false, stepSize: step, padding: 0 },
});
