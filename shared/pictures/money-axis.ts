/** An axis of money below a picture: from where to where, and the amounts at its lines. */
import type { Axis } from './axis.ts';

const STEPS = [1, 2, 5, 10] as const;
const MOST_TICKS = 6;
/** Keeps a value that is on a line, but for its last digits, from asking for one more. */
const DUST = 1e-9;
/** The least that an axis is wide, as a part of its greatest amount: what is nearly alike looks alike. */
const LEAST_SPAN = 0.1;
/** The same where every amount is next to nothing, in the currency's units: its figures must differ when printed. */
const SPAN_OF_NOTHING = 0.05;

/**
 * The round step that parts a span into few enough parts: 1, 2 or 5 times a power of ten.
 * @example roundStep(3.1, 6) // 1
 */
export function roundStep(span: number, parts: number): number {
  const power = 10 ** Math.floor(Math.log10(span / parts));
  return power * (STEPS.find((step) => step * power * parts >= span * (1 - DUST)) ?? 10);
}

/**
 * An axis on which all amounts lie.
 * @param values one or more; below 0 what was saved is worth more than what was paid
 * @example moneyAxis([8.97, 10.95]).ticks // [8.5, 9, 9.5, 10, 10.5, 11]
 */
export function moneyAxis(values: readonly number[]): Axis {
  const [least, greatest] = [Math.min(...values), Math.max(...values)];
  const span = Math.max(SPAN_OF_NOTHING, LEAST_SPAN * Math.max(Math.abs(least), Math.abs(greatest)));
  const wider = Math.max(0, span - (greatest - least)) / 2;
  const [low, high] = [least < 0 ? least - wider : Math.max(0, least - wider), greatest + wider];
  const step = roundStep(high - low, MOST_TICKS - 1);
  const [first, last] = [Math.floor(low / step + DUST), Math.ceil(high / step - DUST)];
  const ticks = Array.from({ length: last - first + 1 }, (_none, index) => rounded((first + index) * step));
  return { min: rounded(first * step), max: rounded(last * step), ticks };
}

const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;
