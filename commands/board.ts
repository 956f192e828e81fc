/** `/board`: rankings that a lucky piece can't lead. */
import { type Command, type Context, command, type Press } from '../shared/chat/command.ts';
import type { Reply } from '../shared/chat/reply.ts';
import { SEASONS, spanOf } from '../shared/club/season.ts';
import { besides } from '../shared/findings/sifted.ts';
import { board as boardReply } from '../shared/replies/board.ts';
import { mostWeighed } from '../shared/replies/most-pieces.ts';
import { type AskedRanking, measureOf, RANKINGS } from '../shared/replies/ranking.ts';
import { cut } from './cut-options.ts';
import { choice } from './options.ts';
import { pressedCutOrNone, pressedDay, pressedOne } from './pressed.ts';

type Asked = Pick<AskedRanking, 'cut' | 'ranking' | 'season' | 'today' | 'mine'>;

export const board: Command = command({
  name: 'board',
  audience: () => 'club',
  options: { cut: cut(), ranking: choice(RANKINGS), season: choice(SEASONS) },
  form: () => ['cut', 'ranking', 'season'],
  run: (context, given) =>
    answer(context, {
      cut: given.cut ?? null,
      ranking: given.ranking ?? 'plate',
      season: given.season ?? 'season',
      today: context.today,
      mine: null,
    }),
  actions: {
    mine: { by: 'anyone', audience: 'member', edits: false, run: pressed },
    another: { by: 'anyone', audience: 'member', edits: false, run: pressed },
  },
});

/** The seasons of the day on which the ranking was asked for: it shows the same ones when it is pressed later. */
async function pressed(context: Context, { about, value }: Press): Promise<Reply> {
  const [cutKey = '', ranking = 'plate', season = 'season', today = context.today] = about;
  return answer(context, {
    cut: pressedCutOrNone(cutKey),
    ranking: pressedOne(RANKINGS, value ?? ranking),
    season: pressedOne(SEASONS, season),
    today: pressedDay(today),
    mine: context.member.id,
  });
}

async function answer({ store, find, club, say }: Context, asked: Asked): Promise<Reply> {
  const { from: since, to: until } = spanOf(asked.season, asked.today, club.seasonStart);
  const hidden = await store.hiddenMembers();
  const { cut: cutKey, ranking, mine } = asked;
  const whole = { ...asked, since, until, hidden };
  if (ranking === 'most') {
    const pieces = { cut: cutKey, measure: 'cost', since, until } as const;
    return mostWeighed(whole, await find('weighed', pieces), say);
  }
  const about = { ...besides(measureOf(ranking), club.currency), cut: cutKey, since, until, hidden, mine };
  return boardReply({ ...whole, ranking }, await find('board', about), say);
}
