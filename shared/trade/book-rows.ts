/** Figures copied from published tables: one row each. Nothing here is measured or worked out by us. */
import type { BookFigure, BookMeasure } from './book.ts';

type Told = Pick<BookFigure, 'source' | 'row'> & { percent: number };
type Optional = Omit<BookFigure, 'cut' | 'measure' | 'percent' | 'source' | 'row'>;

/** One row of a table as it is written here; what it leaves out is unknown, or `kept` of `raw`. */
export type BookRow = { cut: string; measure: BookMeasure } & Told & Partial<Optional>;

type Yield = readonly [
  row: string | null,
  cut: string,
  percent: number,
  pieces: number | null,
  deviation: number | null,
  range: readonly [number, number] | null,
  year: number,
  rest: Pick<BookRow, 'cooked'> & Partial<Optional>,
];

/** USDA Table of Cooking Yields for Meat and Poultry, Release 2 (2014): cooked, of raw. */
// biome-ignore format: a table
const COOKING_YIELDS: readonly Yield[] = [
  ['13806', 'beef/brisket-flat', 69, 20, 3.042, [65, 76], 2000, { cooked: 'braised', fatInches: 0.125 }],
  ['13953', 'beef/tri-tip', 84, 20, 3.052, [77, 89], 2003, { cooked: 'roasted', fatInches: 0 }],
  ['23113', 'beef/chuck-eye', 80, 35, 4.64, [75.8, 93.5], 2010, { cooked: 'roasted', fatInches: 0, bone: 'out' }],
  ['23131', 'beef/clod', 66.28, 71, 6.13, [54.6, 80.9], 2010, { cooked: 'braised', fatInches: 0, bone: 'out', notComparable: 'part' }],
  ['23099', 'beef/denver', 64, 33, 5.09, [60.9, 78.2], 2010, { cooked: 'braised', fatInches: 0, bone: 'out' }],
  ['23105', 'beef/denver', 71, 30, 3.9, [65.8, 83.1], 2010, { cooked: 'grilled', fatInches: 0, bone: 'out', notComparable: 'portions' }],
  ['23134', 'beef/chuck-eye', 68.3, 70, 5.34, [60.7, 80.4], 2010, { cooked: 'braised', fatInches: 0, bone: 'out', notComparable: 'portions' }],
  ['13373', 'beef/chuck-blade', 71, 1, null, null, 2000, { cooked: 'braised', fatInches: 0.125, notComparable: 'part' }],
  ['23125', 'beef/chuck-short-ribs', 66.07, 30, 11.76, [44.9, 97.3], 2010, { cooked: 'braised', fatInches: 0, bone: 'out' }],
  ['23233', 'beef/back-ribs', 75.3, 36, 3.1, [65.2, 82.2], 2011, { cooked: 'braised', fatInches: 0, bone: 'in' }],
  ['23191', 'beef/rib-roast', 76.9, 35, 2.8, [71.8, 83.5], 2011, { cooked: 'roasted', fatInches: 0.125, bone: 'in' }],
  ['23188', 'beef/rib-roast', 85.7, 36, 4, [77.7, 90.3], 2011, { cooked: 'grilled', fatInches: 0.125, bone: 'in', notComparable: 'portions' }],
  ['23198', 'beef/ribeye-roll', 75.8, 36, 3.9, [65.7, 84.9], 2011, { cooked: 'roasted', fatInches: 0.125, bone: 'out' }],
  ['23197', 'beef/ribeye-roll', 83.6, 36, 3.8, [74.6, 91.9], 2011, { cooked: 'grilled', fatInches: 0.125, bone: 'out', notComparable: 'portions' }],
  ['13948', 'beef/flank', 81, 20, 4.128, [74, 89], 2003, { cooked: 'broiled', fatInches: 0 }],
  ['23214', 'beef/skirt-inside', 72.9, 72, 4.5, [64.3, 84.9], 2011, { cooked: 'grilled', fatInches: 0, bone: 'out' }],
  ['23221', 'beef/skirt-outside', 68.2, 72, 4.3, [58.6, 79.3], 2011, { cooked: 'grilled', fatInches: 0, bone: 'out' }],
  ['13930', 'beef/top-sirloin', 80, 20, 4.871, [69, 87], 2000, { cooked: 'broiled', fatInches: 0.125, notComparable: 'portions' }],
  ['13910', 'beef/strip-loin', 82, 1, null, null, 2013, { cooked: 'broiled', fatInches: 0.125, notComparable: 'portions' }],
  ['13918', 'beef/tenderloin', 80, 19, 3.91, [71, 86], 2000, { cooked: 'broiled', fatInches: 0.125, notComparable: 'portions' }],
  ['13870', 'beef/bottom-round', 84, 20, 2.741, [76, 88], 2000, { cooked: 'roasted', fatInches: 0.125 }],
  ['13878', 'beef/eye-of-round', 81, 20, 1.987, [75, 83], 2000, { cooked: 'roasted', fatInches: 0.125 }],
  ['10940', 'pork/spareribs', 76, 12, 3.208, [68, 79], 2009, { cooked: 'roasted', bone: 'in' }],
  ['10193', 'pork/back-ribs', 82, 12, 4.09, [74, 90], 2011, { cooked: 'roasted', bone: 'in' }],
  ['10075', 'pork/picnic', 74, 12, 2.72, [70, 78], 2011, { cooked: 'braised' }],
  ['10039', 'pork/loin', 77, 12, 6.38, [63, 88], 2011, { cooked: 'roasted', bone: 'in' }],
  ['10047', 'pork/loin', 75, 12, 4.68, [65, 84], 2011, { cooked: 'roasted', bone: 'in', notComparable: 'part' }],
  ['10031', 'pork/loin', 77, 12, 3, [68, 88], 2011, { cooked: 'roasted', bone: 'in', notComparable: 'part' }],
  ['10990', 'pork/loin', 75, 12, 5.85, [68, 88], 2011, { cooked: 'roasted', bone: 'out', notComparable: 'part' }],
  ['10013', 'pork/fresh-ham', 77, 12, 3.85, [70, 80], 2011, { cooked: 'roasted', notComparable: 'part' }],
  ['10017', 'pork/fresh-ham', 79, 12, 2.98, [68.5, 82], 2011, { cooked: 'roasted', notComparable: 'part' }],
  ['10218', 'pork/tenderloin', 80, 1, null, null, 2009, { cooked: 'roasted' }],
  ['05004', 'poultry/chicken-whole', 78, null, null, [68, 84], 1975, { cooked: 'roasted', bone: 'in' }],
  ['05060', 'poultry/chicken-breast', 72, null, null, [61, 82], 1975, { cooked: 'roasted' }],
  ['05069', 'poultry/chicken-drumsticks', 76, null, null, [63, 87], 1975, { cooked: 'roasted', bone: 'in' }],
  ['05094', 'poultry/chicken-thighs', 69, null, null, [58, 79], 1975, { cooked: 'roasted' }],
  ['05103', 'poultry/chicken-wings', 78, 1, null, null, 2013, { cooked: 'roasted', bone: 'in' }],
  ['05166', 'poultry/turkey-whole', 71, 1, null, null, 2013, { cooked: 'roasted', bone: 'in' }],
  ['05733', 'poultry/turkey-breast', 72, 1, null, null, 2013, { cooked: 'roasted' }],
  ['05743', 'poultry/turkey-thighs', 83, 1, null, null, 2013, { cooked: 'roasted' }],
  ['05737', 'poultry/turkey-legs', 72, 1, null, null, 2013, { cooked: 'roasted', bone: 'in' }],
  [null, 'lamb/leg', 74, null, null, [53, 88], 1975, { cooked: 'roasted', notComparable: 'several-cuts' }],
  [null, 'lamb/rack', 74, null, null, [53, 88], 1975, { cooked: 'roasted', notComparable: 'several-cuts' }],
  [null, 'lamb/loin', 74, null, null, [53, 88], 1975, { cooked: 'roasted', notComparable: 'several-cuts' }],
  [null, 'lamb/shoulder', 60, null, null, [54, 72], 1975, { cooked: 'braised', notComparable: 'several-cuts' }],
  [null, 'lamb/shanks', 60, null, null, [54, 72], 1975, { cooked: 'braised', notComparable: 'several-cuts' }],
  [null, 'lamb/breast', 60, null, null, [54, 72], 1975, { cooked: 'braised', notComparable: 'several-cuts' }],
  ['17438', 'veal/shoulder', 77, 1, null, null, 2014, { cooked: 'grilled', notComparable: 'portions' }],
];

