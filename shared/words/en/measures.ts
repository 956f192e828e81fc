/** What each measure is called in a sentence. */
import type { Measure } from '../../yield/measure.ts';

/** After the share of an average piece. */
export const AVERAGE_PIECE: Record<Measure, string> = {
  trim: 'off the average piece',
  cooking: 'of the average piece kept in the heat',
  carving: 'of the average piece kept at the board',
  plate: 'of the average piece on the plate',
};

/** Over a picture or a list of groups. */
export const MEASURE_TITLES: Record<Measure, string> = {
  trim: 'What comes off raw',
  cooking: 'What is kept in the heat',
  carving: 'What is kept at the board',
  plate: 'What gets to the plate',
};

/** After the share of one piece. */
export const OF_PIECE: Record<Measure, string> = {
  trim: 'came off',
  cooking: 'kept in the heat',
  carving: 'kept at the board',
  plate: 'on the plate',
};

/** What each is a share of. */
export const SHARE_OF: Record<Measure, string> = {
  trim: 'of the weight bought',
  cooking: 'of the weight into the heat',
  carving: 'of the weight off the heat',
  plate: 'of the weight bought',
};
