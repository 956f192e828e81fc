/** Pieces apart by weight, in bands with round ends. */
import type { Units } from '../measure/units.ts';
import { usualRange } from '../statistics/size-question.ts';
import type { Columns, Factor } from './store.ts';

/** A band's key: `12-14 lb`, from the first up to below the second. */
export interface Band {
  low: number;
  high: number;
  unit: Units;
}

const GRAMS: Record<Units, number> = { lb: 453.59237, kg: 1000 };
const WIDTHS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];
/** Of the usual range; more are too thin to tell anything. */
const MOST_BANDS = 5;

/**
 * How wide bands are, so that the usual range of weights has about four of them.
 * @returns in `unit`
 * @example bandWidth(columns of 10 to 18 lb, 'lb') // 2
 */
export function bandWidth(columns: Columns, unit: Units): number {
  const range = usualRange(eachWeight(columns));
  const span = range === null ? 0 : (range.big - range.small) / GRAMS[unit];
  return WIDTHS.find((width) => span / width <= MOST_BANDS) ?? 200;
}

/** The band of each row, by the weight of one piece. */
export function bandsOf(columns: Columns, width: number, unit: Units): Factor {
  const values: string[] = [];
  const codes = eachWeight(columns).map((weight) => {
    // A hair more, so that 12 lb, kept in grams, is not just below 12.
    const low = Math.floor(weight / GRAMS[unit] / width + 1e-9) * width;
    const key = `${tidy(low)}-${tidy(low + width)} ${unit}`;
    if (!values.includes(key)) values.push(key);
    return values.indexOf(key);
  });
  return { codes: Int32Array.from(codes), values };
}

/** @example readBand('12-14 lb') // { low: 12, high: 14, unit: 'lb' } */
export function readBand(key: string): Band | null {
  const [, low, high, unit] = /^([\d.]+)-([\d.]+) (lb|kg)$/.exec(key) ?? [];
  return unit === 'lb' || unit === 'kg' ? { low: Number(low), high: Number(high), unit } : null;
}

const tidy = (value: number): number => Math.round(value * 10) / 10;

const eachWeight = ({ base, pieces }: Columns): Float64Array =>
  base.map((weight, row) => weight / (pieces[row] || 1));
