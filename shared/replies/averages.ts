/** The club's averages: of every cut, or of one apart by grade, style, size, shop and so on. */
import type { Action, Figures, Reply } from '../chat/reply.ts';
import { type GroupFigures, isThin } from '../club/group.ts';
import type { AskedAverages, FoundAverages, FoundGroup } from '../findings/averages.ts';
import type { Speech } from '../words/index.ts';
import type { Averaged } from '../yield/measure.ts';
import { namesOf } from './average-names.ts';
import { averagesPicture } from './averages-picture.ts';
import {
  apartLines,
  leftOut,
  memberLine,
  pooledSmall,
  rangeLine,
  spreadLine,
  uncostedFigures,
} from './averages-told.ts';
import { bookSmall } from './book-line.ts';
import { averagesPer } from './per-unit.ts';

type Names = (key: string | null) => string;

/** Some pieces too few for an average of their own: the whole cut answers in their place, and it is said. */
function answering(found: FoundAverages): FoundAverages {
  const { whole, unfiltered } = found;
  const few = unfiltered !== null && isThin(whole.figures) && !isThin(unfiltered.figures);
  return few ? { ...found, whole: unfiltered, groups: [], most: null } : found;
}

/** More rows than any message holds: what comes after them would be made and never read. */
const MOST_ROWS = 200;

/** The reply about averages; where nothing counts yet, what it takes. */
export function averaged(asked: AskedAverages, found: FoundAverages, say: Speech): Reply {
  const { measure } = asked;
  const read = measure === 'cost' ? averagesPer(say.show.form.units, found) : found;
  const shown = answering(read);
  const few = shown !== read;
  const { figures } = found.whole;
  const whole = shown.whole.figures;
  const groups = shown.groups.filter(({ figures: { meanShare } }) => meanShare !== null);
  // A group of those that did not tell is worth a row only beside one that did.
  const told = groups.some(({ figures: { key } }) => key !== null) ? groups : [];
  const rows = told.slice(0, MOST_ROWS);
  const names = namesOf(asked.by, rows, say);
  const only = filterNames(asked, say);
  if (whole.meanShare === null) return nothingYet(asked, answering(found), say);
  return {
    answer: answerOf(asked, shown, told.length, say),
    lines: [
      few ? say.averages.tooFew({ parts: only, count: figures.pieces, members: figures.members }) : null,
      ...(asked.cut === null
        ? []
        : [
            rangeLine(measure, whole, say),
            ...apartLines(measure, whole, say),
            memberLine(measure, shown, say),
          ]),
      asked.cut === null || few ? null : spreadLine(measure, whole, say),
    ].filter((line) => line !== null),
    ...(told.length === 0 ? {} : { table: tableOf(measure, rows, names, say) }),
    ...averagesPicture(asked, shown, told, names, say),
    small: [
      ...(few || only.length === 0 ? [] : [say.averages.only({ parts: only })]),
      ...(asked.cut === null ? [] : pooledSmall(measure, whole, say)),
      ...(asked.by === 'member' && told.length > 0
        ? [say.averages.who({ members: rows.map(({ figures: { key } }) => key ?? '') })]
        : []),
      ...(told.length === 0 ? [] : [say.averages.countsNote()]),
      ...(told.some(({ figures: group }) => isThin(group)) ? [say.averages.thinNote()] : []),
      ...leftOut(measure, shown, say),
      ...bookSmall(asked, say),
    ],
    actions: actionsOf(asked, say),
    figures: figuresOf(asked, found, names),
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

const tableOf = (
  measure: Averaged,
  groups: readonly FoundGroup[],
  nameOf: Names,
  say: Speech,
): string[][] => [
  [say.averages.head.name(), say.averages.head.mean(), say.averages.head.counts()],
  ...groups.map(({ figures }) => row(measure, nameOf(figures.key), figures, say)),
];

const row = (measure: Averaged, name: string, figures: GroupFigures, say: Speech): string[] => [
  name,
  figures.meanShare === null
    ? ''
    : say.averages.meanCell({ measure, share: figures.meanShare, thin: isThin(figures) }),
  say.averages.countsCell({ count: figures.pieces, members: figures.members }),
];

const nothingYet = (asked: AskedAverages, shown: FoundAverages, say: Speech): Reply => ({
  answer: say.averages.none({ measure: asked.measure, cut: asked.cut }),
  small: [...leftOut(asked.measure, shown, say), ...bookSmall(asked, say)],
  figures: {
    measure: asked.measure,
    ...beside(asked, shown),
    waiting: shown.whole.figures.waiting,
    groups: [],
    injected: shown.injected === null ? null : { ...shown.injected },
  },
});

/** What stands beside costs: their currency, and the pieces that have none to compare. */
const beside = ({ currency }: AskedAverages, { whole: { uncosted } }: FoundAverages): Figures =>
  uncosted === null ? {} : { currency: currency ?? null, ...uncostedFigures(uncosted) };

/**
 * The group that was asked about; where it is too few and its whole cut answered, that one stands under `only`. Of a cost
 * the names are the same, and what they hold is money a kilo on the plate, whatever the reader's units are.
 */
function figuresOf(asked: AskedAverages, found: FoundAverages, nameOf: Names): Figures {
  const shown = answering(found);
  const { injected, mine, whole } = shown;
  return {
    measure: asked.measure,
    by: asked.by,
    ...beside(asked, shown),
    ...whole.figures,
    only: shown === found ? null : { ...found.whole.figures },
    mine: mine === null ? null : { ...mine },
    injected: injected === null ? null : { ...injected },
    groups: shown.groups
      .filter(({ figures: { meanShare } }) => meanShare !== null)
      .slice(0, MOST_ROWS)
      .map(({ figures }) => ({ ...figures, name: nameOf(figures.key) })),
  };
}
