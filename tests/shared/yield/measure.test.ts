/** The loss that each measure looks at. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lossOf, MEASURES } from '../../../shared/yield/measure.ts';
import { pieceFigures } from '../../../shared/yield/piece.ts';
import { inGrams, possiblePieces } from './samples.ts';

describe('the loss of a measure', () => {
  const whole = { bought: 5000, bagged: 4900, trim: 900, added: 500, cooked: 3000, scraps: 600 };
  test.each([
    ['trim', whole, { base: 5000, loss: 900 }],
    ['cooking', whole, { base: 4500, loss: 1500 }],
    ['carving', whole, { base: 3000, loss: 600 }],
    ['plate', whole, { base: 5000, loss: 2600 }],
    ['trim', { bought: 5000, left: 4000 }, { base: 5000, loss: 1000 }],
    ['trim', { bought: 5000 }, null],
    ['cooking', { bought: 5000, cooked: 3000 }, null],
    ['cooking', { bought: 5000, left: 3000, cooked: 3300 }, { base: 3000, loss: -300 }],
    ['carving', { bought: 5000, cooked: 3000 }, null],
    ['carving', { bought: 5000, served: 2000 }, null],
    ['plate', { bought: 5000, served: 2000 }, { base: 5000, loss: 3000 }],
    ['plate', { bought: 5000, scraps: 2000 }, null],
  ] as const)('%s of %j: %j', (measure, told, loss) => {
    expect(lossOf(measure, inGrams(told))).toEqual(loss);
  });
});

test('it is the same as the share or yield in the figures', () => {
  fc.assert(
    fc.property(possiblePieces, (told) => {
      const { trimShare, cookingYield, carvingYield, plateYield } = pieceFigures(told);
      const shares = { trim: trimShare, cooking: cookingYield, carving: carvingYield, plate: plateYield };
      for (const measure of MEASURES) {
        const found = lossOf(measure, told);
        const share = shares[measure];
        expect(found === null).toBe(share === null);
        if (found === null || share === null) continue;
        const lost = found.loss / found.base;
        expect(measure === 'trim' ? lost : 1 - lost).toBeCloseTo(share, 9);
      }
    }),
  );
});
