/** Grades that a buyer sees on a label, read as people type them; only grades of one scale are compared. */
import { Ask, MemberError } from '../errors.ts';
import { own } from '../own.ts';
import type { Species } from './cut.ts';
import { isOneSlip } from './fold-name.ts';
import type { GradeKey } from './keys.ts';
import { type GradeScale, marblingBand, SCALES } from './scales.ts';

export { type GradeScale, marblingBand, SCALES } from './scales.ts';

/** Every grade, highest first within its scale. */
export const ALL_GRADES: readonly GradeKey[] = SCALES.flatMap((scale) => scale.grades.toReversed());

const SCALE_OF: ReadonlyMap<GradeKey, GradeScale> = new Map(
  SCALES.flatMap((scale) => scale.grades.map((grade) => [grade, scale] as const)),
);

/** ISO 3166: the countries whose grades are known. */
export const GRADE_COUNTRIES: readonly string[] = [...new Set(SCALES.map(({ country }) => country))];

/** A grade's name within its scale: `aaa` of `canada/aaa`. */
const nameInScale = (grade: GradeKey): string => grade.slice(grade.indexOf('/') + 1);

/** Null for a key that no scale has. */
const scaleOf = (grade: GradeKey): GradeScale | null => SCALE_OF.get(grade) ?? null;

/**
 * The grades that a buyer of `species` in `country` sees, highest first; none where buyers never see one, as of pork
 * and poultry.
 *
 * @example gradesFor('beef', 'US') // ['usda/prime', 'usda/choice', 'usda/select']
 */
export const gradesFor = (species: Species, country: string): readonly GradeKey[] =>
  SCALES.filter((one) => one.species === species && one.country === country).flatMap(({ grades, offered }) =>
    grades.toReversed().slice(0, offered),
  );

/**
 * How a grade is written where it is offered, so that it is read as that grade again: `choice`, `lamb choice`, `mb 4`.
 *
 * @example gradeText('usda-lamb/choice' as GradeKey) // 'lamb choice'
 */
export function gradeText(grade: GradeKey): string {
  const name = nameInScale(grade);
  const before = { 'usda-lamb': 'lamb ', 'usda-veal': 'veal ', ausmeat: 'mb ', bms: 'bms ' };
  return `${Object.entries(before).find(([key]) => key === scaleOf(grade)?.key)?.[1] ?? ''}${name}`;
}

/**
 * The same grade on the scale of another animal, where its country has one: `choice` is typed for lamb as for beef.
 * The grade itself where there is none.
 *
 * @example gradeOfSpecies('usda/choice' as GradeKey, 'lamb') // 'usda-lamb/choice'
 */
export function gradeOfSpecies(grade: GradeKey, species: Species): GradeKey {
  const scale = scaleOf(grade);
  if (scale === null || scale.species === species) return grade;
  const same = SCALES.filter((one) => one.species === species && one.country === scale.country)
    .flatMap(({ grades }) => grades)
    .find((one) => nameInScale(one) === nameInScale(grade));
  return same ?? grade;
}

/**
 * Whose grade it is, where that is another animal than the piece's: such a grade is kept with a note. Null where the
 * grade is the piece's own, or of no scale.
 *
 * @example gradeOfAnother('usda/choice' as GradeKey, 'pork') // 'beef'
 */
export function gradeOfAnother(grade: GradeKey, species: Species): Species | null {
  const scale = scaleOf(grade);
  return scale === null || scale.species === species ? null : scale.species;
}

/** Who types a grade: whose grades are meant when several countries have one of that name. */
export interface GradeReader {
  /** The option's name. */
  option?: string;
  /** ISO 3166: the club's. */
  country?: string;
  /** The animal, where it is known; otherwise beef is meant where beef has such a grade. */
  species?: Species;
}

/**
 * The grade that a member names: `Choice`, `AAA`, `A5`, `BMS 8`, `MB 4+`, `marble score 5`; one slip of the finger is
 * forgiven in a word of five letters or more. A `+` after a marbling number says at least that, and is read as that.
 *
 * @throws MemberError for a name that no scale has, Ask where two scales have it and neither is the club's alone.
 * @example readGrade('triple A', { country: 'CA' }) // 'canada/aaa'
 */
