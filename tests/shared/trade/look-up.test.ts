/** Names of cuts as people type them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Ask, MemberError } from '../../../shared/errors.ts';
import { CUTS } from '../../../shared/trade/cuts.ts';
import { readCut } from '../../../shared/trade/look-up.ts';
import { matchingCuts } from '../../../shared/trade/matching-cuts.ts';
import { outcome } from '../measure/reading.ts';

const read = (text: string) => outcome(() => readCut(text, 'cut'));

/** By cut, what is typed for it. */
const TYPED: Readonly<Record<string, readonly string[]>> = {
  'beef/brisket-whole': [
    'packer',
    'Packer',
    'PACKERS',
    'packer brisket',
    'whole brisket',
    'full packer',
    'Whole Packer Brisket',
    'whole-packer-brisket',
    'packr',
    'pakcer',
    'beef/brisket-whole',
    '120',
  ],
  'beef/brisket-flat': [
    'flat',
    'flats',
    'Flat',
    'brisket flat',
    'brisket flats',
    'Brisket  Flat',
    'flat half',
    'brisket-flat',
    'brisket falt',
    '120A',
    '120a',
  ],
  'beef/brisket-point': ['point', 'Points', 'brisket point', 'point half', 'brisket piont', '120B'],
  'beef/chuck-roll': ['chuck roll', 'Chuck Rolls', 'chuckroll', 'beef chuck roll', 'chuk roll', '116A'],
  'beef/short-ribs': ['short ribs', 'short rib', 'Short Ribs', 'shortribs', 'shrot ribs', '123'],
  'beef/tri-tip': [
    'tri-tip',
    'tri tip',
    'tritip',
    'Tri-Tips',
    'TRITIP',
    'bottom sirloin tri-tip',
    'trittip',
    '185C',
  ],
  'beef/strip-loin': [
    'strip loin',
    'striploin',
    'Strip Loins',
    'top loin',
    'new york strip',
    'New York Strips',
    'strip lion',
  ],
  'beef/tenderloin': [
    'tenderloin',
    'beef tenderloin',
    'whole tenderloin',
    'fillet of beef',
    'tenderlion',
    'Tenderloins',
  ],
  'beef/bottom-round': ['bottom round', 'outside round', 'Bottom Rounds', 'beef bottom round', 'botom round'],
  'beef/eye-of-round': ['eye of round', 'eye round', 'Eye of Round', 'eye of rounds', 'eye fo round'],
  'pork/butt': [
    'butt',
    'Butts',
    'Boston butt',
    'boston butts',
    'BOSTON BUTT',
    'boston-butt',
    'pork butt',
    'pork butts',
    'bostn butt',
    'pork shoulder butt',
    '406',
  ],
  'pork/picnic': ['picnic', 'picnics', 'picnic ham', 'pork picnic shoulder', 'Picnic', 'picnik', '405'],
  'pork/spareribs': [
    'spares',
    'spareribs',
    'spare ribs',
    'Spare Ribs',
    'sparerib',
    'pork spareribs',
    'spareirbs',
    '416',
  ],
  'pork/back-ribs': [
    'back ribs',
    'baby backs',
    'baby back ribs',
    'Baby Back',
    'loin ribs',
    'pork back ribs',
    'baby bakc ribs',
    '422',
  ],
  'lamb/shoulder': [
    'lamb shoulder',
    'Lamb Shoulders',
    'square-cut shoulder',
    'square cut shoulder',
    'lamb sholder',
    '207',
  ],
  'poultry/turkey-whole': ['turkey', 'Turkeys', 'whole turkey', 'turky', 'Whole Turkey'],
};
const ROWS = Object.entries(TYPED).flatMap(([key, texts]) => texts.map((text) => [text, key] as const));

test('they are a hundred and more', () => {
  expect(ROWS.length).toBeGreaterThan(100);
});

test.each(ROWS)('%j is %s', (text, key) => {
  expect(read(text)).toBe(key);
});

