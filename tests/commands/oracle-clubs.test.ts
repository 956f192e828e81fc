/**
 * The made-up clubs, posted line by line with `/weigh`, and what the commands' figures say of them: against what R says
 * (how its numbers were made stands in tests/oracles/clubs/ACCOUNT.md).
 */
import { describe, expect, test } from 'vitest';
import type { Figure, Figures } from '../../shared/chat/reply.ts';
import { CLUB_NAMES, distance, type Expected, oracleClub } from '../oracles/clubs.ts';
import { postedClub } from '../oracles/through-weigh.ts';

const POUND = 453.59237;
const POINTS = 0.01;

type Numbers = Readonly<Record<string, Figure | undefined>>;

/** Our figures' names, and R's. */
const AVERAGES = [
  ['mean', 'meanShare', 'meanShare'],
  ['pooled', 'pooledShare', 'pooledRatio'],
  ['member', 'memberMean', 'memberMean'],
] as const;

function sameAverages(found: Numbers, expected: Expected): void {
  expect([found.pieces, found.members]).toEqual([expected.n, expected.members]);
  for (const [short, ours, theirs] of AVERAGES) {
    const { est, lo95, hi95, df } = expected[theirs] as Expected;
    close(found[ours], est);
    close(found[`${short}Low`], lo95);
    close(found[`${short}High`], hi95);
    if (short !== 'member') close(found[`${short}Df`], df);
  }
}

const close = (found: Figure | undefined, expected: unknown, per = 1) => {
  const value = typeof found === 'number' ? found / per : null;
  expect(distance(value, expected), `${value} and ${expected}`).toBeLessThanOrEqual(1);
};

function sameDifference(found: Numbers, expected: Expected): void {
  // All weights equal is too early, with that as its reason.
  if (expected.verdict === 'same_weights') expect(found.reason).toBe('same_weights');
  const early = expected.verdict === 'early' || expected.verdict === 'same_weights';
  expect(found.verdict).toBe(early ? 'early' : expected.verdict);
  if (early) return;
  close(found.difference, expected.est);
  close(found.low, expected.lo);
  close(found.high, expected.hi);
}

function samePairs(found: Figure | undefined, expected: Expected): void {
  const pairs = found as unknown as (Numbers & { firstName: string; secondName: string })[];
  for (const pair of expected.pairs as Expected[]) {
    const own = pairs.find(({ firstName, secondName }) => firstName === pair.low && secondName === pair.high);
    expect(own, `${pair.low} and ${pair.high}`).toBeDefined();
    sameDifference(own ?? {}, pair);
    if (pair.verdict !== 'early') close(own?.level, pair.levelPerPair);
  }
}

describe.each(CLUB_NAMES)('%s, posted with /weigh', (name) => {
  const { brisket } = oracleClub(name);

  test('its averages, its debates about size and grade, so far and ruled, are what R says', async () => {
    const club = await postedClub(name);
    await club.play('@ines! /club set margin:1');

    const averages: Figures = (await club.play('/average cut:packer by:grade')).figures;
    sameAverages(averages, brisket.average as Expected);
    const groups = averages.groups as unknown as (Numbers & { name: string })[];
    for (const [grade, expected] of Object.entries(brisket.averageByGrade as Expected)) {
      const group = groups.find((one) => one.name === grade);
      expect(group, grade).toBeDefined();
      sameAverages(group ?? {}, expected as Expected);
    }

    const size: Figures = (await club.play('/debate question:size cut:packer')).figures;
    const running = brisket.biggerRunning as Expected;
    sameDifference(size, running);
    expect(size.margin).toBe(POINTS);
    if (size.verdict !== 'early') {
      close(size.smallGrams, running.usualLow, POUND);
      close(size.bigGrams, running.usualHigh, POUND);
      close(size.standardError, running.se);
      close(size.df, running.df);
      close(size.correctedDifference, running.correctedEst);
      close(size.correctedLow, running.correctedLo);
      close(size.correctedHigh, running.correctedHi);
    }
    const explained = brisket.explain as Expected | undefined;
    if (explained !== undefined) {
      close(size.lumpedSlopePerKg, explained.lumpedSlopePerLb, 1000 / POUND);
      close(size.lumpedDifference, explained.bigMinusSmall);
    }
    const ruling = brisket.biggerRuling as Expected | null;
    if (ruling == null) expect(size.ruling).toBeNull();
    else sameDifference(size.ruling as Numbers, ruling);

    const grade: Figures = (await club.play('/debate question:grade cut:packer')).figures;
    samePairs(grade.pairs, brisket.gradesRunning as Expected);
    if (brisket.gradesRuling != null)
      samePairs((grade.ruling as Figures).pairs, brisket.gradesRuling as Expected);
  });
});

test('lumped together bigger looks worse, and the verdict does not fall for it', async () => {
  const club = await postedClub('p3_simpson');
  const said = await club.play('/debate');
  const { lumpedSlopePerKg, lumpedDifference, verdict, difference } = said.figures as Record<string, number>;
  expect(lumpedSlopePerKg).toBeGreaterThan(0);
  expect(lumpedDifference).toBeGreaterThan(0.02);
  expect(verdict).toBe('open');
  expect(Math.abs(difference ?? 1)).toBeLessThan(0.01);
  expect(said.text).toContain(
    'Lumped together it looks like 0.6 points more per lb, but that is because those who buy bigger ones lose more off any piece.',
  );
});
