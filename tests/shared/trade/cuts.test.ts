/** The rows of the catalogue: names that fit, item numbers that are well formed, ranges that are sane. */
import { describe, expect, test } from 'vitest';
import { NANOGRAMS } from '../../../shared/measure/units.ts';
import { CUTS, cutOf, type Species } from '../../../shared/trade/cuts.ts';
import { foldName } from '../../../shared/trade/fold-name.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';
import { SHARED_NAMES } from '../../../shared/trade/shared-names.ts';
import { stylesOf } from '../../../shared/trade/styles.ts';
import { inside } from '../../../shared/words/en/names.ts';

const SPECIES: readonly Species[] = ['beef', 'pork', 'lamb', 'goat', 'veal', 'poultry', 'game'];

test('there are sixty cuts and more, of every animal', () => {
  expect(CUTS.length).toBeGreaterThanOrEqual(60);
  expect(new Set(CUTS.map(({ species }) => species))).toEqual(new Set(SPECIES));
});

// They stand in storage: a key that goes away takes the pieces with it.
test.each([
  'beef/brisket-whole',
  'beef/brisket-flat',
  'beef/brisket-point',
  'beef/chuck-roll',
  'beef/short-ribs',
  'beef/tri-tip',
  'beef/strip-loin',
  'beef/tenderloin',
  'beef/bottom-round',
  'beef/eye-of-round',
  'pork/butt',
  'pork/picnic',
  'pork/spareribs',
  'pork/back-ribs',
  'lamb/shoulder',
  'poultry/turkey-whole',
])('%s keeps its key', (key) => {
  expect(cutOf(key as CutKey).key).toBe(key);
});

describe('names', () => {
  test('no two cuts have one, and the shared ones stand apart', () => {
    const owners = new Map<string, Set<string>>(
      Object.keys(SHARED_NAMES).map((name) => [foldName(name), new Set(['several'])]),
    );
    expect(owners.size).toBe(Object.keys(SHARED_NAMES).length);
    for (const { key, name, names } of CUTS) {
      for (const one of [name, ...names].map(foldName))
        owners.set(one, (owners.get(one) ?? new Set()).add(key));
    }
    expect([...owners].filter(([, keys]) => keys.size > 1)).toEqual([]);
  });

  test('none stands twice in a row, nor comes to nothing', () => {
    for (const { key, name, names } of CUTS) {
      const folded = [name, ...names].map(foldName);
      expect([key, new Set(folded).size]).toEqual([key, folded.length]);
      expect(folded).not.toContain('');
    }
  });

  test('fit a table on a phone', () => {
    for (const { name } of CUTS) expect([name, name.length <= 24]).toEqual([name, true]);
  });

  test('shared names are of cuts that there are, each once', () => {
    for (const keys of Object.values(SHARED_NAMES)) {
      for (const key of keys) expect(cutOf(key as CutKey).key).toBe(key);
      expect(new Set(keys).size).toBe(keys.length);
    }
  });

  test.each([
    ['beef/brisket-whole', 'whole packer brisket'],
    ['beef/picanha', 'picanha'],
    ['beef/denver', 'Denver roast'],
    ['pork/st-louis-ribs', 'St. Louis ribs'],
    ['poultry/cornish-hen', 'Cornish hen'],
  ])('%s within a sentence is %j', (key, words) => {
    expect(inside(key as CutKey)).toBe(words);
  });
});

describe('item numbers', () => {
  const SERIES: Readonly<Record<string, RegExp>> = {
    beef: /^1\d\d[A-H]?$/,
    lamb: /^2\d\d[A-H]?$/,
    veal: /^3\d\d[A-H]?$/,
    pork: /^4\d\d[A-H]?$/,
  };

  test('are of the animal’s series, no two alike, and say where they were checked', () => {
    const numbered = CUTS.filter(({ imps }) => imps !== null);
    expect(numbered.length).toBeGreaterThan(40);
    for (const { species, imps, impsSource } of numbered) {
      expect(imps).toMatch(SERIES[species] ?? /^$/);
      expect(['published', 'memory']).toContain(impsSource);
    }
    expect(new Set(numbered.map(({ imps }) => imps)).size).toBe(numbered.length);
    for (const { imps, impsSource } of CUTS) expect(imps === null).toBe(impsSource === null);
  });

  // USDA Institutional Meat Purchase Specifications, series 100, 200, 300 and 400.
  test.each([
    ['beef/brisket-whole', '120'],
    ['beef/brisket-flat', '120A'],
    ['beef/brisket-point', '120B'],
    ['beef/clod', '114'],
    ['beef/rib-roast', '109'],
    ['beef/ribeye-roll', '112A'],
    ['beef/skirt-outside', '121C'],
    ['beef/skirt-inside', '121D'],
    ['beef/short-ribs', '123'],
    ['beef/plate-ribs', '123A'],
    ['beef/back-ribs', '124'],
    ['beef/chuck-short-ribs', '130'],
    ['beef/knuckle', '167'],
    ['beef/eye-of-round', '171C'],
    ['beef/strip-loin', '180'],
    ['beef/top-sirloin', '184'],
    ['beef/tenderloin', '189A'],
    ['beef/picanha', '184D'],
    ['beef/tri-tip', '185C'],
    ['beef/flank', '193'],
    ['pork/whole-hog', '400A'],
    ['pork/fresh-ham', '401'],
    ['pork/shoulder-whole', '403'],
    ['pork/picnic', '405'],
    ['pork/butt', '406'],
    ['pork/belly', '408'],
    ['pork/loin', '410'],
    ['pork/tenderloin', '415'],
    ['pork/spareribs', '416'],
    ['pork/st-louis-ribs', '416A'],
    ['pork/rib-tips', '416B'],
    ['pork/back-ribs', '422'],
    ['pork/country-ribs', '423'],
    ['lamb/rack', '204'],
    ['lamb/shoulder', '207'],
    ['lamb/breast', '209'],
    ['lamb/leg', '233A'],
    ['veal/rack', '306'],
  ])('%s is %s', (key, imps) => {
    expect(cutOf(key as CutKey)).toMatchObject({ imps, impsSource: 'published' });
  });
});

describe('pieces', () => {
  test('usual ones weigh from a few ounces to a whole hog, the largest at most sixty times the smallest', () => {
    for (const { key, usual } of CUTS) {
      const [low, high] = [usual.low / NANOGRAMS.lb, usual.high / NANOGRAMS.lb];
      expect([key, low >= 0.25 && high <= 250 && high > low && high / low <= 60]).toEqual([key, true]);
    }
  });

  test('styles are those of a family', () => {
    for (const { styles } of CUTS) if (styles !== null) expect(stylesOf(styles).length).toBe(3);
  });

  test('what is lost raw is told once each; bone never, where it is on the plate until carving', () => {
    for (const { raw } of CUTS) expect(new Set(raw).size).toBe(raw.length);
    for (const key of ['pork/spareribs', 'pork/butt', 'poultry/turkey-whole', 'pork/whole-hog']) {
      expect(cutOf(key as CutKey).raw).not.toContain('bone');
    }
    expect(cutOf('poultry/turkey-whole' as CutKey).raw).toContain('giblets');
    expect(cutOf('beef/tenderloin' as CutKey).raw).toContain('silverskin');
  });
});