describe('a name that several cuts answer to', () => {
  test.each([
    ['brisket', ['beef/brisket-whole', 'beef/brisket-flat', 'beef/brisket-point']],
    ['briskets', ['beef/brisket-whole', 'beef/brisket-flat', 'beef/brisket-point']],
    ['briskit', ['beef/brisket-whole', 'beef/brisket-flat', 'beef/brisket-point']],
    ['round', ['beef/bottom-round', 'beef/eye-of-round']],
    ['ribs', ['pork/spareribs', 'pork/back-ribs']],
    ['pork ribs', ['pork/spareribs', 'pork/back-ribs']],
    ['shoulder', ['pork/butt', 'pork/picnic', 'lamb/shoulder']],
    ['pork shoulder', ['pork/butt', 'pork/picnic']],
  ])('%j is asked, and each answer is its cut and no other', (text, keys) => {
    const found = read(text);
    if (!(found instanceof Ask)) throw new Error(`not asked: ${String(found)}`);
    const asked = found.readings.map(({ label }) => (label.code === 'cut' ? label.values.cut : null));
    expect(asked).toEqual(expect.arrayContaining(keys));
    expect(asked.length).toBeLessThanOrEqual(5);
    expect(found.readings.map(({ set }) => read(String(set.cut)))).toEqual(asked);
  });

  test('every name and key of the catalogue is its cut, or asked with it among the answers', () => {
    for (const cut of CUTS) {
      expect(read(cut.key)).toBe(cut.key);
      expect(read(cut.name)).toBe(cut.key);
      for (const name of cut.names) {
        const found = read(name);
        const keys = found instanceof Ask ? found.readings.map(({ set }) => read(String(set.cut))) : [found];
        expect([name, keys.includes(cut.key)]).toEqual([name, true]);
      }
    }
  });
});

describe('a name that is none', () => {
  test.each([['dragon'], [''], ['  '], ['🥩'], ['`@everyone`'], ['xyz'], ['bu'], ['x'.repeat(4000)]])(
    '%j is refused, with at most four that start alike',
    (text) => {
      const found = read(text);
      if (!(found instanceof MemberError)) throw new Error('taken');
      expect(found.code).toBe('cut-unknown');
      expect((found.values as { near: readonly string[] }).near.length).toBeLessThanOrEqual(4);
    },
  );

  test('short names forgive no slip', () => {
    expect(read('bat')).toBeInstanceOf(MemberError);
    expect(read('fat')).toBeInstanceOf(MemberError);
  });
});

describe('one slip of the finger', () => {
  const letters = 'abcdefghijklmnopqrstuvwxyz';
  // Words of letters alone, and none with an s at the end of a word: there a slip makes another plural.
  const names = CUTS.flatMap(({ name, names: others }) => [name, ...others])
    .map((name) => name.toLowerCase())
    .filter((name) => /^[a-z ]{6,}$/.test(name) && !/s(?: |$)/.test(name));
  const slipped = fc
    .record({
      name: fc.constantFrom(...names),
      place: fc.nat(),
      letter: fc.constantFrom(...letters.replace('s', '')),
      kind: fc.constantFrom('drop', 'change', 'add', 'swap'),
    })
    .map(({ name, place, letter, kind }) => {
      const at = place % (name.length - 1);
      const slip = {
        drop: name.slice(0, at) + name.slice(at + 1),
        change: name.slice(0, at) + letter + name.slice(at + 1),
        add: name.slice(0, at) + letter + name.slice(at),
        swap: name.slice(0, at) + name.charAt(at + 1) + name.charAt(at) + name.slice(at + 2),
      }[kind];
      return { name, slip };
    })
    // A space is no letter, and a swap of two alike is no slip.
    .filter(({ name, slip }) => name !== slip && !/s(?: |$)/.test(slip) && slip.trim() === slip);

  test('is forgiven: a cut is found, or asked', () => {
    fc.assert(
      fc.property(slipped, ({ slip }) => {
        expect(read(slip)).not.toBeInstanceOf(MemberError);
      }),
      { numRuns: 300 },
    );
  });
});

describe('completion', () => {
  test.each([
    ['bris', ['beef/brisket-whole', 'beef/brisket-flat', 'beef/brisket-point']],
    ['BUT', ['pork/butt']],
    ['tur', ['poultry/turkey-whole']],
    ['rib', ['beef/short-ribs', 'pork/spareribs', 'pork/back-ribs']],
  ])('of %j', (typed, keys) => {
    const found = matchingCuts(typed).map(({ key }) => key as string);
    expect(found).toEqual(expect.arrayContaining(keys));
    expect(new Set(found).size).toBe(found.length);
  });

  test('of nothing is everything, of no name nothing, and what starts so comes first', () => {
    expect(matchingCuts('')).toHaveLength(CUTS.length);
    expect(matchingCuts('dragon')).toEqual([]);
    expect(matchingCuts('baby back')[0]?.key).toBe('pork/back-ribs');
  });
});
