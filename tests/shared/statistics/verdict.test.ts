/** The verdict is read from one interval, and from the scales' check of it. */
import { describe, expect, test } from 'vitest';
import { isFarMore, morePieces, projectedPieces } from '../../../shared/statistics/more-pieces.ts';
import { scaleError } from '../../../shared/statistics/scale-error.ts';
import { looksOtherwise } from '../../../shared/statistics/size-explained.ts';
import { verdictOf } from '../../../shared/statistics/verdict.ts';

describe('the verdict on an interval, at a margin of 0.02', () => {
  test.each([
    [-0.036, -0.008, 'less'],
    [0.008, 0.036, 'more'],
    [-0.015, 0.012, 'same'],
    [-0.015, 0.03, 'open'],
    [-0.03, 0.015, 'open'],
    [-0.019, -0.001, 'same'],
    [0.001, 0.019, 'same'],
    // An end on the margin or on 0 is not beyond it.
    [-0.02, 0.01, 'open'],
    [-0.01, 0.02, 'open'],
    [-0.03, 0, 'open'],
    [0, 0.03, 'open'],
    [-1, 1, 'open'],
  ])('%d to %d: %s', (low, high, verdict) => {
    expect(verdictOf(low, high, 0.02)).toBe(verdict);
  });
});

describe('how many more pieces', () => {
  test('tell no difference from one of the margin 9 times in 10', () => {
    // (1.959964 + 1.281552) squared is 10.5074: at an error of the margin, that many times the pieces.
    expect(projectedPieces(100, 0.02, 0.95, 0.02)).toBeCloseTo(950.742, 3);
    expect(morePieces(100, 0.02, 0.95, 0.02)).toBe(960);
  });

  test.each([
    [0, 0],
    [0.2, 1],
    [3.4, 4],
    [99, 99],
    [99.2, 100],
    [100.1, 110],
    [1302.37, 1400],
    [1300, 1300],
    [9901, 10_000],
  ])('%d are told as %d', (projected, told) => {
    // An error for which the projection is that many on top of 1,000 pieces.
    const reach = Math.sqrt(10.507423894898766);
    const error = (0.02 / reach) * Math.sqrt(1 + (projected - 1e-7) / 1000);
    expect(morePieces(1000, error, 0.95, 0.02)).toBe(told);
  });

  test('are none where the pieces are enough, and unknown without a margin', () => {
    expect(morePieces(100, 0.001, 0.99, 0.02)).toBe(0);
    expect(morePieces(100, 0.001, 0.99, 0)).toBeNull();
  });

  test('far more than the club has is over twenty times', () => {
    expect([isFarMore(2000, 100), isFarMore(2100, 100)]).toEqual([false, true]);
  });
});

describe('what scales alone could do', () => {
  const weighed = { count: 100, scaleError: 0.02, spread: 10, spreadDf: 80, squares: 320, withShares: 45 };
  const found = { estimate: -0.012, low: -0.02, high: -0.004 };

  test('scales without error do nothing, and tell what it would take', () => {
    const checked = scaleError(found, 0.02, { ...weighed, scaleError: 0 });
    expect(checked.shrinkage).toBe(0);
    expect(checked.corrected).toEqual(found);
    // 0.012 = error squared times 80 / 100 / 10 times 45.
    expect(checked.toExplain).toBeCloseTo(Math.sqrt(0.012 / 3.6), 12);
  });

  test('at the error that explains the difference nothing is left of it', () => {
    const { toExplain } = scaleError(found, 0.02, weighed);
    const checked = scaleError(found, 0.02, { ...weighed, scaleError: toExplain ?? 0 });
    expect(checked.corrected?.estimate).toBeCloseTo(0, 12);
  });

  test('a difference that bigger pieces lose more is not explained by scales', () => {
    expect(scaleError({ estimate: 0.012, low: 0.004, high: 0.02 }, 0.02, weighed).toExplain).toBeNull();
  });

  test('scales that could be all of it leave it open', () => {
    const checked = scaleError(found, 0.02, { ...weighed, scaleError: 0.2 });
    expect(checked.shrinkage).toBeGreaterThanOrEqual(0.9);
    expect([checked.verdict, checked.corrected]).toEqual(['open', null]);
  });
});

describe('lumping tells another story', () => {
  test.each([
    [-0.0013, 0.006, 6.8, true],
    [0.02, 0.003, 7, false],
    [0.02, 0.006, 7, true],
    [0.001, -0.0001, 7, true],
    [0, 0.001, 7, false],
  ])('%d against %d a pound over %d lb: %s', (difference, slope, width, otherwise) => {
    expect(looksOtherwise(difference, slope, width, 0.01)).toBe(otherwise);
  });
});