/**
 * USDA National Nutrient Database for Standard Reference, Release 28, refuse of the raw food. What is trimmed raw to
 * separable lean is told as trim; bone and skin that a club leaves on until after the fire belong to the plate.
 */
// biome-ignore format: a table
const REFUSE: readonly (readonly [row: string, cut: string, percent: number, rest: Partial<BookRow> & Pick<BookRow, 'measure' | 'notComparable'>])[] = [
  ['13023', 'beef/brisket-whole', 30, { measure: 'trim', notComparable: 'to-lean' }],
  ['23596', 'beef/brisket-flat', 28, { measure: 'trim', notComparable: 'to-lean', fatInches: 0.125 }],
  ['13595', 'beef/brisket-flat', 10, { measure: 'trim', notComparable: 'to-lean', fatInches: 0 }],
  ['10070', 'pork/shoulder-whole', 25, { measure: 'plate', notComparable: 'bone-after', bone: 'in' }],
  ['10080', 'pork/butt', 24, { measure: 'plate', notComparable: 'bone-after', bone: 'in' }],
  ['10074', 'pork/picnic', 22, { measure: 'plate', notComparable: 'bone-after', bone: 'in' }],
  ['10088', 'pork/spareribs', 30, { measure: 'plate', notComparable: 'bone-after', bone: 'in' }],
  ['10192', 'pork/back-ribs', 37, { measure: 'plate', notComparable: 'bone-after', bone: 'in' }],
  ['13147', 'beef/short-ribs', 27, { measure: 'plate', notComparable: 'bone-after', bone: 'in' }],
  ['13149', 'beef/short-ribs', 59, { measure: 'plate', notComparable: 'to-lean', bone: 'in' }],
  ['13815', 'beef/chuck-blade', 19, { measure: 'plate', notComparable: 'bone-after', bone: 'in' }],
  ['05006', 'poultry/chicken-whole', 32, { measure: 'plate', notComparable: 'bone-after', bone: 'in' }],
  ['05165', 'poultry/turkey-whole', 29, { measure: 'plate', notComparable: 'bone-after', bone: 'in' }],
  ['17035', 'lamb/shoulder', 21, { measure: 'plate', notComparable: 'bone-after', bone: 'in' }],
  ['17039', 'lamb/shoulder', 39, { measure: 'plate', notComparable: 'to-lean', bone: 'in' }],
];

