/** Bands from one share to another, behind or over the dots of a row. */
import type { Json } from './picture.ts';

/** One band, and the row on which it lies. */
export interface Band {
  /** Fractions. */
  span: readonly [number, number];
  /** Layout pixels from the top of the data. */
  middle: number;
}

/**
 * One series of bands, each `thickness` layout pixels high; still a line where both ends are the same.
 * @param colour of all of them, or of each
 */
export const bandsOf = (
  label: string,
  bands: readonly Band[],
  thickness: number,
  colour: string | readonly string[],
): Json => ({
  type: 'bar',
  label,
  data: bands.map(({ span, middle }) => ({ x: span, y: middle })),
  indexAxis: 'y',
  grouped: false,
  barThickness: thickness,
  minBarLength: 6,
  backgroundColor: colour,
  clip: false,
});
