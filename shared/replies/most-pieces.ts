/** Who weighed in the most pieces. */
import type { Reply } from '../chat/reply.ts';
import { type CountedMember, mostPieces } from '../club/most.ts';
import { rankCountsOf } from '../pictures/rank-counts.ts';
import type { Speech } from '../words/index.ts';
import { type AskedRanking, boardActions, listed } from './ranking.ts';

/** As many as a ranking by share has. */
const MOST_ROWS = 100;

/** @param weighed by member, hidden ones too */
export function mostWeighed(
  asked: AskedRanking,
  weighed: readonly { member: string; pieces: number }[],
  say: Speech,
): Reply {
  const { cut, season, hidden, mine } = asked;
  const all = mostPieces(weighed, hidden);
  const own = all.find(({ member }) => member === mine) ?? null;
  const notShown = weighed.length - all.length;
  const figures = figuresOf(asked, weighed, all, own);
  const small = notShown === 0 ? [] : [say.board.hidden({ count: notShown })];
  const [leader] = all;
  if (leader === undefined) {
    return {
      answer: say.board.none({ cut, measure: null, season }),
      ...(season === 'always' ? {} : { lines: [say.board.longer()] }),
      small,
      figures,
    };
  }
  const rows = listed(all, own);
  const count = weighed.reduce((sum, { pieces }) => sum + pieces, 0);
  return {
    answer: answerOf(asked, all, leader, own, say),
    lines: [
      ...(mine === null ? [] : [leadLine(asked, all, leader, say)]),
      say.board.ranked({ season, count, members: weighed.length }),
    ],
    table: [
      [say.board.head.place(), say.board.head.pieces()],
      ...rows.map(({ place, pieces }) => [say.show.count(place), say.show.count(pieces)]),
    ],
    picture: rankCountsOf(
      { about: say.board.about({ cut, season }), rows, all: all.length },
      say.pictures.rankCounts,
      say.show,
    ),
    small: [
      say.board.who({ members: rows }),
      ...(rows.length < all.length ? [say.board.more({ shown: rows.length, all: all.length })] : []),
      say.board.mostCounts(),
      ...small,
    ],
    actions: boardActions(asked, say),
    figures,
  };
}

function answerOf(
  asked: AskedRanking,
  all: readonly CountedMember[],
  leader: CountedMember,
  own: CountedMember | null,
  say: Speech,
): string {
  const { cut, mine, hidden } = asked;
  if (mine === null) return leadLine(asked, all, leader, say);
  if (hidden.includes(mine)) return say.board.youAreHidden({ cut });
  return own === null
    ? say.board.noneOfYours({ cut })
    : say.board.mostYours({ cut, place: own.place, all: all.length, count: own.pieces });
}

function leadLine(
  { cut }: AskedRanking,
  all: readonly CountedMember[],
  { member, pieces: count }: CountedMember,
  say: Speech,
): string {
  const leaders = all.filter(({ pieces }) => pieces === count).length;
  return leaders === 1
    ? say.board.mostLeads({ cut, member, count })
    : say.board.mostShared({ cut, leaders, count });
}

function figuresOf(
  { ranking, cut, season, since, until }: AskedRanking,
  weighed: readonly { pieces: number }[],
  all: readonly CountedMember[],
  own: CountedMember | null,
) {
  const row = ({ place, member, pieces }: CountedMember) => ({
    place,
    member,
    pieces,
    share: null,
    low: null,
    high: null,
    separable: null,
    provisional: false,
  });
  return {
    ranking,
    cut,
    measure: null,
    season,
    since,
    until,
    pieces: weighed.reduce((sum, { pieces }) => sum + pieces, 0),
    members: weighed.length,
    waiting: 0,
    hidden: weighed.length - all.length,
    reason: all.length === 0 ? 'pieces' : null,
    rows: all.slice(0, MOST_ROWS).map(row),
    mine: own === null ? null : row(own),
    between: null,
    within: null,
  };
}
