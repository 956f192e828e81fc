/** The scales of grades, country by country: each is compared only within itself. */
import type { Species } from './cut.ts';
import type { GradeKey } from './keys.ts';

/** One scale of grades. */
export interface GradeScale {
  /** What stands before the slash in the keys of its grades. */
  key: string;
  species: Species;
  /** ISO 3166 */
  country: string;
  /** Lowest first. */
  grades: readonly GradeKey[];
  /** How many of the highest a buyer sees on a label; the others are read when typed, but not offered. */
  offered: number;
  /** What people put before or after a grade to say which scale they mean. */
  names: readonly string[];
  /** Where its names and their order are published. */
  source: string;
}

type Row = Omit<GradeScale, 'grades'> & { grades: string };

/** Quality first, since the letter only tells how much meat the carcass gave: C1, B1, A1, C2, … A5. */
const JMGA = [1, 2, 3, 4, 5]
  .flatMap((quality) => ['c', 'b', 'a'].map((letter) => `${letter}${quality}`))
  .join(' ');
const numbers = (from: number, to: number): string =>
  Array.from({ length: to - from + 1 }, (_, step) => String(from + step)).join(' ');

const ROWS: readonly Row[] = [
  {
    key: 'usda',
    species: 'beef',
    country: 'US',
    grades: 'canner cutter utility commercial standard select choice prime',
    offered: 3,
    names: ['usda', 'us', 'beef'],
    source: 'USDA Agricultural Marketing Service, United States Standards for Grades of Carcass Beef',
  },
  {
    key: 'usda-lamb',
    species: 'lamb',
    country: 'US',
    grades: 'cull utility good choice prime',
    offered: 3,
    names: ['usda lamb', 'us lamb', 'lamb', 'usda', 'us'],
    source:
      'USDA Agricultural Marketing Service, United States Standards for Grades of Lamb, Yearling Mutton, and Mutton Carcasses',
  },
  {
    key: 'usda-veal',
    species: 'veal',
    country: 'US',
    grades: 'utility standard good choice prime',
    offered: 2,
    names: ['usda veal', 'us veal', 'veal', 'usda', 'us'],
    source: 'USDA Agricultural Marketing Service, Veal and Calf Carcass Grades and Standards',
  },
  {
    key: 'canada',
    species: 'beef',
    country: 'CA',
    grades: 'a aa aaa prime',
    offered: 4,
    names: ['canada', 'canadian', 'cdn', 'canada grade'],
    source: 'Canadian Beef Grading Agency, Beef, Bison and Veal Carcass Grade Requirements',
  },
  {
    key: 'jmga',
    species: 'beef',
    country: 'JP',
    grades: JMGA,
    offered: 9,
    names: ['jmga', 'japan', 'japanese', 'wagyu', 'japanese wagyu', 'wagyu grade'],
    source: 'Japan Meat Grading Association, Beef Carcass Trading Standards',
  },
  {
    key: 'bms',
    species: 'beef',
    country: 'JP',
    grades: numbers(1, 12),
    offered: 0,
    names: ['bms', 'b.m.s.', 'beef marbling standard', 'beef marbling score', 'beef marble score', 'bms no'],
    source: 'Japan Meat Grading Association, Beef Marbling Standard',
  },
  {
    key: 'ausmeat',
    species: 'beef',
    country: 'AU',
    grades: numbers(0, 9),
    offered: 10,
    names: [
      'aus-meat',
      'ausmeat',
      'mb',
      'mbs',
      'ms',
      'marble score',
      'marbling score',
      'marbling',
      'marble',
      'aus-meat marbling',
      'aus-meat mb',
      'aus',
    ],
    source: 'AUS-MEAT, Handbook of Australian Meat, marbling reference standards',
  },
];

/** `SCALES[0].grades` ends with `usda/prime`. */
export const SCALES: readonly GradeScale[] = ROWS.map((row) => ({
  ...row,
  grades: row.grades.split(' ').map((grade) => `${row.key}/${grade}` as GradeKey),
}));

/** Beef Marbling Standard numbers that a quality number of the Japan Meat Grading Association asks for, by that number. */
const BMS_BANDS: Readonly<Record<string, readonly [low: number, high: number]>> = {
  1: [1, 1],
  2: [2, 2],
  3: [3, 4],
  4: [5, 7],
  5: [8, 12],
};

/**
 * The marbling numbers behind a Japanese grade; null for a grade of another scale. The lowest of four criteria decides,
 * so a piece with more marbling can still stand in a lower grade.
 *
 * @example marblingBand('jmga/a4' as GradeKey) // [5, 7]
 */
export const marblingBand = (grade: GradeKey): readonly [low: number, high: number] | null =>
  (grade.startsWith('jmga/') ? BMS_BANDS[grade.slice(-1)] : undefined) ?? null;
