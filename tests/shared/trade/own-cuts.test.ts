import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MemberError } from '../../../shared/errors.ts';
import { SPECIES } from '../../../shared/trade/cut.ts';
import { cutOf } from '../../../shared/trade/cuts.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';
import { readCut } from '../../../shared/trade/look-up.ts';
import {
  LONGEST_OWN_CUT,
  ownCut,
  ownCutKey,
  ownCutNear,
  ownCutsLike,
  readOwnCutName,
} from '../../../shared/trade/own-cuts.ts';

describe('a key', () => {
  test.each([
    ['own/pork/schäufele', 'pork', 'Schäufele'],
    ['own/beef/smoked-short-plate', 'beef', 'Smoked short plate'],
    ["own/beef/butcher's-plate", 'beef', "Butcher's plate"],
    ['own/game/ßa', 'game', 'ßa'],
    ['own/lamb/לשון', 'lamb', 'לשון'],
    ['own/veal/7-bone', 'veal', '7 bone'],
  ])('%s is a cut', (key, species, name) => {
    expect(cutOf(key as CutKey)).toMatchObject({ key, species, name, styles: null, imps: null, raw: [] });
  });

  test.each([
    'own/frog/leg',
    'own/pork/',
    'own/pork/-a',
    'own/pork/a--b',
    'own/pork/<@42>',
    'own/pork/a b',
    'own/1',
    'pork/nowhere',
  ])('%s is none', (key) => {
    expect(ownCut(key)).toBeNull();
    expect(() => cutOf(key as CutKey)).toThrow('no cut');
  });
});

test('every name that is taken makes a key that is read back', () => {
  const signs = fc.constantFrom(..."aBßÄéïİçñ漢לशि9 -'’`*_<@:/%\u202e\n\u0301");
  fc.assert(
    fc.property(
      fc.oneof(fc.string({ unit: signs, maxLength: 30 }), fc.string({ unit: 'grapheme', maxLength: 30 })),
      fc.constantFrom(...SPECIES),
      (text, species) => {
        let name: string;
        try {
          name = readOwnCutName(text, 'add');
        } catch (problem) {
          expect(problem).toBeInstanceOf(MemberError);
          return;
        }
        const key = ownCutKey(species, name);
        const cut = cutOf(key);
        expect(cut.species).toBe(species);
        expect([...name].length).toBeLessThanOrEqual(LONGEST_OWN_CUT);
        expect(cut.name).toMatch(/^[\p{L}\p{M}\p{N}' ]+$/u);
        expect(ownCutKey(species, readOwnCutName(cut.name, 'add'))).toBe(key);
        for (const typed of [key, cut.name]) expect(readCut(typed, 'cut', [key])).toBe(key);
      },
    ),
    { numRuns: 2000 },
  );
});

test('one slip of the finger is forgiven, and half a name completed', () => {
  const own = ['own/pork/schäufele', 'own/beef/house-plate', 'own/beef/house-plates-b'] as CutKey[];
  expect(ownCutNear('schäufle', own)).toBe('own/pork/schäufele');
  expect(ownCutNear('frog', own)).toBeNull();
  expect(ownCutsLike('house', own)).toEqual(own.slice(1));
  expect(ownCutsLike('', own)).toEqual(own);
});