export function readGrade(text: string, reader: GradeReader = {}): GradeKey {
  const found = gradesNamed(text);
  const [only, ...others] = meant(found, reader);
  if (only === undefined) throw new MemberError('grade-unknown', { read: text, grades: examples(reader) });
  if (others.length === 0) return only;
  throw new Ask(
    'which-grade',
    { read: text },
    [only, ...others].slice(0, 5).map((grade) => ({
      label: { code: 'grade', values: { grade } },
      set: { [reader.option ?? 'grade']: grade },
    })),
  );
}

/** Of grades with one name, those that this reader can mean: of the animal, then of the club's country. */
function meant(found: readonly GradeKey[], { country, species = 'beef' }: GradeReader): readonly GradeKey[] {
  const ofAnimal = found.filter((grade) => scaleOf(grade)?.species === species);
  const among = ofAnimal.length > 0 ? ofAnimal : found;
  const ofCountry = among.filter((grade) => scaleOf(grade)?.country === country);
  return ofCountry.length > 0 ? ofCountry : among;
}

function examples({ country = 'US', species = 'beef' }: GradeReader): readonly GradeKey[] {
  const offered = gradesFor(species, country);
  return offered.length > 0 ? offered : gradesFor('beef', 'US');
}

/** Lower case without anything but letters and digits: nothing else tells two grades apart. */
const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '');

const SEVERAL_NUMBERS = /\d[^\p{Letter}\p{Number}]+\d/u;
const SPOKEN: Readonly<Record<string, string>> = { triplea: 'aaa', doublea: 'aa', singlea: 'a' };
const BESIDE = /^(?:grade|quality|graded)|(?:grade|quality|graded|beef)$/g;

/** Name as folded -> the grades that have it, by itself and with its scale's name before or after. */
const BY_NAME: ReadonlyMap<string, readonly GradeKey[]> = indexed();

function indexed(): Map<string, readonly GradeKey[]> {
  const index = new Map<string, readonly GradeKey[]>();
  for (const scale of SCALES) {
    for (const grade of scale.grades) {
      const name = nameInScale(grade);
      const names = scale.names.map(plain).flatMap((one) => [`${one}${name}`, `${name}${one}`]);
      for (const text of new Set([plain(grade), name, ...names])) {
        index.set(text, [...(index.get(text) ?? []), grade]);
      }
    }
  }
  return index;
}

const KEYS: ReadonlySet<string> = new Set(ALL_GRADES);

/**
 * Whether a text is the key of a grade: then it is that grade, whatever else has a name like it.
 * @example isGrade('usda/choice') // true
 */
export const isGrade = (text: string): text is GradeKey => KEYS.has(text);

function gradesNamed(text: string): readonly GradeKey[] {
  const key = text.trim().toLowerCase();
  if (isGrade(key)) return [key];
  // `4-5` and `4.5` are no grade, and not 45 either.
  if (SEVERAL_NUMBERS.test(text.normalize('NFKD'))) return [];
  const typed = plain(text);
  const name = typed.replace(BESIDE, '');
  const exact =
    BY_NAME.get(typed) ?? BY_NAME.get(own(SPOKEN, name) ?? name) ?? japanese(typed) ?? beyond(typed);
  return exact ?? slipped(name);
}

/** `A5 BMS 9`: the grade, where its band begins at or below that number; both where not, since one of them is off. */
function japanese(typed: string): readonly GradeKey[] | null {
  const [, name, number] =
    /^(?:wagyu|japan|japanese|jmga)?([abc][1-5])(?:wagyu)?bms(\d{1,2})$/.exec(typed) ?? [];
  const grade = BY_NAME.get(name ?? '')?.[0];
  const marbling = BY_NAME.get(`bms${number}`)?.[0];
  if (grade === undefined || marbling === undefined) return null;
  return Number(number) >= (marblingBand(grade)?.[0] ?? 0) ? [grade] : [grade, marbling];
}

/** `MBS 11`: above what the Australian scale has, so a Japanese number. */
function beyond(typed: string): readonly GradeKey[] | null {
  const number = /^(?:mbs?|ms|marbl(?:e|ing)score)(1[0-2])$/.exec(typed)?.[1];
  return number === undefined ? null : (BY_NAME.get(`bms${number}`) ?? null);
}

/** Grades of a word that is one slip away; numbers and short words are all near each other. */
function slipped(typed: string): readonly GradeKey[] {
  const near = [...BY_NAME].filter(([name]) => name.length > 4 && !/\d/.test(name) && isOneSlip(typed, name));
  return [...new Set(near.flatMap(([, grades]) => grades))];
}