/** The same database, refuse of the cooked food: what is left at the board is the rest of 100. */
// biome-ignore format: a table
const REFUSE_COOKED: readonly (readonly [cut: string, percent: number, rest: Partial<BookRow>])[] = [
  ['pork/butt', 24, { cooked: 'roasted', bone: 'in' }],
  ['beef/brisket-whole', 1, { cooked: 'braised', fatInches: 0 }],
  ['beef/short-ribs', 29, { cooked: 'braised', bone: 'in' }],
];

/** USDA Food Buying Guide: served, of what was bought. */
// biome-ignore format: a table
const AS_SERVED: readonly (readonly [cut: string, percent: number, rest: Partial<BookRow>])[] = [
  ['beef/bottom-round', 61, { cooked: 'roasted', bone: 'out', notComparable: 'several-cuts' }],
  ['beef/top-round', 61, { cooked: 'roasted', bone: 'out', notComparable: 'several-cuts' }],
  ['beef/eye-of-round', 61, { cooked: 'roasted', bone: 'out', notComparable: 'several-cuts' }],
  ['poultry/turkey-whole', 47, { cooked: 'roasted', bone: 'in' }],
];

const sr28 = 'standard-reference' as const;

/** All rows, in the order of the tables above. */
export const FROM_TABLES: readonly BookRow[] = [
  ...COOKING_YIELDS.map(
    ([row, cut, percent, pieces, deviation, range, year, rest]): BookRow => ({
      cut,
      measure: 'cooking',
      source: 'cooking-yields',
      row,
      percent,
      pieces,
      deviation,
      range,
      year,
      ...rest,
    }),
  ),
  ...REFUSE.map(
    ([row, cut, percent, rest]): BookRow => ({ cut, source: sr28, row, percent, tells: 'lost', ...rest }),
  ),
  ...REFUSE_COOKED.map(
    ([cut, percent, rest]): BookRow => ({
      cut,
      measure: 'carving',
      source: sr28,
      row: null,
      percent,
      tells: 'lost',
      ...rest,
    }),
  ),
  ...AS_SERVED.map(
    ([cut, percent, rest]): BookRow => ({
      cut,
      measure: 'plate',
      source: 'buying-guide',
      row: null,
      percent,
      ...rest,
    }),
  ),
];
