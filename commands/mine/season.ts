/** `/mine season`: a member's own season on one card, and a way to show it to the club. */
import { type Command, type Context, command } from '../../shared/chat/command.ts';
import type { Reply } from '../../shared/chat/reply.ts';
import type { Piece } from '../../shared/club/piece.ts';
import { SEASONS, type Season, type Span, spanOf } from '../../shared/club/season.ts';
import { bestFirst, favouriteOf, measureOf, type PieceShare, sharesIn } from '../../shared/club/totals.ts';
import type { CalendarDay } from '../../shared/measure/day.ts';
import { type BesideClub, ownSeason } from '../../shared/replies/season.ts';
import { choice } from '../options.ts';
import { pressedDay, pressedOne } from '../pressed.ts';
import { isWaiting } from '../weigh/card.ts';

export const mineSeason: Command = command({
  name: 'mine season',
  audience: () => 'member',
  options: { season: choice(SEASONS) },
  form: () => ['season'],
  run: (context, { season }) => card(context, season ?? 'season', context.today, false),
  actions: {
    show: {
      by: 'owner',
      audience: 'club',
      edits: false,
      // As it was asked for: a press on another day shows the same season.
      run: async (context, { about: [season = 'season', asked = context.today] }) =>
        card(context, pressedOne(SEASONS, season), pressedDay(asked), true),
    },
  },
});

async function card(context: Context, season: Season, asked: CalendarDay, shown: boolean): Promise<Reply> {
  const { store, club, member, say } = context;
  const span = spanOf(season, asked, club.seasonStart);
  const pieces = await store.ofMember(member.id, span.from, span.to);
  return ownSeason(
    {
      season,
      span,
      asked,
      member: member.id,
      shown,
      pieces,
      currency: club.currency,
      best: await bestOf(context, pieces),
      beside: await besideClub(context, pieces, span),
    },
    say,
  );
}

/** The best piece that is not unusual here; a slip of the scale is no record. */
async function bestOf(context: Context, pieces: readonly Piece[]): Promise<PieceShare | null> {
  for (const found of bestFirst(pieces, measureOf(pieces))) {
    const { piece, measure } = found;
    const beside = await context.find('beside', { cut: piece.cut, measure, injected: false });
    if (!isWaiting(piece, measure, beside)) return found;
  }
  return null;
}

/** Their most frequent cut beside the club's: in one measure, of one time. Null where nobody else has such a piece. */
async function besideClub(
  { find, member, say }: Context,
  pieces: readonly Piece[],
  { from, to }: Span,
): Promise<BesideClub | null> {
  const cut = favouriteOf(pieces)?.cut;
  if (cut === undefined) return null;
  const ofCut = pieces.filter((piece) => piece.cut === cut);
  // By what more of their pieces have come to.
  const measure = sharesIn(ofCut, 'plate').length >= sharesIn(ofCut, 'trim').length ? 'plate' : 'trim';
  const filter = { ...(from === null ? {} : { since: from }), ...(to === null ? {} : { until: to }) };
  const { units } = say.show.form;
  const { whole, mine } = await find('averages', { cut, measure, by: 'cut', filter, units, mine: member.id });
  if (mine === null || mine.pieces === 0 || whole.figures.members < 2) return null;
  return { cut, measure, own: mine, club: whole.figures };
}
