/** Shares as people type them: in points, or in per cent. */
import { fold } from './fold.ts';

/** What may stand after the number: in English, German and Spanish. */
const UNITS = /^(?:%|pp|pts?|points?|percent|per cent|prozent|prozentpunkte?|punkte?|puntos?|por ciento)?$/;
const NUMBER = /^(\d{1,3})(?:[.,](\d))?\s*(.*)$/;

/**
 * The fraction that a text says in hundredths, with at most one digit after the mark, since that is what is printed.
 * Null for anything else, signs and smaller steps included.
 *
 * @example readPercent('2.5 points') // 0.025
 * @example readPercent('0,05') // null
 */
export function readPercent(text: string): number | null {
  const [, whole, tenths = '0', unit = ''] = NUMBER.exec(fold(text)) ?? [];
  if (whole === undefined || !UNITS.test(unit)) return null;
  return (Number(whole) * 10 + Number(tenths)) / 1000;
}
