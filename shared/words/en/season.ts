/** A member's season in words: to them alone, or to the club with their id. */
import type { Season, WholeSpan } from '../../club/season.ts';
import type { Money } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';
import type { CutKey, StyleKey } from '../../trade/keys.ts';
import type { Measure } from '../../yield/measure.ts';
import { capital, small } from './capitals.ts';
import { people, pieces } from './counts.ts';
import { OF_PIECE, unitWord } from './measures.ts';
import { inside } from './names.ts';
import { trade } from './trade.ts';

/** By season, at the start of a sentence: of rankings and choices too. */
export const SEASON_NAMES: Record<Season, string> = {
  season: 'This season',
  last: 'The season before',
  year: 'The last 12 months',
  always: 'All seasons',
};

const withMember = (season: Season, member: string | null) =>
  member === null ? SEASON_NAMES[season] : `<@${member}>, ${small(SEASON_NAMES[season])}`;

export const season = (show: Show) => {
  const unit = unitWord(show);
  return {
    /** The answer; `member` is null where they alone read it. */
    answer: ({
      season,
      member,
      count,
      bought,
      plate,
    }: {
      season: Season;
      member: string | null;
      count: number;
      bought: Nanograms;
      plate: number | null;
    }) =>
      `${withMember(season, member)}: ${pieces(show, count)}, ${show.weight(bought)} bought${plate === null ? '' : `, ${show.share(plate)} on the plate`}.`,
    none: ({ season }: { season: Season }) =>
      `${SEASON_NAMES[season]}: no pieces of yours yet. Weigh one in with \`/weigh\`.`,
    /** `count`: how many pieces have come so far; null where all have. */
    plate: ({ weight, of, count }: { weight: Nanograms; of: Nanograms; count: number | null }) =>
      `${show.weight(weight)} on the plate, of ${show.weight(of)} bought${count === null ? '' : ` (${pieces(show, count)})`}.`,
    trim: ({ weight, share, count }: { weight: Nanograms; share: number; count: number | null }) =>
      `${show.weight(weight)} came off raw, ${show.share(share)}${count === null ? '' : ` (${pieces(show, count)})`}.`,
    paid: ({ paid, plate }: { paid: Money; plate: Money | null }) =>
      `${show.money(paid)} paid${plate === null ? '' : `, ${show.money(plate)} a ${unit} on the plate`}.`,
    saved: ({ weight, worth }: { weight: Nanograms; worth: Money | null }) =>
      `${show.weight(weight)} of trimmings saved${worth === null ? '' : `, worth ${show.money(worth)}`}.`,
    best: ({ seq, cut, measure, share }: { seq: number; cut: CutKey; measure: Measure; share: number }) =>
      measure === 'trim'
        ? `Least came off piece ${show.count(seq)}, ${inside(cut)}: ${show.share(share)}.`
        : `Best: piece ${show.count(seq)}, ${inside(cut)}, ${show.share(share)} ${OF_PIECE[measure]}.`,
    beside: ({
      cut,
      measure,
      own,
      club,
      count,
      members,
    }: {
      cut: CutKey;
      measure: Measure;
      own: { share: number; count: number };
      club: number;
      count: number;
      members: number;
    }) =>
      `${capital(inside(cut))}, the average piece: ${show.share(own.share)} ${OF_PIECE[measure]} (${pieces(show, own.count)}); the club ${show.share(club)} (${pieces(show, count)}, ${people(show, members)}).`,
    usual: ({ cut, style }: { cut: CutKey; style: StyleKey | null }) =>
      `Most often: ${inside(cut)}${style === null ? '' : `, ${trade(show).style(style)}`}.`,
    span: ({ from, to }: WholeSpan) => `From ${show.day(from)} to ${show.day(to)}.`,
    unpriced: ({ count }: { count: number }) =>
      `${pieces(show, count)} ${count === 1 ? 'has' : 'have'} no price.`,
    foreign: ({ count }: { count: number }) =>
      `${pieces(show, count)} in another currency ${count === 1 ? 'is' : 'are'} not in the money.`,
    showClub: () => 'Show the club',
  };
};

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** The words in its picture. */
export const seasonPicture = (show: Show) => {
  const unit = unitWord(show);
  return {
    title: ({ season }: { season: Season }) => SEASON_NAMES[season],
    span: ({ from, to }: WholeSpan) => `${show.day(from)} to ${show.day(to)}`,
    onThePlate: () => OF_PIECE.plate,
    pieces: ({ count }: { count: number }) => (count === 1 ? 'piece' : 'pieces'),
    bought: () => 'bought',
    /** `count`: how many pieces have come so far; null where all have. */
    plate: ({ count }: { count: number | null }) =>
      count === null ? 'on the plate' : `on the plate, of ${pieces(show, count)}`,
    paid: () => 'paid',
    trim: ({ weight, share }: { weight: Nanograms; share: number }) =>
      `${show.weight(weight)} came off raw, ${show.share(share)}`,
    saved: ({ weight, worth }: { weight: Nanograms; worth: Money | null }) =>
      `${show.weight(weight)} of it saved${worth === null ? '' : `, worth ${show.money(worth)}`}`,
    plateCost: ({ cost }: { cost: Money }) => `${show.money(cost)} a ${unit} on the plate`,
    strip: ({ measure }: { measure: Measure }) => `Each dot is a piece: ${OF_PIECE[measure]}`,
    dots: () => 'pieces',
    best: ({ measure, share }: { measure: Measure; share: number }) =>
      `${measure === 'trim' ? 'least' : 'best'} ${show.share(share)}`,
    tick: ({ share }: { share: number }) => `${show.count(share * 100)} %`,
    month: ({ month }: { month: number }) => MONTHS[month - 1] ?? '',
    year: ({ year }: { year: number }) => show.count(year),
    altHead: ({ season, span }: { season: Season; span: string }) => `${SEASON_NAMES[season]}, ${span}.`,
    altPieces: ({ count, bought }: { count: number; bought: Nanograms }) =>
      `${pieces(show, count)}, ${show.weight(bought)} bought.`,
    altPlate: ({ weight, share }: { weight: Nanograms; share: number }) =>
      `${show.weight(weight)} on the plate, ${show.share(share)}.`,
    altPaid: ({ paid }: { paid: Money }) => `${show.money(paid)} paid.`,
    altStrip: ({ count, low, high }: { count: number; low: number; high: number }) =>
      count === 1 ? '' : `${pieces(show, count)} from ${show.share(low)} to ${show.share(high)}.`,
  };
};
