/** The lines about a group's averages: their ranges, why they differ, and what they leave out. */
import type { Figures } from '../chat/reply.ts';
import type { UncostedCounts } from '../club/costs.ts';
import { FEWEST_FOR_HALF, type GroupFigures, isThin } from '../club/group.ts';
import type { FoundAverages } from '../findings/averages.ts';
import type { Speech } from '../words/index.ts';
import type { Averaged } from '../yield/measure.ts';

/** Averages are told side by side, with the reason, from this difference on: a point; of a cost, 2 % of it. */
const POINT = 0.01;
const PART_OF_COST = 0.02;
const worthTelling = (measure: Averaged, { meanShare }: GroupFigures): number =>
  measure === 'cost' ? PART_OF_COST * Math.abs(meanShare ?? 0) : POINT;

/** Whoever weighed a third of the pieces pulls their average. */
const MOST_OF_THEM = 1 / 3;

/**
 * The ranges that are told: none of a thin group, no share below nothing or above the whole, no cost below nothing.
 * @example toldRanges('trim', group with meanLow -0.01 and meanHigh 0.2).mean // { low: 0, high: 0.2 }
 */
export function toldRanges(measure: Averaged, group: GroupFigures) {
  // What was saved may be worth more than what was paid.
  const least = measure === 'cost' ? Math.min(0, group.meanShare ?? 0) : 0;
  const most = measure === 'cost' ? Number.POSITIVE_INFINITY : 1;
  const told = (low: number | null, high: number | null) =>
    isThin(group) || low === null || high === null
      ? null
      : { low: Math.max(least, low), high: Math.min(most, high) };
  return {
    mean: told(group.meanLow, group.meanHigh),
    pooled: told(group.pooledLow, group.pooledHigh),
    member: told(group.memberLow, group.memberHigh),
  };
}

/** Where the true average lies; null where no range is told. */
export function rangeLine(measure: Averaged, whole: GroupFigures, say: Speech): string | null {
  const { mean } = toldRanges(measure, whole);
  return mean === null ? null : say.averages.range({ measure, ...mean });
}

const apart = ({ meanShare, pooledShare }: GroupFigures): number => (pooledShare ?? 0) - (meanShare ?? 0);

/** The pooled share in the open, with the reason, where it differs by a point or more. */
export function apartLines(measure: Averaged, whole: GroupFigures, say: Speech): string[] {
  if (pooledIsSmall(measure, whole)) return [];
  // Pooled counts pounds: where it loses less than the average piece does, the heavier pieces lose less.
  const losesLess = measure === 'trim' || measure === 'cost' ? apart(whole) < 0 : apart(whole) > 0;
  const why = say.averages.whyDifferent({ measure, heavierIs: losesLess ? 'less' : 'more' });
  return pooledTold(measure, whole, say).map((pooled) => `${pooled} ${why}`);
}

/** The pooled share in small print, where it stands so near to the average piece that no reason is needed. */
export const pooledSmall = (measure: Averaged, whole: GroupFigures, say: Speech): string[] =>
  pooledIsSmall(measure, whole) ? pooledTold(measure, whole, say) : [];

const pooledIsSmall = (measure: Averaged, whole: GroupFigures): boolean => {
  const least = worthTelling(measure, whole);
  return Math.abs(apart(whole)) < least || least === 0;
};

const pooledTold = (measure: Averaged, whole: GroupFigures, say: Speech): string[] => {
  const { pooledShare: share } = whole;
  return share === null
    ? []
    : [say.averages.pooled({ measure, share, range: toldRanges(measure, whole).pooled })];
};

/** The average member, and who weighed most of the pieces where that is why it differs. */
export function memberLine(
  measure: Averaged,
  { whole: { figures }, most }: FoundAverages,
  say: Speech,
): string {
  const { members, memberMean, meanShare } = figures;
  if (members < 2 || memberMean === null) return say.averages.oneMember();
  const line = say.averages.memberMean({
    measure,
    share: memberMean,
    range: toldRanges(measure, figures).member,
  });
  const differs = Math.abs(memberMean - (meanShare ?? memberMean)) >= worthTelling(measure, figures);
  return differs && most !== null && most.part >= MOST_OF_THEM && !isThin(figures)
    ? `${line} ${say.averages.mostBy(most)}`
    : line;
}

/** The middle piece and the middle half; null of fewer than four pieces. */
export function spreadLine(
  measure: Averaged,
  { pieces, median, lowerQuartile, upperQuartile }: GroupFigures,
  say: Speech,
): string | null {
  return median === null || lowerQuartile === null || upperQuartile === null || pieces < FEWEST_FOR_HALF
    ? null
    : say.averages.middleHalf({ measure, median, low: lowerQuartile, high: upperQuartile });
}

/**
 * What these figures leave out: who waits, who gained, who lost nothing, who has no cost, and who took up brine, with
 * their average.
 */
export const leftOut = (
  measure: Averaged,
  { whole: { figures, uncosted }, injected }: Pick<FoundAverages, 'whole' | 'injected'>,
  say: Speech,
): string[] => [
  ...(figures.waiting === 0 ? [] : [say.averages.waiting({ count: figures.waiting })]),
  ...(figures.untouched === 0 ? [] : [say.averages.untouched({ count: figures.untouched })]),
  ...(figures.gained === 0 ? [] : [say.averages.gained({ count: figures.gained })]),
  ...(uncosted === null ? [] : withoutCost(uncosted, say)),
  ...(injected?.meanShare == null
    ? []
    : [
        say.averages.injected({
          measure,
          share: injected.meanShare,
          count: injected.pieces,
          members: injected.members,
        }),
      ]),
];

/** Pieces that have no cost to compare, and why. */
export const withoutCost = ({ foreign, unpriced, unserved }: UncostedCounts, say: Speech): string[] => [
  ...(foreign.length === 0 ? [] : [say.averages.foreign({ of: foreign })]),
  ...(unpriced === 0 ? [] : [say.averages.unpriced({ count: unpriced })]),
  ...(unserved === 0 ? [] : [say.averages.unserved({ count: unserved })]),
];

/**
 * The same in figures.
 * @example uncostedFigures(counts).withoutPrice // 3
 */
export const uncostedFigures = ({ unserved, unpriced, foreign }: UncostedCounts): Figures => ({
  notOnPlate: unserved,
  withoutPrice: unpriced,
  otherCurrencies: foreign.map((one) => ({ ...one })),
});
