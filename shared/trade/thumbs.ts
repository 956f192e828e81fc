/** Rules of thumb: what usually comes off a cut and what of it is served, where neither a club nor a table tells. */
import type { Cut } from './cut.ts';

/** Shares of the weight bought. Common practice, no source: from memory. */
export interface Thumb {
  /** What the knife takes off raw. */
  trim: number;
  /** What gets to the plate. */
  plate: number;
  /** The standard deviation of that from piece to piece; null where nobody says. */
  plateDeviation: number | null;
}

/**
 * A whole packer loses about a fifth to a middling trim; caterers count 45 to 50 % of it served. A shoulder for pulling
 * loses 40 % on its way.
 */
const OF_CUTS: Readonly<Record<string, Thumb>> = {
  'beef/brisket-whole': { trim: 0.2, plate: 0.45, plateDeviation: 0.06 },
  'pork/butt': { trim: 0.05, plate: 0.6, plateDeviation: null },
};
/** Fat that is cut off raw, skin or giblets; a membrane, or nothing to speak of. */
const TRIM = { much: 0.1, little: 0.03 } as const;
const MUCH: ReadonlySet<string> = new Set(['fat', 'skin', 'giblets', 'bone']);
/** Of meat without bone about half is served, of meat with its bone about four tenths. */
const PLATE = { in: 0.4, both: 0.45, out: 0.5 } as const;

/**
 * What is usual of a cut by common practice: its own figures, or else those of its kind.
 * @example thumbOf(cutOf('beef/brisket-whole' as CutKey)) // { trim: 0.2, plate: 0.45, plateDeviation: 0.06 }
 */
export const thumbOf = ({ key, raw, bone }: Pick<Cut, 'key' | 'raw' | 'bone'>): Thumb =>
  OF_CUTS[key] ?? {
    trim: raw.some((loss) => MUCH.has(loss)) ? TRIM.much : TRIM.little,
    plate: PLATE[bone],
    plateDeviation: null,
  };

/**
 * How far pieces are apart, on the logit scale of the share that comes off: between people, between the pieces of one,
 * and how far a rule of thumb may be off for all of them. Each is about four or five points of a share of a quarter.
 */
export const THUMB_SPREAD = { members: 0.2, pieces: 0.2, level: 0.3 } as const;
