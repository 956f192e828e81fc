import { expect, test } from 'vitest';
import { sharesBy, sharesOf } from '../../../shared/club/shares.ts';
import { columnsOf } from '../pictures/clubs.ts';

const COLUMNS = {
  ...columnsOf([0.2, 0.25, -0.1, 0.5]),
  grade: { codes: Int32Array.of(0, -1, 0, 0), values: ['usda/choice'] },
};

test('each piece’s share in posting order, without those that gained', () => {
  expect(sharesOf(COLUMNS, 'trim')).toEqual({
    seq: Int32Array.of(1, 2, 4),
    shares: Float64Array.of(0.2, 0.25, 0.5),
  });
});

test('of a yield, what was kept', () => {
  expect([...sharesOf(COLUMNS, 'plate').shares]).toEqual([0.8, 0.75, 0.5]);
});

test('by a factor, those without a value under null', () => {
  expect([...sharesBy(COLUMNS, 'trim', COLUMNS.grade)]).toEqual([
    ['usda/choice', [0.2, 0.5]],
    [null, [0.25]],
  ]);
});
