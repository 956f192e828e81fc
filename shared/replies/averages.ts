/** The club's averages: of every cut, or of one apart by grade, style, size, shop and so on. */
import type { Action, Figures, Reply } from '../chat/reply.ts';
import { type GroupFigures, isThin } from '../club/group.ts';
import type { AskedAverages, FoundAverages, FoundGroup } from '../findings/averages.ts';
import { averagesOf } from '../pictures/averages.ts';
import type { Group, Grouped } from '../pictures/averages-rows.ts';
import type { Picture } from '../pictures/picture.ts';
import type { Speech } from '../words/index.ts';
import { isOwnWord, namesOf } from './average-names.ts';
import { apartLines, leftOut, memberLine, pooledSmall, rangeLine, spreadLine } from './averages-told.ts';

type Names = (key: string | null) => string;

export function averaged(asked: AskedAverages, found: FoundAverages, say: Speech): Reply {
  const { unfiltered, injected } = found;
  const { figures } = found.whole;
  const few = unfiltered !== null && isThin(figures) && !isThin(unfiltered.figures);
  // Some pieces too few for an average of their own: the whole cut answers in their place, and it is said.
  const shown = few && unfiltered !== null ? { ...found, whole: unfiltered, groups: [] } : found;
  const whole = shown.whole.figures;
  const groups = shown.groups.filter(({ figures: { meanShare } }) => meanShare !== null);
  // A group of those that did not tell is worth a row only beside one that did.
  const told = groups.some(({ figures: { key } }) => key !== null) ? groups : [];
  const names = namesOf(asked.by, told, say);
  const only = filterNames(asked, say);
  if (whole.meanShare === null) return nothingYet(asked, shown, say);
  return {
    answer: answerOf(asked, shown, told.length, say),
    lines: [
      few ? say.averages.tooFew({ parts: only, count: figures.pieces, members: figures.members }) : null,
      ...(asked.cut === null
        ? []
        : [rangeLine(whole, say), ...apartLines(asked.measure, whole, say), memberLine(shown, say)]),
      asked.cut === null || few ? null : spreadLine(whole, say),
    ].filter((line) => line !== null),
    ...(told.length === 0 ? {} : { table: tableOf(told, names, say) }),
    ...pictureOf(asked, shown, told, names, say),
    small: [
      ...(few || only.length === 0 ? [] : [say.averages.only({ parts: only })]),
      ...(asked.cut === null ? [] : pooledSmall(asked.measure, whole, say)),
      ...(asked.by === 'member' && told.length > 0
        ? [say.averages.who({ members: told.map(({ figures: { key } }) => key ?? '') })]
        : []),
      ...(told.length === 0 ? [] : [say.averages.countsNote()]),
      ...(told.some(({ figures: group }) => isThin(group)) ? [say.averages.thinNote()] : []),
      ...leftOut(whole, injected, say),
    ],
    actions: actionsOf(asked, say),
    figures: figuresOf(asked, found, shown, names),
  };
}

function answerOf(
  { cut, measure, mine }: AskedAverages,
  { whole: { figures }, mine: own }: FoundAverages,
  groups: number,
  say: Speech,
): string {
  const { pieces: count, members, meanShare: share } = figures;
  if (mine !== null && own !== null)
    return own.meanShare === null || share === null
      ? say.averages.noneOfYours({ cut, measure })
      : say.averages.yours({ cut, measure, share: own.meanShare, count: own.pieces, club: share });
  if (cut === null || share === null) return say.averages.allCuts({ measure, cuts: groups, count, members });
  return say.averages.cut({ cut, measure, share, count, members });
}

const filterNames = ({ filter }: AskedAverages, say: Speech): string[] => {
  const { since, until: _until, ...values } = filter;
  return [
    ...Object.entries(values).map(([by, key]) => namesOf(by as keyof typeof values, [], say)(key)),
    ...(since === undefined ? [] : [say.averages.since({ day: since })]),
  ];
};

/** The private view of the same, with the asker's own pieces marked: what a filter leaves is no button's business. */
function actionsOf({ cut, measure, by, filter, mine }: AskedAverages, say: Speech): Action[] {
  if (mine !== null || Object.keys(filter).length > 0) return [];
  const id = {
    command: 'average',
    action: 'mine',
    by: 'anyone',
    owner: '0',
    about: [cut ?? '', measure, by],
  } as const;
  return [{ kind: 'button', label: say.averages.whereMine(), id }];
}

const tableOf = (groups: readonly FoundGroup[], nameOf: Names, say: Speech): string[][] => [
  [say.averages.head.name(), say.averages.head.mean(), say.averages.head.counts()],
  ...groups.map(({ figures }) => row(nameOf(figures.key), figures, say)),
];

const row = (name: string, figures: GroupFigures, say: Speech): string[] => [
  name,
  figures.meanShare === null
    ? ''
    : say.averages.meanCell({ share: figures.meanShare, thin: isThin(figures) }),
  say.averages.countsCell({ count: figures.pieces, members: figures.members }),
];

/** One piece needs no picture: the answer says its share. */
const FEWEST_DRAWN = 2;

function pictureOf(
  { measure, cut, by }: AskedAverages,
  { whole }: FoundAverages,
  groups: readonly FoundGroup[],
  nameOf: Names,
  say: Speech,
): { picture?: Picture } {
  if (whole.figures.pieces < FEWEST_DRAWN) return {};
  const words = say.pictures.averages;
  const rowOf = (group: FoundGroup, name: string, own: boolean): Group => {
    const { figures, shares, mine } = group;
    const range = isThin(figures) ? {} : { low: figures.meanLow, high: figures.meanHigh };
    return { name, own, shares, mine, figures, ...range };
  };
  const grouped: Omit<Grouped, 'measure'> =
    cut !== null && groups.length === 0
      ? {
          about: say.trade.cut(cut),
          mean: whole.figures.meanShare,
          groups: [rowOf(whole, say.trade.cut(cut), isOwnWord('cut', cut))],
        }
      : {
          about: cut === null ? words.byCut() : words.ofCutBy({ cut, by }),
          mean: cut === null ? null : whole.figures.meanShare,
          groups: groups.map((group) =>
            rowOf(group, nameOf(group.figures.key), isOwnWord(by, group.figures.key)),
          ),
        };
  return { picture: averagesOf({ measure, ...grouped }, words, say.show) };
}

const nothingYet = (asked: AskedAverages, { whole, injected }: FoundAverages, say: Speech): Reply => ({
  answer: say.averages.none({ measure: asked.measure, cut: asked.cut }),
  small: leftOut(whole.figures, injected, say),
  figures: {
    measure: asked.measure,
    waiting: whole.figures.waiting,
    groups: [],
    injected: injected === null ? null : { ...injected },
  },
});

/** The group that was asked about; where it is too few and its whole cut answered, that one stands under `only`. */
function figuresOf(
  { measure, by }: AskedAverages,
  asked: FoundAverages,
  shown: FoundAverages,
  nameOf: Names,
): Figures {
  const { injected, mine, whole } = shown;
  return {
    measure,
    by,
    ...whole.figures,
    only: asked.whole === whole ? null : { ...asked.whole.figures },
    mine: mine === null ? null : { ...mine },
    injected: injected === null ? null : { ...injected },
    groups: shown.groups
      .filter(({ figures: { meanShare } }) => meanShare !== null)
      .map(({ figures }) => ({ ...figures, name: nameOf(figures.key) })),
  };
}
