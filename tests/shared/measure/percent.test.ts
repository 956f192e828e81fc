import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readPercent } from '../../../shared/measure/percent.ts';

test.each([
  ['2', 0.02],
  ['2.5', 0.025],
  ['2,5', 0.025],
  ['2 points', 0.02],
  ['1 point', 0.01],
  ['2.5 pp', 0.025],
  ['2 %', 0.02],
  ['3 per cent', 0.03],
  ['2 Prozent', 0.02],
  ['1,5 Punkte', 0.015],
  ['2 puntos', 0.02],
  ['0', 0],
  ['100 %', 1],
])('%s is %d', (text, share) => expect(readPercent(text)).toBe(share));

test.each([
  '',
  ' ',
  '-2',
  '+2',
  '2.25',
  '1e1',
  '.5',
  '2 lb',
  'two',
  '2 2',
  '1000',
  '2.',
  '½',
  '2 points off',
])('"%s" is none', (text) => expect(readPercent(text)).toBeNull());

test('any text is a share in tenths of a hundredth, or none', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const share = readPercent(text);
      expect(share === null || Number.isInteger(Math.round(share * 1e9) / 1e6)).toBe(true);
    }),
  );
});
