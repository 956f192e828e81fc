/** What each measure is called in a sentence. */
import type { Measure } from '../../yield/measure.ts';

/** After the share of an average piece. */
export const AVERAGE_PIECE: Record<Measure, string> = {
  trim: 'off the average piece',
  cooking: 'of the average piece kept in the heat',
  carving: 'of the average piece kept at the board',
  plate: 'of the average piece on the plate',
};
