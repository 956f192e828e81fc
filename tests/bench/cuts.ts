/** The cuts of the bench's clubs, and what usually becomes of a piece. Invented, near what is usual. */

export interface BenchCut {
  key: string;
  /** As a member types it. */
  typed: string;
  /** A usual piece. */
  pounds: number;
  /** Shares of the average piece: off the raw piece, lost in the heat, thrown away at the board. */
  trim: number;
  heat: number;
  scraps: number;
  dollarsAPound: number;
  grades: readonly string[];
  styles: readonly string[];
  /** Sold with its bone and without. */
  bothWays: boolean;
}

const BEEF_GRADES = ['usda/select', 'usda/choice', 'usda/prime'];
const BRISKET = ['brisket/thick', 'brisket/quarter', 'brisket/thin'];
const BUTT = ['butt/as-bought', 'butt/cap-off', 'butt/squared'];
const RIBS = ['ribs/membrane', 'ribs/squared', 'ribs/bare'];

const cut = (
  [key, typed, pounds]: [string, string, number],
  [trim, heat, scraps]: [number, number, number],
  dollarsAPound: number,
  also: Partial<Pick<BenchCut, 'grades' | 'styles' | 'bothWays'>> = {},
): BenchCut => ({
  ...{ key, typed, pounds, trim, heat, scraps, dollarsAPound },
  ...{ grades: [], styles: [], bothWays: false },
  ...also,
});

export const BENCH_CUTS: readonly BenchCut[] = [
  cut(['beef/brisket-whole', 'packer', 14], [0.24, 0.4, 0.06], 4.99, {
    grades: BEEF_GRADES,
    styles: BRISKET,
  }),
  cut(['pork/butt', 'butt', 8.5], [0.06, 0.4, 0.12], 2.49, { styles: BUTT, bothWays: true }),
  cut(['pork/spareribs', 'spareribs', 4], [0.18, 0.3, 0.2], 3.29, { styles: RIBS }),
  cut(['beef/tri-tip', 'tri-tip', 2.5], [0.12, 0.25, 0.03], 8.99, { grades: BEEF_GRADES }),
  cut(['poultry/turkey-whole', 'turkey', 15], [0.08, 0.25, 0.3], 1.49),
  cut(['pork/picnic', 'picnic', 7.5], [0.1, 0.38, 0.2], 1.99, { bothWays: true }),
];
