/** Grades that a buyer sees on a label, by scale; only grades of one scale are compared. */
import { MemberError } from '../errors.ts';
import type { Species } from './cuts.ts';
import { foldName } from './fold-name.ts';
import type { GradeKey } from './keys.ts';

export interface GradeScale {
  key: string;
  species: Species;
  /** ISO 3166 */
  country: string;
  /** Lowest first. */
  grades: readonly GradeKey[];
}

/** USDA quality grades of beef: Prime, Choice and Select are sold as such; the rest hardly ever carries its name. */
const USDA_BEEF = ['canner', 'cutter', 'utility', 'commercial', 'standard', 'select', 'choice', 'prime'];

export const SCALES: readonly GradeScale[] = [
  {
    key: 'usda',
    species: 'beef',
    country: 'US',
    grades: USDA_BEEF.map((grade) => `usda/${grade}` as GradeKey),
  },
];

/** The grades that a buyer of `species` in `country` sees, highest first; none where buyers never see one. */
export function gradesFor(species: Species, country: string): readonly GradeKey[] {
  const scale = SCALES.find((one) => one.species === species && one.country === country);
  return scale === undefined ? [] : scale.grades.slice(-3).toReversed();
}

/** Every grade, highest first within its scale. */
export const ALL_GRADES: readonly GradeKey[] = SCALES.flatMap((scale) => scale.grades.toReversed());

/**
 * The grade that a member names, by its key or its last part.
 * @throws MemberError for a name that no scale has.
 * @example readGrade('Choice') // 'usda/choice'
 */
export function readGrade(text: string): GradeKey {
  const typed = foldName(text);
  const found = ALL_GRADES.find(
    (key) => foldName(key) === typed || foldName(key.slice(key.indexOf('/') + 1)) === typed,
  );
  if (found === undefined) throw new MemberError('grade-unknown', { read: text, grades: ALL_GRADES });
  return found;
}
