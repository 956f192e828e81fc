/** Pieces apart by weight, in bands with round ends. */
import { grams, NANOGRAMS, type Units } from '../measure/units.ts';
import { usualRange } from '../statistics/size-question.ts';
import { type Columns, eachOf, type Factor } from './columns.ts';

/** A band's key: `12-14 lb`, from the first up to below the second. */
export interface Band {
  low: number;
  high: number;
  unit: Units;
}

const GRAMS: Record<Units, number> = { lb: grams(NANOGRAMS.lb), kg: grams(NANOGRAMS.kg) };
const WIDTHS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];
/** Of the usual range; more are too thin to tell anything. */
const MOST_BANDS = 5;

/**
 * How wide bands are, so that the usual range of weights has about four of them.
 * @returns in `unit`
 * @example bandWidth(columns of 10 to 18 lb, 'lb') // 2
 */
export function bandWidth(columns: Columns, unit: Units): number {
  const range = usualRange(eachOf(columns).base);
  const span = range === null ? 0 : (range.big - range.small) / GRAMS[unit];
  return WIDTHS.find((width) => span / width <= MOST_BANDS) ?? 200;
}

/**
 * The band of each row, by the weight of one piece.
 * @example bandsOf(columns of 12.5 lb, 2, 'lb').values // ['12-14 lb']
 */
export function bandsOf(columns: Columns, width: number, unit: Units): Factor {
  const values: string[] = [];
  const codes = new Int32Array(columns.count);
  // By how many widths a band is above 0.
  const known: number[] = [];
  const { base } = eachOf(columns);
  for (let row = 0; row < columns.count; row++) {
    // A hair more, so that 12 lb, kept in grams, is not just below 12.
    const band = Math.floor((base[row] ?? 0) / GRAMS[unit] / width + 1e-9);
    known[band] ??= values.push(`${tidy(band * width)}-${tidy(band * width + width)} ${unit}`) - 1;
    codes[row] = known[band];
  }
  return { codes, values };
}

/** @example readBand('12-14 lb') // { low: 12, high: 14, unit: 'lb' } */
export function readBand(key: string): Band | null {
  const [, low, high, unit] = /^([\d.]+)-([\d.]+) (lb|kg)$/.exec(key) ?? [];
  return unit === 'lb' || unit === 'kg' ? { low: Number(low), high: Number(high), unit } : null;
}

const tidy = (value: number): number => Math.round(value * 10) / 10;
