/** A picture as data: a chart configuration in plain JSON that any renderer takes, and its words for who can't see it. */

/** Plain JSON: no functions, so that it can be sent, compared and kept. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** A picture, ready for any renderer. */
export interface Picture {
  /** The file's name without its ending, lower case: `where-it-went`. */
  name: string;
  /** A Chart.js 4 configuration. What our own plugin draws (titles, notes) stands under `options.plugins.notes`. */
  config: { readonly [key: string]: Json };
  /**
   * What stands in the notes' place where they are not drawn, as options of the chart: a title, a legend, axes.
   * Nothing that a member or a club wrote.
   */
  plain?: { readonly [key: string]: Json };
  /** In layout pixels; renderers draw at double density. */
  width: number;
  height: number;
  /** The same figures in words, at most 1,024 characters. */
  alt: string;
}

/** Draws a picture as PNG bytes. */
export type Draw = (picture: Picture) => Promise<Uint8Array>;
