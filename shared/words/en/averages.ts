/** The club's figures in words: each of the averages by its own name, never mixed up. */
import type { CalendarDay } from '../../measure/day.ts';
import type { Show } from '../../measure/show.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import type { Measure } from '../../yield/measure.ts';
import { quote } from '../quote.ts';
import { people, pieces } from './counts.ts';
import { example } from './examples.ts';
import { AVERAGE_PIECE, MEASURE_TITLES } from './measures.ts';
import { inside } from './names.ts';

/** What of every 100 does: the base that each measure is a share of. */
const OF_EVERY_100: Record<Measure, (unit: string) => readonly [string, string]> = {
  trim: (unit) => [`Of every 100 ${unit} bought`, 'came off'],
  cooking: (unit) => [`Of every 100 ${unit} into the heat`, 'came out'],
  carving: (unit) => [`Of every 100 ${unit} off the heat`, 'got to the plate'],
  plate: (unit) => [`Of every 100 ${unit} bought`, 'got to the plate'],
};

/** Ends of a range, as shares. */
interface Range {
  low: number;
  high: number;
}

/** ` (16.9 % to 20.3 %)`, or nothing where there is no range to tell. */
const withRange = (range: Range | null | undefined, print: (end: number) => string) =>
  range == null ? '' : ` (${print(range.low)} to ${print(range.high)})`;

export const averages = (show: Show) => ({
  cut: ({
    cut,
    measure,
    share,
    count,
    members,
  }: {
    cut: CutKey;
    measure: Measure;
    share: number;
    count: number;
    members: number;
  }) =>
    `${cutOf(cut).name}: ${show.share(share)} ${AVERAGE_PIECE[measure]} (${pieces(show, count)}, ${people(show, members)}).`,
  allCuts: ({
    measure,
    cuts,
    count,
    members,
  }: {
    measure: Measure;
    cuts: number;
    count: number;
    members: number;
  }) =>
    `${MEASURE_TITLES[measure]}, by cut: ${show.count(cuts)} ${cuts === 1 ? 'cut' : 'cuts'}, ${pieces(show, count)}, ${people(show, members)}.`,
  range: ({ low, high }: Range) =>
    `The true average lies from ${show.share(low)} to ${show.share(high)}, 19 times in 20.`,
  pooled: ({ measure, share, range }: { measure: Measure; share: number; range?: Range | null }) => {
    const [base, verb] = OF_EVERY_100[measure](show.form.units);
    const hundredth = (of: number) => show.oneDecimal(of * 100);
    return `${base}, ${hundredth(share)} ${show.form.units} ${verb}${withRange(range, hundredth)}.`;
  },
  whyDifferent: ({ heavierIs }: { heavierIs: 'less' | 'more' }) =>
    `The two differ because here heavier pieces ${heavierIs === 'less' ? 'lose less' : 'lose more'}.`,
  memberMean: ({ share, range }: { share: number; range: Range | null }) =>
    `The average member: ${show.share(share)}${withRange(range, show.share)}.`,
  middleHalf: ({ median, low, high }: { median: number; low: number; high: number }) =>
    `The middle piece: ${show.share(median)}; half of them lie from ${show.share(low)} to ${show.share(high)}.`,
  oneMember: () => "One member's pieces only, so far.",
  mostBy: ({ member, part }: { member: string; part: number }) =>
    `It differs because <@${member}> weighed ${show.count(part * 100)} % of the pieces.`,
  waiting: ({ count }: { count: number }) =>
    `${pieces(show, count)} ${count === 1 ? 'waits' : 'wait'} for a second look and ${count === 1 ? 'is' : 'are'} not counted.`,
  untouched: ({ count }: { count: number }) =>
    `${pieces(show, count)} that lost nothing ${count === 1 ? 'is' : 'are'} not counted: there is no share to compare.`,
  tooFew: ({ parts, count, members }: { parts: readonly string[]; count: number; members: number }) =>
    `${parts.map(quote).join(', ')}: ${pieces(show, count)} of ${people(show, members)}, too few for an average of their own. This is the whole cut.`,
  since: ({ day }: { day: CalendarDay }) => `since ${show.day(day)}`,
  yours: ({
    cut,
    measure,
    share,
    count,
    club,
  }: {
    cut: CutKey | null;
    measure: Measure;
    share: number;
    count: number;
    club: number;
  }) =>
    `Yours${cut === null ? '' : `, ${inside(cut)}`}: ${show.share(share)} ${AVERAGE_PIECE[measure]} (${pieces(show, count)}); the club: ${show.share(club)}.`,
  noneOfYours: ({ cut, measure }: { cut: CutKey | null; measure: Measure }) =>
    `You have no ${cut === null ? 'piece' : inside(cut)} here yet that counts for ${MEASURE_TITLES[measure].toLowerCase()}.`,
  whereMine: () => 'Where are mine?',
  meanCell: ({ share, thin }: { share: number; thin: boolean }) => `${thin ? '~' : ''}${show.share(share)}`,
  thinNote: () => '~: fewer than 5 pieces or 3 people, so mostly luck; the whole cut is the better guess.',
  gained: ({ count }: { count: number }) =>
    `${pieces(show, count)} gained weight and ${count === 1 ? 'is' : 'are'} left out here.`,
  injected: ({ share, count, members }: { share: number; count: number; members: number }) =>
    `Injected or pumped: ${show.share(share)} (${pieces(show, count)}, ${people(show, members)}), a group of its own.`,
  only: ({ parts }: { parts: readonly string[] }) => `Only: ${parts.map(quote).join(', ')}.`,
  who: ({ members }: { members: readonly string[] }) =>
    members.map((member, place) => `${show.count(place + 1)} <@${member}>`).join(', '),
  none: ({ measure, cut }: { measure: Measure; cut: CutKey | null }) =>
    `Nothing to average yet${cut === null ? '' : ` for ${inside(cut)}`}: ${needed(show, measure)}`,
  head: {
    name: () => '',
    mean: () => 'Average',
    counts: () => 'Pieces',
  },
  countsNote: () => 'Pieces: 12 by 4 is 12 pieces of 4 people.',
  countsCell: ({ count, members }: { count: number; members: number }) =>
    `${show.count(count)} by ${show.count(members)}`,
});

const needed = (show: Show, measure: Measure): string => {
  const trimmed = `bought:${example(show, 'bought')} trim:${example(show, 'trim')}`;
  return {
    trim: `weigh a piece in with what came off, like \`/weigh cut:packer ${trimmed}\`.`,
    cooking: 'it needs what was left to cook and what came off the heat.',
    carving: 'it needs what came off the heat and what was thrown away or on the plate.',
    plate: 'it needs what was bought and what was thrown away or on the plate after cooking.',
  }[measure];
};
