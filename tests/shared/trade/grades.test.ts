/** Grades of four countries, as people type them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Ask, MemberError } from '../../../shared/errors.ts';
import { CUTS } from '../../../shared/trade/cuts.ts';
import {
  ALL_GRADES,
  type GradeReader,
  gradeOfAnother,
  gradeOfSpecies,
  gradesFor,
  gradeText,
  marblingBand,
  readGrade,
  SCALES,
} from '../../../shared/trade/grades.ts';
import type { GradeKey } from '../../../shared/trade/keys.ts';
import { gradeInFull, gradeName } from '../../../shared/words/en/grade-names.ts';
import { outcome } from '../measure/reading.ts';

const read = (text: string, reader?: GradeReader) => outcome(() => readGrade(text, reader));
const asked = (text: string, reader?: GradeReader) => {
  const found = read(text, reader);
  return found instanceof Ask ? found.readings.map(({ set }) => set.grade) : null;
};
const key = (text: string) => text as GradeKey;
const lastPart = (grade: string) => grade.slice(grade.indexOf('/') + 1);

describe('scales', () => {
  // USDA and Canadian standards, Japan Meat Grading Association, AUS-MEAT: lowest first.
  test.each([
    ['usda', 'canner cutter utility commercial standard select choice prime'],
    ['usda-lamb', 'cull utility good choice prime'],
    ['usda-veal', 'utility standard good choice prime'],
    ['canada', 'a aa aaa prime'],
    ['jmga', 'c1 b1 a1 c2 b2 a2 c3 b3 a3 c4 b4 a4 c5 b5 a5'],
    ['bms', '1 2 3 4 5 6 7 8 9 10 11 12'],
    ['ausmeat', '0 1 2 3 4 5 6 7 8 9'],
  ])('%s', (scale, grades) => {
    expect(
      SCALES.find((one) => one.key === scale)
        ?.grades.map(lastPart)
        .join(' '),
    ).toBe(grades);
  });

  test('each grade is of one scale, which names its source', () => {
    expect(new Set(ALL_GRADES).size).toBe(ALL_GRADES.length);
    for (const grade of ALL_GRADES)
      expect(SCALES.filter(({ grades }) => grades.includes(grade))).toHaveLength(1);
    for (const { source } of SCALES) expect(source.length).toBeGreaterThan(10);
    expect(gradeOfAnother(key('own/lovely'), 'pork')).toBeNull();
  });

  // Japan Meat Grading Association: 5 is BMS 8 to 12, 4 is 5 to 7, 3 is 3 and 4, 2 is 2, 1 is 1.
  test.each([
    ['jmga/a5', [8, 12]],
    ['jmga/b4', [5, 7]],
    ['jmga/c3', [3, 4]],
    ['jmga/a2', [2, 2]],
    ['jmga/a1', [1, 1]],
    ['usda/prime', null],
  ])('%s stands for marbling %j', (grade, band) => {
    expect(marblingBand(key(grade))).toEqual(band);
  });
});

describe('are offered where a buyer sees one', () => {
  test.each([
    ['beef', 'US', 'usda/prime usda/choice usda/select'],
    ['lamb', 'US', 'usda-lamb/prime usda-lamb/choice usda-lamb/good'],
    ['veal', 'US', 'usda-veal/prime usda-veal/choice'],
    ['beef', 'CA', 'canada/prime canada/aaa canada/aa canada/a'],
    ['beef', 'JP', 'jmga/a5 jmga/b5 jmga/c5 jmga/a4 jmga/b4 jmga/c4 jmga/a3 jmga/b3 jmga/c3'],
    ['beef', 'DE', ''],
    ['pork', 'US', ''],
    ['poultry', 'US', ''],
    ['goat', 'US', ''],
    ['game', 'US', ''],
    ['lamb', 'AU', ''],
  ] as const)('%s in %s', (species, country, grades) => {
    expect(gradesFor(species, country).join(' ')).toBe(grades);
  });

  test('in Australia, from 9 down to 0', () => {
    expect(gradesFor('beef', 'AU').map(lastPart)).toEqual('9876543210'.split(''));
  });

  test('and what is offered is read as itself there, whatever the animal', () => {
    for (const { species, country } of SCALES) {
      for (const grade of gradesFor(species, country)) {
        expect(read(gradeText(grade), { country })).toBe(grade);
        expect(read(gradeText(grade), { country, species })).toBe(grade);
      }
    }
  });
});

describe('as they are typed', () => {
  test.each([
    ['Choice', 'US', 'usda/choice'],
    ['USDA Choice', 'US', 'usda/choice'],
    ['usda prime beef', 'US', 'usda/prime'],
    ['PRIME', 'US', 'usda/prime'],
    ['chioce', 'US', 'usda/choice'],
    ['selct', 'US', 'usda/select'],
    ['prme', 'US', 'usda/prime'],
    ['Prime grade', 'US', 'usda/prime'],
    ['Prime', 'CA', 'canada/prime'],
    ['USDA Prime', 'CA', 'usda/prime'],
    ['Canada Prime', 'US', 'canada/prime'],
    ['AAA', 'US', 'canada/aaa'],
    ['aaa', 'CA', 'canada/aaa'],
    ['Canada AAA', 'CA', 'canada/aaa'],
    ['triple A', 'CA', 'canada/aaa'],
    ['Double-A', 'CA', 'canada/aa'],
    ['AA', 'CA', 'canada/aa'],
    ['A', 'CA', 'canada/a'],
    ['A5', 'US', 'jmga/a5'],
    ['a 5', 'JP', 'jmga/a5'],
    ['A5 Wagyu', 'US', 'jmga/a5'],
    ['Japanese A4', 'US', 'jmga/a4'],
    ['B3', 'JP', 'jmga/b3'],
    ['A5 BMS 11', 'JP', 'jmga/a5'],
    ['A4 (BMS 8)', 'JP', 'jmga/a4'],
    ['BMS 8', 'US', 'bms/8'],
    ['bms8', 'JP', 'bms/8'],
    ['B.M.S. 12', 'JP', 'bms/12'],
    ['MB 4+', 'AU', 'ausmeat/4'],
    ['MB4', 'US', 'ausmeat/4'],
    ['MBS 9+', 'AU', 'ausmeat/9'],
    ['marble score 5', 'US', 'ausmeat/5'],
    ['Marbling score 0', 'AU', 'ausmeat/0'],
    ['AUS-MEAT 7', 'AU', 'ausmeat/7'],
    ['5', 'AU', 'ausmeat/5'],
    ['9+', 'AU', 'ausmeat/9'],
    ['8', 'JP', 'bms/8'],
    ['MBS 11', 'AU', 'bms/11'],
    ['lamb choice', 'US', 'usda-lamb/choice'],
    ['veal prime', 'US', 'usda-veal/prime'],
    ['cull', 'US', 'usda-lamb/cull'],
  ])('%j in %s is %s', (text, country, grade) => {
    expect(read(text, { country })).toBe(grade);
  });

  test('for an animal that is known, its own scale is meant', () => {
    expect(read('choice', { country: 'US', species: 'lamb' })).toBe('usda-lamb/choice');
    expect(read('prime', { country: 'US', species: 'veal' })).toBe('usda-veal/prime');
    expect(read('prime', { country: 'CA', species: 'lamb' })).toBe('usda-lamb/prime');
  });

  test('a name of two scales is asked, where neither is the club’s', () => {
    expect(asked('Prime', { country: 'DE' })).toEqual(['usda/prime', 'canada/prime']);
    expect(asked('good', { country: 'US' })).toEqual(['usda-lamb/good', 'usda-veal/good']);
    expect(asked('5', { country: 'US' })).toEqual(['bms/5', 'ausmeat/5']);
    expect(asked('A5 BMS 3', { country: 'JP' })).toEqual(['jmga/a5', 'bms/3']);
  });

  test.each([
    '',
    ' ',
    'lovely',
    '@everyone',
    'A6',
    'D5',
    'BMS 13',
    'MB 4-5',
    '4.5',
    '8-9',
    '1 2',
    'AAAA',
    'choice or select',
    '🥩',
  ])('%j is none', (text) => {
    expect(read(text, { country: 'US' })).toBeInstanceOf(MemberError);
  });

  test('a refusal names those that the club is offered', () => {
    expect(read('lovely', { country: 'CA' })).toMatchObject({ values: { grades: gradesFor('beef', 'CA') } });
    expect(read('lovely', { country: 'DE' })).toMatchObject({ values: { grades: gradesFor('beef', 'US') } });
  });

  test('every key is read as itself', () => {
    for (const grade of ALL_GRADES) expect(read(grade)).toBe(grade);
  });

  test('whatever is typed: a grade, an Ask of two to five that read back, or a refusal', () => {
    const words = fc.constantFrom(
      ...'usda prime choice canada AAA A5 BMS MB 8 4+ marble score lamb - /'.split(' '),
    );
    const texts = fc.oneof(
      fc.string({ maxLength: 20 }),
      fc.array(words, { maxLength: 4 }).map((some) => some.join(' ')),
    );
    fc.assert(
      fc.property(texts, fc.constantFrom('US', 'CA', 'JP', 'AU', 'DE'), (text, country) => {
        const found = read(text, { country });
        if (found instanceof Ask) {
          expect(found.readings.length).toBeGreaterThanOrEqual(2);
          expect(found.readings.length).toBeLessThanOrEqual(5);
          for (const { set } of found.readings) expect(read(String(set.grade), { country })).toBe(set.grade);
        } else if (!(found instanceof MemberError)) expect(ALL_GRADES).toContain(found);
      }),
      { numRuns: 500 },
    );
  });
});

describe('of another animal than the piece', () => {
  test.each([
    ['usda/choice', 'beef', 'usda/choice', null],
    ['usda/choice', 'lamb', 'usda-lamb/choice', 'beef'],
    ['usda/choice', 'veal', 'usda-veal/choice', 'beef'],
    ['usda/select', 'lamb', 'usda/select', 'beef'],
    ['usda/choice', 'pork', 'usda/choice', 'beef'],
    ['usda-lamb/prime', 'beef', 'usda/prime', 'lamb'],
    ['canada/aaa', 'poultry', 'canada/aaa', 'beef'],
    ['own/lovely', 'pork', 'own/lovely', null],
  ] as const)('%s for %s is %s, a grade of %s', (grade, species, same, other) => {
    expect(gradeOfSpecies(key(grade), species)).toBe(same);
    expect(gradeOfAnother(key(grade), species)).toBe(other);
  });

  test('no grade is offered for an animal that it is not of', () => {
    for (const { species } of CUTS) {
      for (const country of ['US', 'CA', 'JP', 'AU']) {
        for (const grade of gradesFor(species, country)) expect(gradeOfAnother(grade, species)).toBeNull();
      }
    }
  });
});

test.each([
  ['usda/choice', 'Choice', 'USDA Choice'],
  ['usda-lamb/choice', 'Choice', 'USDA Choice, lamb'],
  ['canada/prime', 'Canada Prime', 'Canada Prime'],
  ['canada/aaa', 'Canada AAA', 'Canada AAA'],
  ['jmga/a5', 'A5', 'Japan A5'],
  ['bms/8', 'BMS 8', 'Japan BMS 8'],
  ['ausmeat/4', 'Marble score 4', 'AUS-MEAT marble score 4'],
  ['own/lovely', 'own/lovely', 'own/lovely'],
])('%s is called %j, in full %j', (grade, short, full) => {
  expect(gradeName(key(grade))).toBe(short);
  expect(gradeInFull(key(grade))).toBe(full);
});

test('no two grades are called alike in full', () => {
  expect(new Set(ALL_GRADES.map(gradeInFull)).size).toBe(ALL_GRADES.length);
});
