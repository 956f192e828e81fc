import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ticksOf } from '../../../shared/pictures/ticks.ts';

describe('round figures along an axis', () => {
  test.each([
    [8.2, 21.9, 2, [10, 12, 14, 16, 18, 20]],
    [0, 1, 0.2, [0, 0.2, 0.4, 0.6, 0.8, 1]],
    [-3.4, 2.1, 1, [-3, -2, -1, 0, 1, 2]],
    [0.11, 0.42, 0.05, [0.15, 0.2, 0.25, 0.3, 0.35, 0.4]],
    [0.9, 1.3, 0.1, [0.9, 1, 1.1, 1.2, 1.3]],
  ])('from %d to %d in steps of %d', (low, high, step, ticks) => {
    expect(ticksOf(low, high)).toMatchObject({ step, ticks });
  });

  test('never as many whole steps as the chart would count from its own end', () => {
    const { min, max, step } = ticksOf(0.149, 0.249);
    expect(step).toBe(0.02);
    expect(Math.abs((max - min) / step - Math.round((max - min) / step))).toBeGreaterThan(0.001);
  });

  test('two to eight of them, inside, evenly apart, whatever the ends', () => {
    const end = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(end, fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (low, width) => {
        const { min, max, step, ticks } = ticksOf(low, low + width);
        expect(min).toBe(low);
        expect(max - (low + width)).toBeLessThanOrEqual(0.0201 * step);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(8);
        for (const [index, tick] of ticks.entries()) {
          expect(tick).toBeGreaterThanOrEqual(low - 1e-6 * step - 1e-6);
          expect(tick).toBeLessThanOrEqual(max + 1e-6 * step + 1e-6);
          if (index > 0) expect((tick - (ticks[index - 1] ?? 0)) / step).toBeCloseTo(1, 3);
        }
      }),
    );
  });
});
