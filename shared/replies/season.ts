/** A member's own season: for them, with a way to show it; or for the club, with their id in the text alone. */
import type { Reply } from '../chat/reply.ts';
import type { GroupFigures } from '../club/group.ts';
import type { Piece } from '../club/piece.ts';
import type { Season, Span, WholeSpan } from '../club/season.ts';
import { favouriteOf, measureOf, type PieceShare, sharesIn, type Totals, totalsOf } from '../club/totals.ts';
import { addDays, type CalendarDay, calendarDay } from '../measure/day.ts';
import { type Currency, moneyNumber, perWeight } from '../measure/money.ts';
import { grams } from '../measure/units.ts';
import { seasonCardOf } from '../pictures/season.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';

/** The member beside the club: the average pieces of one cut, in one measure, of the same time. */
export interface BesideClub {
  cut: CutKey;
  measure: 'plate' | 'trim';
  own: GroupFigures;
  club: GroupFigures;
}

/** A member's season, and what stands beside it. */
export interface OwnSeason {
  season: Season;
  span: Span;
  /** The day that the season was asked for. */
  asked: CalendarDay;
  member: string;
  /** Whether all see it. */
  shown: boolean;
  /** In posting order. */
  pieces: readonly Piece[];
  /** The club's own: the one in which money is added up. */
  currency: Currency;
  best: PieceShare | null;
  /** Null where nobody else has such a piece. */
  beside: BesideClub | null;
}

/** The card of a season; without a piece, what to do. */
export function ownSeason(of: OwnSeason, say: Speech): Reply {
  const { season, pieces, member, shown, asked } = of;
  const totals = totalsOf(pieces, of.currency);
  if (pieces.length === 0) {
    return { answer: say.season.none({ season }), figures: figuresOf(of, totals) };
  }
  const { plate } = totals;
  return {
    answer: say.season.answer({
      season,
      member: shown ? member : null,
      count: totals.pieces,
      bought: totals.bought,
      plate: plate === null ? null : plate.weight / plate.of,
    }),
    lines: [weightsLine(totals, say), moneyLine(totals, say), bestLine(of, say), besideLine(of, say)].filter(
      (line) => line !== '',
    ),
    picture: pictureOf(of, totals, say),
    small: smallPrint(of, totals, say),
    ...(shown
      ? {}
      : {
          actions: [
            {
              kind: 'button' as const,
              label: say.season.showClub(),
              id: {
                command: 'mine season',
                action: 'show',
                by: 'owner' as const,
                owner: member,
                about: [season, asked],
              },
            },
          ],
        }),
    figures: figuresOf(of, totals),
  };
}

/** How many pieces a figure is of, where that is not all of them. */
const fewer = (some: number, all: number): number | null => (some < all ? some : null);

function weightsLine({ plate, trim, pieces }: Totals, { season }: Speech): string {
  return [
    plate === null ? null : season.plate({ ...plate, count: fewer(plate.pieces, pieces) }),
    trim === null
      ? null
      : season.trim({ weight: trim.weight, share: trim.weight / trim.of, count: fewer(trim.pieces, pieces) }),
  ]
    .filter((part) => part !== null)
    .join(' ');
}

function moneyLine({ paid, plateCost, saved }: Totals, { season, show }: Speech): string {
  const plate = plateCost === null ? null : perWeight(plateCost.cost, plateCost.weight, show.form.units);
  return [paid === null ? null : season.paid({ paid, plate }), saved === null ? null : season.saved(saved)]
    .filter((part) => part !== null)
    .join(' ');
}

const bestLine = ({ best }: OwnSeason, { season }: Speech): string =>
  best === null
    ? ''
    : season.best({
        seq: best.piece.seq,
        cut: best.piece.cut,
        measure: best.measure,
        share: best.share,
      });

function besideLine({ beside }: OwnSeason, { season }: Speech): string {
  if (beside === null) return '';
  const { cut, measure, own, club } = beside;
  if (own.meanShare === null || club.meanShare === null) return '';
  return season.beside({
    cut,
    measure,
    own: { share: own.meanShare, count: own.pieces },
    club: club.meanShare,
    count: club.pieces,
    members: club.members,
  });
}

function smallPrint({ span, pieces }: OwnSeason, { priced, foreign }: Totals, { season }: Speech): string[] {
  const usual = favouriteOf(pieces);
  const unpriced = pieces.length - priced - foreign;
  return [
    usual === null ? '' : season.usual(usual),
    season.span(wholeSpan(span, pieces)),
    priced > 0 && unpriced > 0 ? season.unpriced({ count: unpriced }) : '',
    foreign > 0 ? season.foreign({ count: foreign }) : '',
  ].filter((line) => line !== '');
}

function pictureOf({ season, span, pieces, best }: OwnSeason, totals: Totals, say: Speech) {
  const measure = measureOf(pieces);
  const whole = wholeSpan(span, pieces);
  return seasonCardOf(
    {
      season,
      span: whole,
      totals,
      measure,
      time: { from: span.from ?? startOfMonth(whole.from), to: span.to ?? endOfMonth(whole.to) },
      dots: sharesIn(pieces, measure).map(({ piece, share }) => ({
        day: piece.day,
        share,
        best: piece.id === best?.piece.id,
      })),
    },
    say.pictures.season,
    say.show,
  );
}

/** From the first piece to the last, where the span has no ends of its own. */
function wholeSpan({ from, to }: Span, pieces: readonly Piece[]): WholeSpan {
  const days = pieces.map(({ day }) => day).toSorted();
  const [first, last] = [from ?? days[0], to ?? days.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError('there is no piece');
  return { from: first, to: last };
}

const startOfMonth = (day: CalendarDay): CalendarDay => `${day.slice(0, 8)}01` as CalendarDay;

function endOfMonth(day: CalendarDay): CalendarDay {
  const [year, month] = [Number(day.slice(0, 4)), Number(day.slice(5, 7))];
  const next = month === 12 ? calendarDay(year + 1, 1, 1) : calendarDay(year, month + 1, 1);
  return next === null ? day : addDays(next, -1);
}

function figuresOf({ season, span, pieces, currency, best, beside }: OwnSeason, totals: Totals) {
  const { trim, plate, saved, paid, plateCost } = totals;
  const usual = favouriteOf(pieces);
  const perKg = plateCost === null ? null : perWeight(plateCost.cost, plateCost.weight, 'kg');
  return {
    season,
    ...span,
    pieces: totals.pieces,
    boughtGrams: grams(totals.bought),
    trimGrams: trim === null ? null : grams(trim.weight),
    trimShare: trim === null ? null : trim.weight / trim.of,
    trimPieces: trim?.pieces ?? 0,
    servedGrams: plate === null ? null : grams(plate.weight),
    plateYield: plate === null ? null : plate.weight / plate.of,
    platePieces: plate?.pieces ?? 0,
    savedGrams: saved === null ? null : grams(saved.weight),
    credit: saved?.worth == null ? null : moneyNumber(saved.worth),
    currency,
    paid: paid === null ? null : moneyNumber(paid),
    priced: totals.priced,
    foreign: totals.foreign,
    costPerServedKg: perKg === null ? null : moneyNumber(perKg),
    best:
      best === null
        ? null
        : { piece: best.piece.seq, cut: best.piece.cut, measure: best.measure, share: best.share },
    usual: usual === null ? null : { ...usual },
    beside: beside === null ? null : { ...beside, own: { ...beside.own }, club: { ...beside.club } },
  };
}
