/** The words of the pictures of debates: big against small, and kinds against each other. */
import type { Show } from '../../measure/show.ts';
import type { Measure } from '../../yield/measure.ts';
import { people, pieces } from './counts.ts';
import { SHARE_OF } from './measures.ts';
import { points, roughly } from './on-one.ts';

/** What a debate is about is lost, whatever the measure. */
const LOST: Record<Measure, string> = {
  trim: 'came off',
  cooking: 'lost in the heat',
  carving: 'lost at the board',
  plate: 'not on the plate',
};

/** What a piece is weighed at. */
const WEIGHED: Record<Measure, string> = {
  trim: 'weight bought',
  cooking: 'weight into the heat',
  carving: 'weight off the heat',
  plate: 'weight bought',
};

/** At the two ends of an axis of differences. */
const SIDES: Record<Measure, Record<'less' | 'more', string>> = {
  trim: { less: 'less comes off', more: 'more comes off' },
  cooking: { less: 'less is lost in the heat', more: 'more is lost in the heat' },
  carving: { less: 'less is lost at the board', more: 'more is lost at the board' },
  plate: { less: 'more gets to the plate', more: 'less gets to the plate' },
};

const UNITS = { lb: 'pounds', kg: 'kilos' } as const;

interface Ends {
  low: number;
  high: number;
}

/** `-2.2`, `+0.7`, `0.0`: of a fraction. */
const signed = (show: Show, share: number): string => {
  const told = show.oneDecimal(share * 100);
  return share > 0 && /[1-9]/.test(told) ? `+${told}` : told.replace(/^-(?=[^1-9]*$)/, '');
};

/** A figure of an axis, and how far it is to the next. */
interface Tick {
  value: number;
  step: number;
}

/** With no more digits than the steps need: `12`, `2.5`. */
const tick = (show: Show, { value, step }: Tick): string =>
  step >= 1 ? show.count(value) : step >= 0.1 ? show.oneDecimal(value) : show.twoDecimals(value);

const counts = (show: Show, { count, members }: { count: number; members: number }): string =>
  `${pieces(show, count)}, ${people(show, members)}`;

export const bigger = (show: Show) => ({
  axis: {
    weight: (at: Tick) => tick(show, at),
    weights: ({ measure }: { measure: Measure }) => `${WEIGHED[measure]}, in ${UNITS[show.form.units]}`,
    share: ({ share }: { share: number }) => `${show.count(share * 100)} %`,
    shares: ({ measure }: { measure: Measure }) => `${LOST[measure]}, ${SHARE_OF[measure]}`,
  },
  title: () => 'Do big ones lose less?',
  points: ({ difference }: { difference: number }) => signed(show, difference),
  inPoints: () => 'points',
  bigAgainstSmall: () => 'big against small',
  smallEnd: ({ grams }: { grams: number }) => `small ${roughly(show, grams)}`,
  bigEnd: ({ grams }: { grams: number }) => `big ${roughly(show, grams)}`,
  pieces: () => 'pieces',
  lines: () => 'one person’s own',
  finding: () => 'everyone against themself',
  band: () => 'likely band',
  ends: ({ smallGrams, bigGrams }: { smallGrams: number; bigGrams: number }) =>
    `usual range: ${roughly(show, smallGrams)} to ${roughly(show, bigGrams)}`,
  reading: ({ lines }: { lines: boolean }) =>
    lines ? 'Dots: pieces. Thin lines: each one person’s own' : 'Dots: pieces',
  readingFinding: ({ settled }: { settled: boolean }) =>
    `Bold: everyone against themself, in its likely band; ${settled ? 'settled' : 'so far'}`,
  early: () => 'Too early for a line of everyone together',
  counts: ({ count, members, drawn }: { count: number; members: number; drawn: number }) =>
    drawn < count
      ? `${show.count(drawn)} of ${pieces(show, count)} shown, ${people(show, members)}`
      : counts(show, { count, members }),
  altHead: ({ about, measure }: { about: string; measure: Measure }) =>
    `Do big ones lose less? ${about}: ${LOST[measure]}, ${SHARE_OF[measure]}.`,
  altFinding: ({
    smallGrams,
    bigGrams,
    difference,
    low,
    high,
    settled,
  }: Ends & { smallGrams: number; bigGrams: number; difference: number; settled: boolean }) =>
    `One of ${roughly(show, bigGrams)} against one of ${roughly(show, smallGrams)}: ${signed(show, difference)} points, likely ${signed(show, low)} to ${signed(show, high)}; ${settled ? 'settled' : 'so far'}.`,
  altRange: ({ low, high }: Ends) => `Those shown lie from ${show.share(low)} to ${show.share(high)}.`,
});

export const pairs = (show: Show) => ({
  axis: {
    points: (at: Tick) => `${at.value > 0 ? '+' : ''}${tick(show, at)}`,
    less: ({ measure }: { measure: Measure }) => SIDES[measure].less,
    more: ({ measure }: { measure: Measure }) => SIDES[measure].more,
    /** Where one text has to say both. */
    caption: ({ measure }: { measure: Measure }) => `points; below 0: ${SIDES[measure].less}`,
  },
  title: () => 'Which loses more?',
  points: ({ difference }: { difference: number }) => signed(show, difference),
  likely: ({ low, high }: Ends) => `${signed(show, low)} to ${signed(show, high)}`,
  inPoints: () => 'points',
  early: () => 'too early',
  /** Stands in place of a name that the club gave itself, where that may not be told. */
  unnamed: ({ nth }: { nth: number }) => `pair ${show.count(nth)}`,
  differences: () => 'difference',
  ranges: () => 'likely range',
  same: () => 'too small to argue about',
  none: () => 'no difference',
  zone: ({ margin }: { margin: number }) =>
    `grey: under ${points(show, margin)} either way, too small to argue about`,
  reading: () => 'Dot: an answer. Ring: still open. Bar: where it likely lies',
  beyond: () => 'A bar that ends at the edge goes on beyond it',
  counts: ({ count, members }: { count: number; members: number }) =>
    `Everyone against themself: ${counts(show, { count, members })}`,
  shown: ({ drawn, all }: { drawn: number; all: number }) =>
    `The first ${show.count(drawn)} of ${show.count(all)} pairs`,
  altHead: ({ about, measure }: { about: string; measure: Measure }) =>
    `Which loses more? ${about}: ${LOST[measure]}, in points ${SHARE_OF[measure]}.`,
  altPair: ({ name, difference, low, high }: Ends & { name: string; difference: number }) =>
    `${name}: ${signed(show, difference)}, likely ${signed(show, low)} to ${signed(show, high)}.`,
  altEarly: ({ name }: { name: string }) => `${name}: too early.`,
  altZone: ({ margin }: { margin: number }) => `Under ${points(show, margin)} is too small to argue about.`,
});
