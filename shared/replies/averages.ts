/** The club's averages: of one cut with its grades, or of every cut. */
import type { Figures, Reply } from '../chat/reply.ts';
import { FEWEST_FOR_HALF, type GroupFigures, isThin } from '../club/group.ts';
import { sharesBy, sharesOf } from '../club/shares.ts';
import type { Columns } from '../club/store.ts';
import { averagesOf } from '../pictures/averages.ts';
import type { Group, Grouped } from '../pictures/averages-rows.ts';
import type { Picture } from '../pictures/picture.ts';
import type { CutKey, GradeKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import type { Measure } from '../yield/measure.ts';

/** The two averages are told side by side from this difference on: a point. */
const WORTH_TELLING = 0.01;

export function averageOfCut(
  {
    measure,
    cut,
    columns,
    whole,
    injected,
    grades,
  }: {
    measure: Measure;
    cut: CutKey;
    columns: Columns;
    whole: GroupFigures;
    /** Injected and pumped pieces, where they are a group of their own. */
    injected: GroupFigures | null;
    grades: readonly GroupFigures[];
  },
  say: Speech,
): Reply {
  const { meanShare: share, pieces: count, members } = whole;
  if (share === null) return nothingYet(measure, cut, whole, injected, say);
  const named = grades.filter(({ key, meanShare }) => key !== null && meanShare !== null);
  return {
    answer: say.averages.cut({ cut, measure, share, count, members }),
    lines: [...rangeLines(whole, say), ...apartLines(measure, whole, say), ...spreadLines(whole, say)],
    ...(named.length === 0 ? {} : { table: gradeTable(grades, say) }),
    ...pictureOf(
      measure,
      whole,
      named.length === 0
        ? {
            about: say.trade.cut(cut),
            mean: share,
            groups: [
              {
                name: say.trade.cut(cut),
                own: isOwn(cut),
                shares: [...sharesOf(columns, measure).shares],
                figures: whole,
              },
            ],
          }
        : {
            about: say.pictures.averages.byGrade({ cut }),
            mean: share,
            groups: groupsOf(grades, sharesBy(columns, measure, columns.grade), (key) => gradeName(key, say)),
          },
      say,
    ),
    small: [
      ...pooledSmall(measure, whole, say),
      ...(named.length === 0 ? [] : [say.averages.countsNote()]),
      ...leftOut(whole, injected, say),
    ],
    figures: figuresOf(measure, whole, injected, grades, (key) => say.trade.grade(key as GradeKey), say),
  };
}

export function averagesByCut(
  {
    measure,
    columns,
    whole,
    injected,
    cuts,
  }: {
    measure: Measure;
    columns: Columns;
    whole: GroupFigures;
    injected: GroupFigures | null;
    cuts: readonly GroupFigures[];
  },
  say: Speech,
): Reply {
  const some = cuts.filter(({ meanShare }) => meanShare !== null);
  if (some.length === 0) return nothingYet(measure, null, whole, injected, say);
  const { pieces: count, members } = whole;
  return {
    answer: say.averages.allCuts({ measure, cuts: some.length, count, members }),
    table: [
      [say.averages.head.cut(), say.averages.head.mean(), say.averages.head.counts()],
      ...some.map((group) => row(say.trade.cut(group.key as CutKey), group, say)),
    ],
    ...pictureOf(
      measure,
      whole,
      {
        about: say.pictures.averages.byCut(),
        mean: null,
        groups: groupsOf(some, sharesBy(columns, measure, columns.cut), (key) =>
          say.trade.cut(key as CutKey),
        ),
      },
      say,
    ),
    small: [say.averages.countsNote(), ...leftOut(whole, injected, say)],
    figures: figuresOf(measure, whole, injected, some, (key) => say.trade.cut(key as CutKey), say),
  };
}

const nothingYet = (
  measure: Measure,
  cut: CutKey | null,
  whole: GroupFigures,
  injected: GroupFigures | null,
  say: Speech,
): Reply => ({
  answer: say.averages.none({ measure, cut }),
  small: leftOut(whole, injected, say),
  figures: { measure, groups: [], injected: injected === null ? null : { ...injected } },
});

/** One piece needs no picture: the answer says its share. */
const FEWEST_DRAWN = 2;

const pictureOf = (
  measure: Measure,
  { pieces }: GroupFigures,
  grouped: Omit<Grouped, 'measure'>,
  say: Speech,
): { picture?: Picture } =>
  pieces < FEWEST_DRAWN
    ? {}
    : { picture: averagesOf({ measure, ...grouped }, say.pictures.averages, say.show) };

const groupsOf = (
  groups: readonly GroupFigures[],
  shares: ReadonlyMap<string | null, readonly number[]>,
  nameOf: (key: string | null) => string,
): Group[] =>
  groups.map((figures) => ({
    name: nameOf(figures.key),
    own: isOwn(figures.key),
    shares: shares.get(figures.key) ?? [],
    figures,
    ...(isThin(figures) ? {} : { low: figures.meanLow, high: figures.meanHigh }),
  }));

/** A cut of the club's own has the club's word for a name. */
const isOwn = (key: string | null): boolean => key?.startsWith('own/') ?? false;

const gradeName = (key: string | null, say: Speech): string =>
  key === null ? say.trade.notTold() : say.trade.grade(key as GradeKey);

const gradeTable = (grades: readonly GroupFigures[], say: Speech): string[][] => [
  [say.averages.head.grade(), say.averages.head.mean(), say.averages.head.counts()],
  ...grades
    .filter(({ meanShare }) => meanShare !== null)
    .map((group) => row(gradeName(group.key, say), group, say)),
];

const row = (name: string, { meanShare, pieces: count, members }: GroupFigures, say: Speech): string[] => [
  name,
  meanShare === null ? '' : say.show.share(meanShare),
  say.averages.countsCell({ count, members }),
];

/** The ranges that are told: none of a thin group, and no share below nothing or above the whole. */
function toldRanges(group: GroupFigures) {
  const told = ({ low, high }: { low: number | null; high: number | null }) =>
    isThin(group) || low === null || high === null
      ? null
      : { low: Math.max(0, low), high: Math.min(1, high) };
  return {
    mean: told({ low: group.meanLow, high: group.meanHigh }),
    pooled: told({ low: group.pooledLow, high: group.pooledHigh }),
    member: told({ low: group.memberLow, high: group.memberHigh }),
  };
}

function rangeLines(whole: GroupFigures, say: Speech): string[] {
  const { mean } = toldRanges(whole);
  return mean === null ? [] : [say.averages.range(mean)];
}

const apart = ({ meanShare, pooledShare }: GroupFigures): number => (pooledShare ?? 0) - (meanShare ?? 0);

/** The pooled share in the open, with the reason, where it differs by a point or more. */
function apartLines(measure: Measure, whole: GroupFigures, say: Speech): string[] {
  const { pooledShare } = whole;
  if (pooledShare === null || Math.abs(apart(whole)) < WORTH_TELLING) return [];
  // Pooled counts pounds: where it loses less than the average piece does, the heavier pieces lose less.
  const losesLess = measure === 'trim' ? apart(whole) < 0 : apart(whole) > 0;
  const why = say.averages.whyDifferent({ heavierIs: losesLess ? 'less' : 'more' });
  return [`${say.averages.pooled({ measure, share: pooledShare, range: toldRanges(whole).pooled })} ${why}`];
}

function pooledSmall(measure: Measure, whole: GroupFigures, say: Speech): string[] {
  const { pooledShare } = whole;
  const told = pooledShare === null || Math.abs(apart(whole)) >= WORTH_TELLING;
  return told ? [] : [say.averages.pooled({ measure, share: pooledShare, range: toldRanges(whole).pooled })];
}

function spreadLines(whole: GroupFigures, say: Speech): string[] {
  const { pieces, members, memberMean, median, lowerQuartile: low, upperQuartile: high } = whole;
  return [
    members < 2 || memberMean === null
      ? say.averages.oneMember()
      : say.averages.memberMean({ share: memberMean, range: toldRanges(whole).member }),
    median === null || low === null || high === null || pieces < FEWEST_FOR_HALF
      ? null
      : say.averages.middleHalf({ median, low, high }),
  ].filter((line) => line !== null);
}

/** What these figures leave out: pieces that gained, and those that took up brine, with their own average. */
const leftOut = ({ gained }: GroupFigures, injected: GroupFigures | null, say: Speech): string[] => [
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

function figuresOf(
  measure: Measure,
  whole: GroupFigures,
  injected: GroupFigures | null,
  groups: readonly GroupFigures[],
  nameOf: (key: string) => string,
  say: Speech,
): Figures {
  return {
    measure,
    ...whole,
    injected: injected === null ? null : { ...injected },
    groups: groups.map((group) => ({
      ...group,
      name: group.key === null ? say.trade.notTold() : nameOf(group.key),
    })),
  };
}
