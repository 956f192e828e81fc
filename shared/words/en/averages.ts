/** The club's figures in words: each of the averages by its own name, never mixed up. */
import type { CalendarDay } from '../../measure/day.ts';
import type { Show } from '../../measure/show.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import type { Averaged, Measure } from '../../yield/measure.ts';
import { quote } from '../quote.ts';
import { people, pieces } from './counts.ts';
import { averagePiece, figureText, needed, titleOf, unitWord } from './measures.ts';
import { inside, person } from './names.ts';

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
    measure: Averaged;
    share: number;
    count: number;
    members: number;
  }) =>
    `${cutOf(cut).name}: ${figureText(show, measure)(share)} ${averagePiece(show, measure)} (${pieces(show, count)}, ${people(show, members)}).`,
  allCuts: ({
    measure,
    cuts,
    count,
    members,
  }: {
    measure: Averaged;
    cuts: number;
    count: number;
    members: number;
  }) =>
    `${titleOf(show, measure)}, by cut: ${show.count(cuts)} ${cuts === 1 ? 'cut' : 'cuts'}, ${pieces(show, count)}, ${people(show, members)}.`,
  range: ({ measure, low, high }: Range & { measure: Averaged }) =>
    `The true average lies from ${figureText(show, measure)(low)} to ${figureText(show, measure)(high)}, 19 times in 20.`,
  pooled: ({ measure, share, range }: { measure: Averaged; share: number; range?: Range | null }) => {
    if (measure === 'cost') {
      const print = figureText(show, measure);
      return `All the meat on the plate together: ${print(share)} a ${unitWord(show)}${withRange(range, print)}.`;
    }
    const [base, verb] = OF_EVERY_100[measure](show.form.units);
    const hundredth = (of: number) => show.oneDecimal(of * 100);
    return `${base}, ${hundredth(share)} ${show.form.units} ${verb}${withRange(range, hundredth)}.`;
  },
  whyDifferent: ({ measure, heavierIs }: { measure: Averaged; heavierIs: 'less' | 'more' }) =>
    measure === 'cost'
      ? `The two differ because here pieces with more on the plate cost ${heavierIs} a ${unitWord(show)}.`
      : `The two differ because here heavier pieces ${heavierIs === 'less' ? 'lose less' : 'lose more'}.`,
  memberMean: ({ measure, share, range }: { measure: Averaged; share: number; range: Range | null }) =>
    `The average member: ${figureText(show, measure)(share)}${withRange(range, figureText(show, measure))}.`,
  middleHalf: ({
    measure,
    median,
    low,
    high,
  }: {
    measure: Averaged;
    median: number;
    low: number;
    high: number;
  }) => {
    const print = figureText(show, measure);
    return `The middle piece: ${print(median)}; half of them lie from ${print(low)} to ${print(high)}.`;
  },
  oneMember: () => "One member's pieces only, so far.",
  mostBy: ({ member, part }: { member: string; part: number }) =>
    `It differs because ${person(member)} weighed ${show.count(part * 100)} % of the pieces.`,
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
    measure: Averaged;
    share: number;
    count: number;
    club: number;
  }) =>
    `Yours${cut === null ? '' : `, ${inside(cut)}`}: ${figureText(show, measure)(share)} ${averagePiece(show, measure)} (${pieces(show, count)}); the club: ${figureText(show, measure)(club)}.`,
  noneOfYours: ({ cut, measure }: { cut: CutKey | null; measure: Averaged }) =>
    `You have no ${cut === null ? 'piece' : inside(cut)} here yet that counts for ${titleOf(show, measure).toLowerCase()}.`,
  whereMine: () => 'Where are mine?',
  meanCell: ({ measure, share, thin }: { measure: Averaged; share: number; thin: boolean }) =>
    `${thin ? '~' : ''}${figureText(show, measure)(share)}`,
  thinNote: () => '~: fewer than 5 pieces or 3 people, so mostly luck; the whole cut is the better guess.',
  gained: ({ count }: { count: number }) =>
    `${pieces(show, count)} gained weight and ${count === 1 ? 'is' : 'are'} left out here.`,
  injected: ({
    measure,
    share,
    count,
    members,
  }: {
    measure: Averaged;
    share: number;
    count: number;
    members: number;
  }) =>
    `Injected or pumped: ${figureText(show, measure)(share)} (${pieces(show, count)}, ${people(show, members)}), a group of its own.`,
  /** Pieces paid for in other currencies. */
  foreign: ({ of }: { of: readonly { currency: string; count: number }[] }) => {
    const counts = of.map(({ currency, count }, place) =>
      place === 0 ? `${pieces(show, count)} in ${currency}` : `${show.count(count)} in ${currency}`,
    );
    const one = of.length === 1 && of[0]?.count === 1;
    return `${counts.join(', ')} ${one ? 'is' : 'are'} kept and left out here.`;
  },
  unpriced: ({ count }: { count: number }) =>
    `${pieces(show, count)} without a price ${count === 1 ? 'is' : 'are'} left out here.`,
  unserved: ({ count }: { count: number }) =>
    `${pieces(show, count)} ${count === 1 ? 'is' : 'are'} not on the plate yet.`,
  only: ({ parts }: { parts: readonly string[] }) => `Only: ${parts.map(quote).join(', ')}.`,
  who: ({ members }: { members: readonly string[] }) =>
    members.map((member, place) => `${show.count(place + 1)} ${person(member)}`).join(', '),
  none: ({ measure, cut }: { measure: Averaged; cut: CutKey | null }) =>
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
