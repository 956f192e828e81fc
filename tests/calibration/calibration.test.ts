/** The made-up clubs are as they are said to be, and on a few of them the methods are as right as is promised. */
import { describe, expect, test } from 'vitest';
import { at } from '../../shared/statistics/matrix.ts';
import { usualRange } from '../../shared/statistics/size-question.ts';
import { drawClub, GRADES_APART, type Habits, USUAL_RANGE_POUNDS, USUAL_SHARE } from './club.ts';
import { expectLines } from './expect-lines.ts';
import { LINES } from './lines.ts';
import { chanceFrom, chanceOf } from './random.ts';
import { addTally, figuresOf, simulate } from './tally.ts';

describe('chance', () => {
  test('is that of the reference implementation, xoshiro128starstar.c 1.1', () => {
    const { bits } = chanceFrom([1, 2, 3, 4]);
    expect(Array.from({ length: 6 }, bits)).toEqual([11520, 0, 5927040, 70819200, 2031721883, 1637235492]);
  });

  test('is as even and as normal as it should be', () => {
    const draws = Array.from({ length: 40_000 }, (_, draw) => chanceOf(1, 'chance', draw));
    expect(mean(draws.map(({ even }) => even()))).toBeCloseTo(0.5, 2);
    const normals = draws.map(({ normal }) => normal());
    expect(Math.abs(mean(normals))).toBeLessThan(0.02);
    expect(mean(normals.map((value) => value ** 2))).toBeCloseTo(1, 1);
  });
});

describe('a made-up club', () => {
  const plain: Habits = {
    slope: 0,
    ownSlopes: 0,
    ownSpreads: 0,
    trimmersBuyBigger: false,
    slips: 0,
    scaleError: 0,
    grades: GRADES_APART,
  };
  const drawn = (habits: Partial<Habits>) =>
    drawClub({ ...plain, ...habits }, 40_000, 500, chanceOf(1, 'club', 1));
  const sharesOf = ({ rows }: ReturnType<typeof drawn>) =>
    Array.from(rows.base, (base, row) => at(rows.loss, row) / base);

  test('buys and trims as is usual', () => {
    const club = drawn({});
    const bases = Array.from(club.rows.base);
    expect(mean(bases)).toBeCloseTo(13.5, 0);
    expect(spread(bases)).toBeCloseTo(2.9, 0);
    const { small, big } = usualRange(bases) ?? { small: 0, big: 0 };
    expect(Math.abs(big - small - USUAL_RANGE_POUNDS)).toBeLessThan(0.3);
    expect(mean(sharesOf(club))).toBeCloseTo(USUAL_SHARE, 2);
    expect(spread(sharesOf(club))).toBeCloseTo(Math.hypot(0.038, 0.038, 0.007), 2);
  });

  test('has its slope, and where trimmers buy bigger another one between members', () => {
    expect(slope(drawn({ slope: -0.003 }))).toBeCloseTo(-0.003, 3);
    expect(slope(drawn({ trimmersBuyBigger: true }))).toBeGreaterThan(0.005);
  });

  test('slips 3 times in 100', () => {
    const [right, typed] = [drawn({}), drawn({ slips: 0.03 })];
    expect(sharesOf(right).every((share) => share >= 0.02 && share <= 0.8)).toBe(true);
    const odd = Array.from(typed.rows.base, (base, row) => base < 4 || at(typed.rows.loss, row) > 0.8 * base);
    expect(mean(odd.map(Number))).toBeGreaterThan(0.003);
    expect(mean(odd.map(Number))).toBeLessThan(0.03);
  });

  function slope(club: ReturnType<typeof drawn>): number {
    const shares = sharesOf(club);
    const bases = Array.from(club.rows.base);
    const [usual, middle] = [mean(bases), mean(shares)];
    const together = mean(bases.map((base, row) => (base - usual) * (at(shares, row) - middle)));
    return together / spread(bases) ** 2;
  }
});

test('a run in parts, in any order, is the run', () => {
  for (const line of LINES.filter(({ pieces }) => pieces <= 40)) {
    const parts = simulate(line, 1, 6, 20);
    addTally(parts, simulate(line, 1, 0, 6));
    const [whole, again] = [figuresOf(simulate(line, 1, 0, 20)), figuresOf(parts)];
    expect(again.map(({ name, count }) => [name, count])).toEqual(
      whole.map(({ name, count }) => [name, count]),
    );
    for (const [place, { mean: found }] of again.entries())
      expect(found).toBeCloseTo(whole[place]?.mean ?? 9, 12);
  }
});

expectLines(10_000);

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function spread(values: readonly number[]): number {
  const middle = mean(values);
  return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)));
}
