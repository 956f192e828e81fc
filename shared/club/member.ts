/** A member of a club, as far as the bot remembers one: never a name. */
import type { Nanograms, Units } from '../measure/units.ts';
import type { CutKey, GradeKey, StyleKey, Wrap } from '../trade/keys.ts';

/** A member's settings in one club. */
export interface Member {
  id: string;
  /** null until they have said. */
  units: Units | null;
  /** What a bare `14.8` in pounds means to them on a shop's label, and on their own scale; null: ask. */
  labelDecimals: 'decimal' | 'ounces' | null;
  scaleDecimals: 'decimal' | 'ounces' | null;
  /** What they told last time, offered first the next time. */
  presets: Presets;
  /** Out of boards and pictures. */
  hidden: boolean;
}

/** What a member told last; none of it need be there. */
export interface Presets {
  cut?: CutKey;
  grade?: GradeKey;
  /** The usual fat left on, by family of cut. */
  styles?: Readonly<Record<string, StyleKey>>;
  shop?: string;
  wrap?: Wrap;
  /** The unit that a bare price is per. */
  priceUnit?: Units;
  pan?: string;
}

/** A pan of a member's, whose weight is taken off what the scale shows. */
export interface Pan {
  name: string;
  weight: Nanograms;
}

/** How the random id begins under which the pieces of a member stay who left. */
export const LEFT = 'left-';

/**
 * Whether it is the id of a member who left: nobody is behind it any more.
 * @example hasLeft('left-3f9a06d2c41be875') // true
 */
export const hasLeft = (id: string): boolean => id.startsWith(LEFT);
