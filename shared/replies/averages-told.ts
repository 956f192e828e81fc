/** The lines about a group's averages: their ranges, why they differ, and what they leave out. */
import { FEWEST_FOR_HALF, type GroupFigures, isThin } from '../club/group.ts';
import type { FoundAverages } from '../findings/averages.ts';
import type { Speech } from '../words/index.ts';
import type { Measure } from '../yield/measure.ts';

/** Averages are told side by side, with the reason, from this difference on: a point. */
const WORTH_TELLING = 0.01;

/** Whoever weighed a third of the pieces pulls their average. */
const MOST_OF_THEM = 1 / 3;

/** The ranges that are told: none of a thin group, and no share below nothing or above the whole. */
function toldRanges(group: GroupFigures) {
  const told = (low: number | null, high: number | null) =>
    isThin(group) || low === null || high === null
      ? null
      : { low: Math.max(0, low), high: Math.min(1, high) };
  return {
    mean: told(group.meanLow, group.meanHigh),
    pooled: told(group.pooledLow, group.pooledHigh),
    member: told(group.memberLow, group.memberHigh),
  };
}

export function rangeLine(whole: GroupFigures, say: Speech): string | null {
  const { mean } = toldRanges(whole);
  return mean === null ? null : say.averages.range(mean);
}

const apart = ({ meanShare, pooledShare }: GroupFigures): number => (pooledShare ?? 0) - (meanShare ?? 0);

/** The pooled share in the open, with the reason, where it differs by a point or more. */
export function apartLines(measure: Measure, whole: GroupFigures, say: Speech): string[] {
  const { pooledShare } = whole;
  if (pooledShare === null || Math.abs(apart(whole)) < WORTH_TELLING) return [];
  // Pooled counts pounds: where it loses less than the average piece does, the heavier pieces lose less.
  const losesLess = measure === 'trim' ? apart(whole) < 0 : apart(whole) > 0;
  const why = say.averages.whyDifferent({ heavierIs: losesLess ? 'less' : 'more' });
  return [`${say.averages.pooled({ measure, share: pooledShare, range: toldRanges(whole).pooled })} ${why}`];
}

export function pooledSmall(measure: Measure, whole: GroupFigures, say: Speech): string[] {
  const { pooledShare } = whole;
  const told = pooledShare === null || Math.abs(apart(whole)) >= WORTH_TELLING;
  return told ? [] : [say.averages.pooled({ measure, share: pooledShare, range: toldRanges(whole).pooled })];
}

/** The average member, and who weighed most of the pieces where that is why it differs. */
export function memberLine({ whole: { figures }, most }: FoundAverages, say: Speech): string {
  const { members, memberMean, meanShare } = figures;
  if (members < 2 || memberMean === null) return say.averages.oneMember();
  const line = say.averages.memberMean({ share: memberMean, range: toldRanges(figures).member });
  const differs = Math.abs(memberMean - (meanShare ?? memberMean)) >= WORTH_TELLING;
  return differs && most !== null && most.part >= MOST_OF_THEM && !isThin(figures)
    ? `${line} ${say.averages.mostBy(most)}`
    : line;
}

export function spreadLine({ pieces, median, lowerQuartile, upperQuartile }: GroupFigures, say: Speech) {
  return median === null || lowerQuartile === null || upperQuartile === null || pieces < FEWEST_FOR_HALF
    ? null
    : say.averages.middleHalf({ median, low: lowerQuartile, high: upperQuartile });
}

/** What these figures leave out: who waits, who gained, who lost nothing, and who took up brine, with their average. */
export const leftOut = (
  { waiting, untouched, gained }: GroupFigures,
  injected: GroupFigures | null,
  say: Speech,
): string[] => [
  ...(waiting === 0 ? [] : [say.averages.waiting({ count: waiting })]),
  ...(untouched === 0 ? [] : [say.averages.untouched({ count: untouched })]),
  ...(gained === 0 ? [] : [say.averages.gained({ count: gained })]),
  ...(injected?.meanShare == null
    ? []
    : [
        say.averages.injected({
          share: injected.meanShare,
          count: injected.pieces,
          members: injected.members,
        }),
      ]),
];
