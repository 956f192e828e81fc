/**
 * The colours of every picture. Series take the eight of Okabe and Ito, which stay apart for the colour-blind;
 * none of them ever tells something that a word or a shape does not tell too.
 */

/** Okabe and Ito (2008), "Color Universal Design". */
export const OKABE_ITO = {
  blue: '#0072B2',
  orange: '#E69F00',
  green: '#009E73',
  purple: '#CC79A7',
  sky: '#56B4E9',
  vermillion: '#D55E00',
  yellow: '#F0E442',
  black: '#000000',
} as const;

/** Opaque, so that a picture reads the same in a light and in a dark theme. */
export const GROUND = '#FFFFFF';
/** Texts that matter: 17 to 1 on the ground. */
export const INK = '#1A1A1A';
/** Texts that explain: 7 to 1 on the ground. */
export const QUIET_INK = '#555555';
/** The full length of a measure, behind what is measured. */
export const TRACK = '#ECECEC';
/** The edge of what is not known yet: 5 to 1 on the ground. */
export const OUTLINE = '#6E6E6E';
/** {@link OKABE_ITO} blue, a third of it on the ground: what a bar is a part of. */
export const PALE_BLUE = '#B3D5E8';
/** The same of vermillion: where a line may lie. */
export const PALE_VERMILLION = '#F1C9AA';
/** What is too small to matter, behind what is measured: seen on the ground and on {@link TRACK}. */
export const PALE_GREY = '#DCDCDC';
/** Lines to read along, behind everything. */
export const GRID = '#EFEFEF';
