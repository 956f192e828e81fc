import { expect, test } from 'vitest';
import { sharesBy, sharesOf } from '../../../shared/club/shares.ts';
import { columnsOf } from '../pictures/clubs.ts';

const COLUMNS = {
  ...columnsOf([0.2, 0.25, 0.5]),
  grade: { codes: Int32Array.of(0, -1, 0), values: ['usda/choice'] },
};

test('each piece’s share in posting order', () => {
  expect([...sharesOf(COLUMNS, 'trim')]).toEqual([0.2, 0.25, 0.5]);
});

test('of a yield, what was kept', () => {
  expect([...sharesOf(COLUMNS, 'plate')]).toEqual([0.8, 0.75, 0.5]);
});

test('by a factor, those without a value under null', () => {
  expect([...sharesBy(COLUMNS, 'trim', COLUMNS.grade)]).toEqual([
    ['usda/choice', Float64Array.of(0.2, 0.5)],
    [null, Float64Array.of(0.25)],
  ]);
});
