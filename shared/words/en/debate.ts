/** What a debate says: settled, so far, open or too early, in weights and money on one piece. */
import type { DebatedFactor } from '../../findings/factor-debate.ts';
import type { Money } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import { NANOGRAMS } from '../../measure/units.ts';
import type { Reason, Verdict } from '../../statistics/verdict.ts';
import type { CutKey } from '../../trade/keys.ts';
import type { Measure } from '../../yield/measure.ts';
import { choices } from './choices.ts';
import { people, pieces } from './counts.ts';
import { inside, person } from './names.ts';
import { ends, hundredths, little, points, roughly } from './on-one.ts';

/** Where the weight goes that a debate is about. */
const WHERE: Record<Measure, string> = {
  trim: 'to the knife',
  cooking: 'in the heat',
  carving: 'at the board',
  plate: 'on the way to the plate',
};

/** What is still missing, by why it is too early. */
const MISSING: Record<Reason, string> = {
  no_pieces: 'It needs pieces first: weigh some in.',
  one_member: 'One person alone weighed them: it needs 3 people or more.',
  same_weights: 'All of them weigh the same: it needs big ones and small ones.',
  one_level: 'Only one kind was told so far: it needs another to compare with.',
  nobody_both: 'Nobody has cooked both: it needs 3 people or more who each did.',
  saturated: 'There are too few pieces for all that differs between them.',
  no_variation: 'These shares repeat exactly: are they copied?',
  rests_on_one: 'It rests on one person: it needs others who cooked both.',
  few_members: 'It needs 3 people or more who each cooked both.',
  mostly_one_member: 'It is mostly one person’s pieces: it needs more from others.',
  // Told by the answer, where scales could have made the difference by themselves.
  scale: '',
};

/** A difference and its ends, as fractions of what the loss is a share of. */
interface Difference {
  difference: number;
  low: number;
  high: number;
}

interface OnePiece {
  perPieceGrams: number;
  perPieceCost: Money | null;
  usualGrams: number;
}

