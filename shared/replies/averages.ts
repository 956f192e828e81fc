/** The club's averages: of one cut with its grades, or of every cut. */
import type { Figures, Reply } from '../chat/reply.ts';
import type { GroupFigures } from '../club/group.ts';
import type { CutKey, GradeKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import type { Measure } from '../yield/measure.ts';

/** The two averages are told side by side from this difference on: a point. */
const WORTH_TELLING = 0.01;

export function averageOfCut(
  {
    measure,
    cut,
    whole,
    grades,
  }: { measure: Measure; cut: CutKey; whole: GroupFigures; grades: readonly GroupFigures[] },
  say: Speech,
): Reply {
  const { meanShare: share, pieces: count, members } = whole;
  if (share === null) return nothingYet(measure, cut, whole, say);
  const named = grades.filter(({ key, meanShare }) => key !== null && meanShare !== null);
  return {
    answer: say.averages.cut({ cut, measure, share, count, members }),
    lines: [...apartLines(measure, whole, say), ...spreadLines(whole, say)],
    ...(named.length === 0 ? {} : { table: gradeTable(grades, say) }),
    small: [
      ...pooledSmall(measure, whole, say),
      ...(named.length === 0 ? [] : [say.averages.countsNote()]),
      ...leftOut(whole, say),
    ],
    figures: figuresOf(measure, whole, grades, (key) => say.trade.grade(key as GradeKey), say),
  };
}

export function averagesByCut(
  { measure, whole, cuts }: { measure: Measure; whole: GroupFigures; cuts: readonly GroupFigures[] },
  say: Speech,
): Reply {
  const some = cuts.filter(({ meanShare }) => meanShare !== null);
  if (some.length === 0) return nothingYet(measure, null, whole, say);
  const { pieces: count, members } = whole;
  return {
    answer: say.averages.allCuts({ measure, cuts: some.length, count, members }),
    table: [
      [say.averages.head.cut(), say.averages.head.mean(), say.averages.head.counts()],
      ...some.map((group) => row(say.trade.cut(group.key as CutKey), group, say)),
    ],
    small: [say.averages.countsNote(), ...leftOut(whole, say)],
    figures: figuresOf(measure, whole, some, (key) => say.trade.cut(key as CutKey), say),
  };
}

const nothingYet = (measure: Measure, cut: CutKey | null, whole: GroupFigures, say: Speech): Reply => ({
  answer: say.averages.none({ measure, cut }),
  small: leftOut(whole, say),
  figures: { measure, groups: [] },
});

const gradeTable = (grades: readonly GroupFigures[], say: Speech): string[][] => [
  [say.averages.head.grade(), say.averages.head.mean(), say.averages.head.counts()],
  ...grades
    .filter(({ meanShare }) => meanShare !== null)
    .map((group) =>
      row(group.key === null ? say.trade.notTold() : say.trade.grade(group.key as GradeKey), group, say),
    ),
];

const row = (name: string, { meanShare, pieces: count, members }: GroupFigures, say: Speech): string[] => [
  name,
  meanShare === null ? '' : say.show.share(meanShare),
  say.averages.countsCell({ count, members }),
];

const apart = ({ meanShare, pooledShare }: GroupFigures): number => (pooledShare ?? 0) - (meanShare ?? 0);

/** The pooled share in the open, with the reason, where it differs by a point or more. */
function apartLines(measure: Measure, whole: GroupFigures, say: Speech): string[] {
  const { pooledShare } = whole;
  if (pooledShare === null || Math.abs(apart(whole)) < WORTH_TELLING) return [];
  // Pooled counts pounds: where it loses less than the average piece does, the heavier pieces lose less.
  const losesLess = measure === 'trim' ? apart(whole) < 0 : apart(whole) > 0;
  const why = say.averages.whyDifferent({ heavierIs: losesLess ? 'less' : 'more' });
  return [`${say.averages.pooled({ measure, share: pooledShare })} ${why}`];
}

function pooledSmall(measure: Measure, whole: GroupFigures, say: Speech): string[] {
  const { pooledShare } = whole;
  const told = pooledShare === null || Math.abs(apart(whole)) >= WORTH_TELLING;
  return told ? [] : [say.averages.pooled({ measure, share: pooledShare })];
}

/** Fewer pieces have no middle half worth the name. */
const FEWEST_FOR_HALF = 4;

function spreadLines(
  { pieces, members, memberMean, median, lowerQuartile: low, upperQuartile: high }: GroupFigures,
  say: Speech,
): string[] {
  return [
    members < 2 || memberMean === null
      ? say.averages.oneMember()
      : say.averages.memberMean({ share: memberMean }),
    median === null || low === null || high === null || pieces < FEWEST_FOR_HALF
      ? null
      : say.averages.middleHalf({ median, low, high }),
  ].filter((line) => line !== null);
}

const leftOut = ({ gained }: GroupFigures, say: Speech): string[] =>
  gained === 0 ? [] : [say.averages.gained({ count: gained })];

function figuresOf(
  measure: Measure,
  whole: GroupFigures,
  groups: readonly GroupFigures[],
  nameOf: (key: string) => string,
  say: Speech,
): Figures {
  return {
    measure,
    ...whole,
    groups: groups.map((group) => ({
      ...group,
      name: group.key === null ? say.trade.notTold() : nameOf(group.key),
    })),
  };
}
