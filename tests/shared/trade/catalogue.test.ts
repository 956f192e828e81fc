/** The catalogue's own rules: keys, names, ranges; grades and styles. */
import { describe, expect, test } from 'vitest';
import { MemberError } from '../../../shared/errors.ts';
import { CUTS, cutOf } from '../../../shared/trade/cuts.ts';
import { ALL_GRADES, gradesFor, readGrade, SCALES } from '../../../shared/trade/grades.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';
import { readStyle, type StyleFamily, stylesOf } from '../../../shared/trade/styles.ts';
import { outcome } from '../measure/reading.ts';

describe('cuts', () => {
  test.each(CUTS.map((cut) => [cut.key, cut] as const))('%s', (key, cut) => {
    expect(key).toMatch(/^[a-z]+\/[a-z]+(-[a-z]+)*$/);
    expect(cut.species).toMatch(/^[a-z]+$/);
    expect(cut.usual.low).toBeGreaterThan(0);
    expect(cut.usual.high).toBeGreaterThan(cut.usual.low);
    expect(cut.names).toEqual(cut.names.map((name) => name.toLowerCase().trim()));
    expect(cutOf(key)).toBe(cut);
  });

  test('keys and names are unique', () => {
    expect(new Set(CUTS.map(({ key }) => key)).size).toBe(CUTS.length);
    expect(new Set(CUTS.map(({ name }) => name)).size).toBe(CUTS.length);
  });

  // USDA Institutional Meat Purchase Specifications; 116A and 422 from memory.
  test.each([
    ['beef/brisket-whole', '120'],
    ['beef/brisket-flat', '120A'],
    ['beef/brisket-point', '120B'],
    ['beef/chuck-roll', '116A'],
    ['beef/short-ribs', '123'],
    ['beef/tri-tip', '185C'],
    ['pork/butt', '406'],
    ['pork/picnic', '405'],
    ['pork/spareribs', '416'],
    ['pork/back-ribs', '422'],
    ['lamb/shoulder', '207'],
  ])('%s is IMPS item %s', (key, imps) => {
    expect(cutOf(key as CutKey).imps).toBe(imps);
  });

  test('a key that no catalogue has is a fault', () => {
    expect(() => cutOf('beef/dragon' as CutKey)).toThrow('no cut beef/dragon');
  });
});

describe('grades', () => {
  // USDA quality grades of beef, lowest first.
  test('of beef are the eight of the USDA', () => {
    const grades = SCALES.find(({ key }) => key === 'usda')?.grades;
    expect(grades?.map((key) => key.split('/')[1])).toEqual([
      'canner',
      'cutter',
      'utility',
      'commercial',
      'standard',
      'select',
      'choice',
      'prime',
    ]);
  });

  test('are offered where buyers see them', () => {
    expect(gradesFor('beef', 'US')).toEqual(['usda/prime', 'usda/choice', 'usda/select']);
    expect(gradesFor('pork', 'US')).toEqual([]);
    expect(gradesFor('beef', 'DE')).toEqual([]);
  });

  test.each([
    ['Choice', 'usda/choice'],
    ['CHOICE', 'usda/choice'],
    ['usda choice', 'usda/choice'],
    ['USDA/Prime', 'usda/prime'],
    ['select', 'usda/select'],
    ['chioce', 'usda/choice'],
  ])('%j is %s', (text, key) => {
    expect(readGrade(text)).toBe(key);
  });

  test.each(['', 'lovely', '@everyone', 'select or choice'])('%j is none', (text) => {
    expect(outcome(() => readGrade(text))).toBeInstanceOf(MemberError);
  });

  test('every key is read as itself', () => {
    for (const key of ALL_GRADES) expect(readGrade(key)).toBe(key);
  });
});

describe('styles', () => {
  const families: readonly StyleFamily[] = ['brisket', 'butt', 'ribs'];

  test.each(families)('of %s are read by key and by last part', (family) => {
    for (const key of stylesOf(family)) {
      expect(readStyle(key, family)).toBe(key);
      expect(readStyle(key.split('/')[1] ?? '', family)).toBe(key);
    }
  });

  test('the same word belongs to the family of the cut', () => {
    expect(readStyle('squared', 'butt')).toBe('butt/squared');
    expect(readStyle('squared', 'ribs')).toBe('ribs/squared');
    expect(outcome(() => readStyle('squared', 'brisket'))).toBeInstanceOf(MemberError);
  });

  test('every cut with a family has three to choose from', () => {
    for (const { styles } of CUTS) if (styles !== null) expect(stylesOf(styles)).toHaveLength(3);
  });
});
