/** One member beside the rest, or two beside each other once both want it: in points, ounces and money. */
import type { Money } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import type { Verdict } from '../../statistics/verdict.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import type { Measure } from '../../yield/measure.ts';
import { capital } from './capitals.ts';
import { pieces } from './counts.ts';
import { MEASURE_TITLES } from './measures.ts';
import { ends, hundredths, little, roughly } from './on-one.ts';

/** A difference with its ends, in shares: above 0 the first one has more. */
interface Difference {
  difference: number;
  low: number;
  high: number;
  verdict: Verdict | 'early';
}

const thing = (measure: Measure) => MEASURE_TITLES[measure].toLowerCase();

export const compare = (show: Show) => {
  /** `than` and `as` follow the figures: ` than the rest`; empty where both are named before them. */
  const told = (found: Difference, than: string, as: string) =>
    ({
      more: `about ${hundredths(show, found.difference)} points more${than} (${ends(show, found)})`,
      less: `about ${hundredths(show, found.difference)} points less${than} (${ends(show, found)})`,
      same: `about the same${as}`,
      open: `can’t tell yet: anything from ${ends(show, found)} fits`,
      early: 'can’t tell yet',
    })[found.verdict];
  const besideRest = (found: Difference) => told(found, ' than the rest', ' as everyone');

  return {
    /** The answer to the member alone, by the measure it begins with. */
    answer: ({ cut, measure, ...found }: Difference & { cut: CutKey; measure: Measure }) =>
      `${cutOf(cut).name}, ${thing(measure)}: ${besideRest(found)}.`,
    line: ({ measure, ...found }: Difference & { measure: Measure }) =>
      `${capital(thing(measure))}: ${besideRest(found)}.`,
    onOne: ({ grams, cost, usualGrams }: { grams: number; cost: Money | null; usualGrams: number }) =>
      `That is about ${little(show, grams)}${cost === null ? '' : ` or ${show.money(cost)}`} on one of ${roughly(show, usualGrams)}.`,
    /** Pieces until a member is compared. */
    piecesToGo: ({ count, fewest }: { count: number; fewest: number }) =>
      `You have ${pieces(show, count)}; from ${show.count(fewest)} on I compare.`,
    head: { measure: () => '', you: () => 'You', club: () => 'Club' },
    row: { trim: () => 'Came off', plate: () => 'On the plate' },
    cell: ({ share, count }: { share: number | null; count: number }) =>
      `${share === null ? '–' : show.share(share)} (${show.count(count)})`,
    clubCell: ({ share }: { share: number | null }) => (share === null ? '–' : show.share(share)),
    cellsNote: () =>
      'Shares of a typical piece, drawn towards the club: few pieces count little. In brackets: pieces.',
    rules: ({ margin }: { margin: number }) =>
      `Ranges hold 19 times in 20; within ${show.oneDecimal(margin * 100)} points either way is the same.`,

    challenge: ({ asker, challenged, cut }: { asker: string; challenged: string; cut: CutKey }) =>
      `<@${asker}> would like to compare with <@${challenged}>: ${cutOf(cut).name}.`,
    challengeHow: ({ challenged }: { challenged: string }) =>
      `Nothing is shown unless <@${challenged}> says yes. Then all here see the shares of both, and from how many pieces.`,
    yes: () => 'Yes, show both',
    no: () => 'No thanks',
    declined: ({ asker, challenged, cut }: { asker: string; challenged: string; cut: CutKey }) =>
      `<@${challenged}> would rather not compare with <@${asker}>, and that is fine: ${cutOf(cut).name}.`,
    both: ({
      cut,
      measure,
      asker,
      challenged,
      ...found
    }: Difference & { cut: CutKey; measure: Measure; asker: string; challenged: string }) =>
      `${cutOf(cut).name}, ${thing(measure)}, <@${asker}> beside <@${challenged}>: ${told(found, '', '')}.`,
    bothLine: ({ measure, ...found }: Difference & { measure: Measure }) =>
      `${capital(thing(measure))}: ${told(found, '', '')}.`,
    bothToGo: ({ fewest }: { fewest: number }) => `It takes ${pieces(show, fewest)} of each.`,
    bothHead: { measure: () => '', first: () => show.count(1), second: () => show.count(2) },
    bothWho: ({ asker, challenged }: { asker: string; challenged: string }) =>
      `${show.count(1)} <@${asker}>, ${show.count(2)} <@${challenged}>`,
  };
};