export const debate = (show: Show) => {
  const unit = show.form.units;
  const about = (grams: number) => roughly(show, grams);
  const moreOrLess = (share: number) => (share < 0 ? 'less' : 'more');
  const onOne = ({ perPieceGrams, perPieceCost, usualGrams }: OnePiece) =>
    `about ${little(show, perPieceGrams)}${perPieceCost === null ? '' : ` or ${show.money(perPieceCost)}`} on one of ${about(usualGrams)}`;
  const per100 = `${unit} per 100 ${unit}`;
  const lead = (settled: boolean) => (settled ? 'Settled here' : 'So far');

  return {
    /** The answer about size. */
    size: ({
      verdict,
      settled,
      cut,
      measure,
    }: {
      verdict: Verdict | 'early';
      settled: boolean;
      cut: CutKey;
      measure: Measure;
    }) =>
      ({
        less: `${lead(settled)}: of ${inside(cut)}, big pieces lose less ${WHERE[measure]}.`,
        more: `${lead(settled)}, the other way round: of ${inside(cut)}, big pieces lose more ${WHERE[measure]}.`,
        same: `${lead(settled)}: of ${inside(cut)}, big or small, pieces lose practically the same ${WHERE[measure]}.`,
        open: `Not settled: do big pieces of ${inside(cut)} lose less ${WHERE[measure]}?`,
        early: `Too early to say whether big pieces of ${inside(cut)} lose less ${WHERE[measure]}.`,
      })[verdict],
    sizeDifference: ({
      smallGrams,
      bigGrams,
      ...found
    }: Difference & OnePiece & { smallGrams: number; bigGrams: number }) =>
      `One of ${about(bigGrams)} gives up ${hundredths(show, found.difference)} ${unit} ${moreOrLess(found.difference)} per 100 ${unit} than one of ${about(smallGrams)} (${ends(show, found)}), ${onOne(found)}.`,
    same: ({
      margin,
      difference,
      zeroOutside,
    }: {
      margin: number;
      difference: number;
      zeroOutside: boolean;
    }) =>
      `It changes what is lost by less than ${points(show, margin)} either way: about ${hundredths(show, difference)} ${per100} ${moreOrLess(difference)} off big ones.${zeroOutside ? ' There is a difference, too small to argue about.' : ''}`,
    sizeOpen: (found: Difference & { byScales: number | null }) =>
      `So far ${hundredths(show, found.difference)} ${per100} ${moreOrLess(found.difference)} off big ones, but anything from ${ends(show, found)} fits.${found.byScales === null ? '' : ` Scales off by ${show.oneDecimal(found.byScales * 100)} % could produce this on their own.`}`,
    morePieces: ({ more, farMore }: { more: number; farMore: boolean }) =>
      farMore
        ? `It would take some ${show.count(more)} more pieces, far more than this club has.`
        : `At most about ${show.count(more)} more ${more === 1 ? 'piece' : 'pieces'} would tell.`,
    bet: ({ chance, side }: { chance: number; side: 'less' | 'more' }) =>
      isEven(chance)
        ? 'If you must bet: toss a coin.'
        : `If you must bet: ${inTen(show, chance)} in 10 that big ones lose ${side}.`,
    anybody: () => 'Nobody has cooked both big and small here: anybody’s guess.',
    split: ({ up, down }: { up: number; down: number }) =>
      up >= down
        ? `Of ${people(show, up + down)} who cooked big and small, ${show.count(up)} lost more off the big ones.`
        : `Of ${people(show, up + down)} who cooked big and small, ${show.count(down)} lost less off the big ones.`,
    stake: ({ margin, ...piece }: OnePiece & { margin: number }) =>
      `What is at stake: ${points(show, margin)} ${margin === 0.01 ? 'is' : 'are'} ${onOne(piece)}.`,
    nextBest: ({ member, side, grams }: { member: string; side: 'small' | 'big'; grams: number }) =>
      `The piece that would teach most: one ${side === 'big' ? 'over' : 'under'} ${about(grams)} from ${person(member)}.`,
    /** Why it looks otherwise when nobody asks whose pieces they are. */
    lumped: ({ slopePerKg, between }: { slopePerKg: number; between: 'more' | 'less' | null }) =>
      `Lumped together it looks like ${show.oneDecimal(Math.abs(slopePerKg) * 100 * (NANOGRAMS[unit] / NANOGRAMS.kg))} points ${moreOrLess(slopePerKg)} per ${unit}, but ${
        between === null
          ? 'that mixes up who cooked what.'
          : `that is because those who buy bigger ones lose ${between} off any piece.`
      }`,

    factor: ({
      verdict,
      settled,
      cut,
      measure,
      factor,
      first,
      second,
    }: {
      verdict: Verdict | 'early';
      settled: boolean;
      cut: CutKey;
      measure: Measure;
      factor: DebatedFactor;
      /** The names of the pair that says most; null where there is none. */
      first: string | null;
      second: string | null;
    }) => {
      const what = `of ${inside(cut)}`;
      if (first === null || second === null)
        return `Too early to say what ${FACTORS[factor]} changes ${what}.`;
      return {
        less: `${lead(settled)}: ${what}, ${second} loses less ${WHERE[measure]} than ${first}.`,
        more: `${lead(settled)}: ${what}, ${second} loses more ${WHERE[measure]} than ${first}.`,
        same: `${lead(settled)}: ${what}, ${first} and ${second} lose practically the same ${WHERE[measure]}.`,
        open: `Not settled: does ${FACTORS[factor]} change what ${inside(cut)} loses ${WHERE[measure]}?`,
        early: `Too early to say what ${FACTORS[factor]} changes ${what}.`,
      }[verdict];
    },
    pair: ({ first, second, ...found }: Difference & OnePiece & { first: string; second: string }) =>
      `${second} gives up ${hundredths(show, found.difference)} ${unit} ${moreOrLess(found.difference)} per 100 ${unit} than ${first} (${ends(show, found)}), ${onOne(found)}.`,
    /** A pair, in a picture. */
    against: ({ first, second }: { first: string; second: string }) => `${second} against ${first}`,
    pairOpen: ({ first, second, ...found }: Difference & { first: string; second: string }) =>
      `${second} against ${first}: so far ${hundredths(show, found.difference)} ${per100} ${moreOrLess(found.difference)}, but anything from ${ends(show, found)} fits.`,
    pairBet: ({
      first,
      second,
      chance,
      side,
    }: {
      first: string;
      second: string;
      chance: number;
      side: 'less' | 'more';
    }) =>
      isEven(chance)
        ? `${second} or ${first}: toss a coin.`
        : `If you must bet: ${inTen(show, chance)} in 10 that ${second} loses ${side} than ${first}.`,
    head: { pair: () => '', difference: () => 'Points', range: () => 'Range' },
    pairCell: ({ first, second }: { first: string; second: string }) => `${second} - ${first}`,
    pointsCell: ({ share }: { share: number | null }) =>
      share === null ? '' : `${share > 0 ? '+' : ''}${show.oneDecimal(share * 100)}`,
    rangeCell: ({ low, high }: { low: number | null; high: number | null }) =>
      low === null || high === null
        ? 'early'
        : `${show.oneDecimal(low * 100)} to ${show.oneDecimal(high * 100)}`,

    missing: ({ reason }: { reason: Reason }) => MISSING[reason],
    nextRuling: ({ nextAt }: { nextAt: number }) => `The first ruling is due at ${pieces(show, nextAt)}.`,
    lastRuling: ({ pieces: at, nextAt, settled }: { pieces: number; nextAt: number; settled: boolean }) =>
      settled
        ? `Settled by the first ${pieces(show, at)}; looked at again at ${show.count(nextAt)}.`
        : `The last ruling, of ${pieces(show, at)}, left it open; the next is due at ${show.count(nextAt)}.`,
    how: ({
      count,
      members,
      held,
      right,
    }: {
      count: number;
      members: number;
      held: string;
      /** How sure the answer is; null where there is none. */
      right: 'settled' | 'so far' | null;
    }) =>
      `Each person compared only with themself, ${held}. ${pieces(show, count)}, ${people(show, members)}.${right === null ? '' : ` Right ${right === 'settled' ? '99 times in 100' : '19 times in 20'} by its own arithmetic.`}`,
    /** What was held constant beside the question. */
    held: ({ question }: { question: 'size' | DebatedFactor }) =>
      ({
        size: 'same grade and fat left on',
        grade: 'same size and fat left on',
        style: 'same size and grade',
        bone: 'same size, grade and fat left on',
        shop: 'same size, grade and fat left on',
        wrap: 'same size, grade and fat left on',
      })[question],
    scaleTip: ({ scaleError }: { scaleError: number }) =>
      `Scales would have to be off by ${show.oneDecimal(scaleError * 100)} % to explain this away.`,
    margin: ({ margin }: { margin: number }) =>
      `Under ${points(show, margin)} counts as the same here (\`/club set margin:\`).`,
    methods: () => 'How it is worked out: METHODS.md, `/help topic:debates`.',
    none: ({ measure }: { measure: Measure }) =>
      `There is nothing to debate yet: no piece here has been weighed far enough to know what it loses ${WHERE[measure]}.`,
    questionMenu: () => 'Another question',
    cutMenu: () => 'Another cut',
    title: ({ question }: { question: 'size' | DebatedFactor }) => choices().question[question](),
  };
};

/** In tenths a chance is no more than this; certainty is never said of a bet. */
const inTen = (show: Show, chance: number) => show.count(Math.min(9, Math.round(chance * 10)));
const isEven = (chance: number) => chance < 0.55;

/** In a sentence: what it changes. */
const FACTORS: Record<DebatedFactor, string> = {
  grade: 'the grade',
  style: 'the fat left on',
  bone: 'the bone',
  shop: 'the shop',
  wrap: 'the wrap',
};
