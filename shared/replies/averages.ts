/** The club's averages: of every cut, or of one apart by grade, style, shop and so on. */
import type { Figures, Reply } from '../chat/reply.ts';
import { FEWEST_FOR_HALF, type GroupFigures, isThin } from '../club/group.ts';
import type { FactorName, Filter } from '../club/narrow.ts';
import { sharesBy, sharesOf } from '../club/shares.ts';
import type { Columns } from '../club/store.ts';
import { averagesOf } from '../pictures/averages.ts';
import type { Group, Grouped } from '../pictures/averages-rows.ts';
import type { Picture } from '../pictures/picture.ts';
import type { Bone, CutKey, GradeKey, StyleKey, Wrap } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import type { Measure } from '../yield/measure.ts';

/** The two averages are told side by side from this difference on: a point. */
const WORTH_TELLING = 0.01;

/** What is averaged: of one cut or of all, apart by one factor. */
export interface Averaged {
  measure: Measure;
  /** Null: all cuts, by cut. */
  cut: CutKey | null;
  by: FactorName;
  /** What the rows were narrowed down to. */
  filter: Filter;
  columns: Columns;
  whole: GroupFigures;
  /** Injected and pumped pieces, where they are a group of their own. */
  injected: GroupFigures | null;
  groups: readonly GroupFigures[];
}

export function averaged(of: Averaged, say: Speech): Reply {
  const { measure, cut, by, whole, injected, filter } = of;
  const groups = of.groups.filter(({ meanShare }) => meanShare !== null);
  // A group of those that did not tell is worth a row only beside one that did.
  const told = groups.some(({ key }) => key !== null) ? groups : [];
  const { meanShare: share, pieces: count, members } = whole;
  if (share === null) return nothingYet(measure, cut, whole, injected, say);
  const names = namesOf(by, told, say);
  return {
    answer:
      cut === null
        ? say.averages.allCuts({ measure, cuts: told.length, count, members })
        : say.averages.cut({ cut, measure, share, count, members }),
    lines:
      cut === null
        ? []
        : [...rangeLines(whole, say), ...apartLines(measure, whole, say), ...spreadLines(whole, say)],
    ...(told.length === 0 ? {} : { table: tableOf(told, names, say) }),
    ...pictureOf(of, told, names, say),
    small: [
      ...filterLines(filter, say),
      ...(cut === null ? [] : pooledSmall(measure, whole, say)),
      ...(by === 'member' && told.length > 0
        ? [say.averages.who({ members: told.map(({ key }) => key ?? '') })]
        : []),
      ...(told.length === 0 ? [] : [say.averages.countsNote()]),
      ...leftOut(whole, injected, say),
    ],
    figures: figuresOf(of, groups, names),
  };
}

/** What each group is called, by its key. People are numbers here: the small print says who, where a name is no text. */
function namesOf(
  by: FactorName,
  groups: readonly GroupFigures[],
  say: Speech,
): (key: string | null) => string {
  const places = new Map(groups.map(({ key }, place) => [key, say.show.count(place + 1)]));
  const named: Record<FactorName, (key: string) => string> = {
    cut: (key) => say.trade.cut(key as CutKey),
    grade: (key) => say.trade.grade(key as GradeKey),
    style: (key) => say.trade.style(key as StyleKey),
    bone: (key) => say.trade.bone(key as Bone),
    wrap: (key) => say.trade.wrap(key as Wrap),
    shop: (key) => key,
    month: (key) => key,
    member: (key) => places.get(key) ?? '',
  };
  return (key) => (key === null ? say.trade.notTold() : named[by](key));
}

/** The club's own words: they are drawn here, and never sent out. */
const OWN_WORDS: ReadonlySet<FactorName> = new Set(['shop']);

const isOwn = (by: FactorName, key: string | null): boolean =>
  OWN_WORDS.has(by) || (by === 'cut' && (key?.startsWith('own/') ?? false));

const tableOf = (
  groups: readonly GroupFigures[],
  nameOf: (key: string | null) => string,
  say: Speech,
): string[][] => [
  [say.averages.head.name(), say.averages.head.mean(), say.averages.head.counts()],
  ...groups.map((group) => row(nameOf(group.key), group, say)),
];

/** One piece needs no picture: the answer says its share. */
const FEWEST_DRAWN = 2;

function pictureOf(
  { measure, cut, by, columns, whole }: Averaged,
  groups: readonly GroupFigures[],
  nameOf: (key: string | null) => string,
  say: Speech,
): { picture?: Picture } {
  if (whole.pieces < FEWEST_DRAWN) return {};
  const shares = sharesBy(columns, measure, columns[by]);
  const rowFor = (figures: GroupFigures): Group => ({
    name: nameOf(figures.key),
    own: isOwn(by, figures.key),
    shares: shares.get(figures.key) ?? [],
    figures,
    ...(isThin(figures) ? {} : { low: figures.meanLow, high: figures.meanHigh }),
  });
  const words = say.pictures.averages;
  const alone = cut !== null && groups.length === 0;
  const grouped: Omit<Grouped, 'measure'> = alone
    ? {
        about: say.trade.cut(cut),
        mean: whole.meanShare,
        groups: [
          {
            ...rowFor(whole),
            name: say.trade.cut(cut),
            own: isOwn('cut', cut),
            shares: [...sharesOf(columns, measure).shares],
          },
        ],
      }
    : {
        about: cut === null ? words.byCut() : words.ofCutBy({ cut, by }),
        mean: cut === null ? null : whole.meanShare,
        groups: groups.map(rowFor),
      };
  return { picture: averagesOf({ measure, ...grouped }, words, say.show) };
}

const filterLines = (filter: Filter, say: Speech): string[] => {
  const parts = (Object.entries(filter) as [FactorName, string][]).map(([by, key]) =>
    namesOf(by, [], say)(key),
  );
  return parts.length === 0 ? [] : [say.averages.only({ parts })];
};

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
  { measure, by, whole, injected }: Averaged,
  groups: readonly GroupFigures[],
  nameOf: (key: string | null) => string,
): Figures {
  return {
    measure,
    by,
    ...whole,
    injected: injected === null ? null : { ...injected },
    groups: groups.map((group) => ({ ...group, name: nameOf(group.key) })),
  };
}
