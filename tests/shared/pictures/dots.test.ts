import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { axisOf } from '../../../shared/pictures/axis.ts';
import { stack, thin } from '../../../shared/pictures/dots.ts';

const ascending = fc
  .array(fc.double({ min: 0, max: 664, noNaN: true }), { minLength: 1, maxLength: 200 })
  .map((values) => values.toSorted((a, b) => a - b));

describe('an even choice', () => {
  test.each([
    [[1, 2, 3, 4, 5], 9, [1, 2, 3, 4, 5]],
    [[1, 2, 3, 4, 5], 3, [1, 3, 5]],
    [[1, 2, 3, 4, 5], 2, [1, 5]],
    [[1, 2, 3, 4, 5], 1, [1]],
    [[], 3, []],
  ])('%j, at most %i', (values, most, expected) => {
    expect(thin(values, most)).toEqual(expected);
  });
});

describe('stacks', () => {
  test('stand where their pieces are, on top of each other where those are close', () => {
    expect(stack([10, 14, 40], 10, 9)).toEqual([
      { along: 12, level: 0, of: 2 },
      { along: 12, level: 1, of: 2 },
      { along: 40, level: 0, of: 1 },
    ]);
  });

  test('go on beside themselves where they are too high', () => {
    expect(stack([20, 20, 20], 10, 2).map(({ along, level }) => [along, level])).toEqual([
      [15, 0],
      [25, 0],
      [15, 1],
    ]);
  });

  test('are a step apart, and no dot is farther than half a step from its place', () => {
    fc.assert(
      fc.property(ascending, fc.integer({ min: 5, max: 18 }), (values, step) => {
        const dots = stack(values, step, 1000);
        const places = [...new Set(dots.map(({ along }) => along))];
        for (const [index, place] of places.slice(1).entries())
          expect(place - (places[index] ?? 0)).toBeGreaterThan(step - 1e-6);
        for (const [index, { along }] of dots.entries())
          expect(Math.abs(along - (values[index] ?? 0))).toBeLessThanOrEqual(step / 2 + 1e-6);
      }),
    );
  });
});

describe('the axis', () => {
  test.each([
    [[0.174], 0.12, 0.24, 7],
    [[0], 0, 0.1, 6],
    [[1], 0.9, 1, 6],
    [[0.1, 0.3], 0.1, 0.3, 5],
    [[0, 1], 0, 1, 6],
  ])('of %j goes from %d to %d in %i lines', (values, min, max, lines) => {
    const axis = axisOf(values);
    expect([axis.min, axis.max, axis.ticks.length]).toEqual([min, max, lines]);
  });

  test('holds every value, at most eight lines', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1 }), (values) => {
        const { min, max, ticks } = axisOf(values);
        expect(min).toBeLessThanOrEqual(Math.min(...values) + 1e-9);
        expect(max).toBeGreaterThanOrEqual(Math.max(...values) - 1e-9);
        expect(ticks.length).toBeLessThanOrEqual(8);
        expect([ticks[0], ticks.at(-1)]).toEqual([min, max]);
      }),
    );
  });
});
