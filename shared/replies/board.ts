/** A ranking by share or by cost: who leads, who is too close to call, who is new here; or what it takes to have one. */
import type { Reply } from '../chat/reply.ts';
import type { BoardMember, FoundBoard } from '../findings/board.ts';
import type { CalendarDay } from '../measure/day.ts';
import { ranksOf } from '../pictures/ranks.ts';
import { FEWEST_PIECES } from '../statistics/member-contrast.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import type { Averaged } from '../yield/measure.ts';
import { uncostedFigures, withoutCost } from './averages-told.ts';
import { boardPer } from './per-unit.ts';
import { type AskedRanking, boardActions, listed, measureOf } from './ranking.ts';

/** Rankings by share or cost are told by their measure. */
export interface AskedShares extends AskedRanking {
  ranking: 'plate' | 'trim' | 'value';
}

/** The reply about a ranking by share or cost. `perKilo`: costs a kilo, as findings have them. */
export function board(asked: AskedShares, perKilo: FoundBoard, say: Speech): Reply {
  const found = asked.ranking === 'value' ? boardPer(say.show.form.units, perKilo) : perKilo;
  // Figures are the same whatever the reader's units are.
  return { ...replyOf(asked, found, say), figures: figuresOf(asked, perKilo) };
}

type Told = Omit<Reply, 'figures'>;

function replyOf(asked: AskedShares, found: FoundBoard, say: Speech): Told {
  const { cut } = found;
  if (cut === null || found.pieces === 0) return nothingYet(asked, found, say);
  const of = { ...asked, cut };
  if (found.missing !== null) return tooEarly(of, found, say);
  const [leader] = found.rows;
  if (leader === undefined) {
    return {
      answer: say.board.nobodyShown(of),
      small: leftOut(found, say),
      actions: boardActions(of, say),
    };
  }
  const rows = listed(found.rows, found.mine);
  return {
    answer: answerOf(of, found, leader, say),
    lines: linesOf(of, found, leader, say),
    table: tableOf(measureOf(asked.ranking), rows, leader, say),
    picture: ranksOf(
      { measure: measureOf(asked.ranking), about: say.board.about(of), rows, all: found.all },
      say.pictures.ranks,
    ),
    small: [
      say.board.who({ members: rows }),
      ...(rows.length < found.all ? [say.board.more({ shown: rows.length, all: found.all })] : []),
      say.board.drawnIn(),
      ...(rows.some(({ provisional }) => provisional) ? [say.board.newHere({ fewest: FEWEST_PIECES })] : []),
      ...leftOut(found, say),
    ],
    actions: boardActions(of, say),
  };
}

type OfCut = AskedShares & { cut: CutKey };

function answerOf(
  { cut, ranking, mine, hidden }: OfCut,
  found: FoundBoard,
  leader: BoardMember,
  say: Speech,
): string {
  const measure = measureOf(ranking);
  if (mine !== null && hidden.includes(mine)) return say.board.youAreHidden({ cut });
  if (mine !== null) {
    const own = found.mine;
    return own === null
      ? say.board.noneOfYours({ cut })
      : say.board.yours({ ...own, cut, measure, all: found.all, count: own.pieces });
  }
  return leadLine(cut, measure, leader, say);
}

const leadLine = (cut: CutKey, measure: Averaged, leader: BoardMember, say: Speech): string =>
  leader.provisional
    ? say.board.nobodyLeads({ cut, fewest: FEWEST_PIECES })
    : say.board.leads({ cut, measure, member: leader.member, share: leader.share });

function linesOf(
  { cut, ranking, season, mine }: OfCut,
  found: FoundBoard,
  leader: BoardMember,
  say: Speech,
): string[] {
  const measure = measureOf(ranking);
  const placed = found.rows.filter(({ provisional }) => !provisional);
  const others = placed.length - 1;
  const close = placed.filter(({ separable }) => !separable).length - 1;
  return [
    ...(mine === null ? [] : [leadLine(cut, measure, leader, say)]),
    say.board.ranked({ season, count: found.pieces, members: found.members }),
    ...(leader.provisional ? [] : [say.board.likely({ ...leader, measure })]),
    ...(others < 1 ? [] : [say.board.tooClose({ close, others })]),
  ];
}

function tableOf(
  measure: Averaged,
  rows: readonly BoardMember[],
  leader: BoardMember,
  say: Speech,
): string[][] {
  const { head, mark } = say.board;
  const markOf = (row: BoardMember) =>
    row.provisional
      ? mark.new()
      : row.member === leader.member
        ? mark.leads()
        : row.separable
          ? mark.behind()
          : mark.close();
  return [
    [head.place(), head.share({ measure }), head.pieces(), head.mark()],
    ...rows.map((row) => [
      say.show.count(row.place),
      say.board.shareCell({ measure, share: row.share }),
      say.show.count(row.pieces),
      markOf(row),
    ]),
  ];
}

/** Too few pieces, or too much alike: what was posted, and what it takes. */
function tooEarly(of: OfCut, found: FoundBoard, say: Speech): Told {
  const { posted, missing, pieces: count, members } = found;
  return {
    answer: say.board.notYet({ cut: of.cut, measure: measureOf(of.ranking) }),
    lines: [
      ...(posted === null
        ? []
        : [say.board.posted({ ...posted, measure: measureOf(of.ranking), count, members })]),
      ...(missing === null || missing === 'pieces' ? [] : [say.board.needs({ missing })]),
    ],
    small: leftOut({ ...found, hidden: 0 }, say),
    actions: boardActions(of, say).filter(({ kind }) => kind === 'menu'),
  };
}

const nothingYet = (asked: AskedShares, found: FoundBoard, say: Speech): Told => ({
  answer: say.board.none({ cut: found.cut, measure: measureOf(asked.ranking), season: asked.season }),
  ...(asked.season === 'always' ? {} : { lines: [say.board.longer()] }),
  small: leftOut(found, say),
  // Another ranking needs less of a piece.
  actions: boardActions({ ...asked, cut: found.cut }, say).filter(({ kind }) => kind === 'menu'),
});

const leftOut = (
  { waiting, approximate, injected, hidden, uncosted, free }: FoundBoard,
  say: Speech,
): string[] => [
  ...(waiting === 0 ? [] : [say.averages.waiting({ count: waiting })]),
  ...(approximate === 0 ? [] : [say.board.estimates({ count: approximate })]),
  ...(free === 0 ? [] : [say.board.free({ count: free })]),
  ...(injected === 0 ? [] : [say.board.injected({ count: injected })]),
  ...(uncosted === null ? [] : withoutCost(uncosted, say)),
  ...(hidden === 0 ? [] : [say.board.hidden({ count: hidden })]),
];

/** Of the best value, shares are money a kilo on the plate, in the club's currency. */
const figuresOf = (
  { ranking, season, since, until }: AskedShares & { since: CalendarDay | null; until: CalendarDay | null },
  { cut, pieces, members, waiting, hidden, missing, rows, mine, between, within, ...found }: FoundBoard,
) => ({
  ranking,
  cut,
  measure: measureOf(ranking),
  season,
  since,
  until,
  pieces,
  members,
  waiting,
  hidden,
  reason: missing,
  rows: rows.map((row) => ({ ...row })),
  mine: mine === null ? null : { ...mine },
  between,
  within,
  ...(found.uncosted === null ? {} : uncostedFigures(found.uncosted)),
});
