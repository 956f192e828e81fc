/** What a member reads after putting something on the scale. */
import type { CalendarDay } from '../../measure/day.ts';
import type { Money, Price } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';
import type { Species } from '../../trade/cut.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import type { Measure } from '../../yield/measure.ts';
import type { WeightName } from '../../yield/piece.ts';
import { quote } from '../quote.ts';
import { people, pieces } from './counts.ts';
import { AVERAGE_PIECE, unitWord } from './measures.ts';
import { inside } from './names.ts';
import { PARTS } from './parts.ts';

export const weighing = (show: Show) => {
  const unit = unitWord(show);
  return {
    /** The answer, by the last stage that was weighed. */
    bought: ({ bought, cut }: { bought: Nanograms; cut: CutKey }) =>
      `${cutOf(cut).name}, ${show.echo(bought)}: kept. Weigh what comes off next.`,
    trim: ({ share, trim, bought }: { share: number; trim: Nanograms; bought: Nanograms }) =>
      `${show.share(share)} came off: ${show.weight(trim)} of ${show.weight(bought)}.`,
    cooking: ({ share, cooked, from }: { share: number; cooked: Nanograms; from: Nanograms }) =>
      `${show.share(share)} kept in the heat: ${show.weight(cooked)} of the ${show.weight(from)} that went in.`,
    heatAlone: ({ cooked, bought }: { cooked: Nanograms; bought: Nanograms }) =>
      `${show.weight(cooked)} off the heat, of ${show.weight(bought)} bought.`,
    plate: ({ share, served, bought }: { share: number; served: Nanograms; bought: Nanograms }) =>
      `${show.share(share)} is on the plate: ${show.weight(served)} of the ${show.weight(bought)} bought.`,

    echo: ({ told }: { told: readonly { name: WeightName; weight: Nanograms; pan: Nanograms | null }[] }) =>
      told
        .map(
          ({ name, weight, pan }) =>
            `${show.echo(weight)} ${PARTS[name]}${pan === null ? '' : `, ${show.weight(pan)} of pan taken off`}`,
        )
        .join('; '),
    left: ({ left }: { left: Nanograms }) => `${show.echo(left)} left to cook`,
    juice: ({ juice, share }: { juice: Nanograms; share: number }) =>
      `${show.weight(juice)} was bag juice (${show.share(share)}): neither trim nor lost in the heat.`,
    costToCook: ({ cost, factor }: { cost: Money; factor: number }) =>
      `${show.money(cost)} a ${unit} to cook, ${show.oneDecimal(factor)} times the shelf price.`,
    costOnPlate: ({ cost, factor }: { cost: Money; factor: number }) =>
      `${show.money(cost)} a ${unit} on the plate, ${show.oneDecimal(factor)} times the shelf price.`,
    paid: ({ paid, price }: { paid: Money; price: Price }) =>
      price.basis === 'all'
        ? `${show.money(paid)} paid.`
        : `${show.money(paid)} paid, at ${show.price(price)}.`,
    saved: ({ weight, credit }: { weight: Nanograms; credit: Money | null }) =>
      `${show.weight(weight)} of it saved${credit === null ? '' : `, worth ${show.money(credit)}`}.`,
    beside: ({
      measure,
      share,
      count,
      members,
      cut,
    }: {
      measure: Measure;
      share: number;
      count: number;
      members: number;
      cut: CutKey;
    }) =>
      `Here so far, ${inside(cut)}: ${show.share(share)} ${AVERAGE_PIECE[measure]} (${pieces(show, count)}, ${people(show, members)}).`,
    first: ({ cut }: { cut: CutKey }) => `The first ${inside(cut)} of this club.`,
    addedTo: ({ seq, cut, day }: { seq: number; cut: CutKey; day: CalendarDay }) =>
      `Added to piece ${show.count(seq)}, your ${inside(cut)} of ${show.day(day)}.`,
    aboutPiece: ({ seq, parts }: { seq: number; parts: readonly string[] }) =>
      [`Piece ${show.count(seq)}`, ...parts].join(', '),
    pictureOf: ({ seq, cut }: { seq: number; cut: CutKey }) => `${cutOf(cut).name}, piece ${show.count(seq)}`,
    shop: ({ shop }: { shop: string }) => quote(shop),
    lot: ({ count }: { count: number }) => `${show.count(count)} together`,
    approximate: () => 'an estimate: it counts in averages, not in boards or debates',
    anothersGrade: ({ species }: { species: Species }) =>
      `That is a grade of ${species}; it is kept as you told it.`,
    again: ({ seq }: { seq: number }) => `Piece ${show.count(seq)} is kept already: nothing was added twice.`,

    waiting: () =>
      'Unusual here: it waits for a second look, and is in no figure until its member or a manager stands by it.',
    isRight: () => 'It is right',
    stage: { knife: () => 'Came off', heat: () => 'Off the heat', plate: () => 'On the plate' },
    saveTrimmings: () => 'Saved trimmings',
    remindMe: () => 'Remind me tomorrow',
    reminded: ({ seq, day }: { seq: number; day: CalendarDay }) =>
      `I will remind you of piece ${show.count(seq)} on ${show.day(day)}.`,
    reminder: ({ seq, cut }: { seq: number; cut: CutKey }) =>
      `Your ${inside(cut)}, piece ${show.count(seq)}: is it off the heat? Weigh it in the club: \`/weigh piece:${show.count(seq)} cooked:\``,
    reminderOff: () => 'You asked for this; there will be no other.',
    takeBack: () => 'Take back',
    anotherLikeThis: () => 'Another like this',
    anotherPiece: () => 'Another piece',
    whichPiece: () => 'Which piece was it?',
    choosePiece: () => 'Choose the piece',
    pieceChoice: ({
      seq,
      cut,
      bought,
      day,
    }: {
      seq: number;
      cut: CutKey;
      bought: Nanograms;
      day: CalendarDay;
    }) => `${show.count(seq)}: ${cutOf(cut).name}, ${show.weight(bought)}, ${show.day(day)}`,
    gradeMenu: () => 'The grade on its label?',
    boneMenu: () => 'Bone in, or boneless?',
    shopMenu: () => 'Bought where?',
  };
};
