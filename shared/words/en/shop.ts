/** Labels side by side, in words: what each comes to on the plate, which wins, and by whose pieces. */
import type { Source } from '../../findings/offered.ts';
import type { Money } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import { capital } from './capitals.ts';
import { people as peopleOf, pieces as piecesOf } from './counts.ts';
import { type LabelWords, labelText, nth } from './label-text.ts';
import { unitWord } from './measures.ts';
import { inside } from './names.ts';
import { little } from './on-one.ts';

interface Range {
  low: number;
  high: number;
}

interface MoneyRange {
  low: Money;
  high: Money;
}

const perUnit = (show: Show, money: Money): string => `${show.money(money)}/${show.form.units}`;
/** An amount beside another one that has the currency's sign. */
const plain = (show: Show, money: Money): string => show.money(money).replace(/[^\d.,-]/g, '');
/** `in 7 of 10`, never in all: nothing is sure. */
const tenths = (show: Show, chance: number): string =>
  chance >= 0.95 ? 'in more than 9 of 10' : `in ${show.count(chance * 10)} of 10`;

export const shop = (show: Show) => {
  const unit = unitWord(show);
  const plate = (money: Money) => `${show.money(money)} a ${unit} on the plate`;
  return {
    name: ({ place, ...label }: LabelWords) => `${show.count(place)}: ${labelText(show, label)}`,
    /** One by itself, in full. */
    label: (label: Omit<LabelWords, 'place'>) => `${labelText(show, label)}.`,
    wins: ({
      place,
      chance,
      count,
      cost,
      next,
    }: {
      place: number;
      chance: number;
      /** How many labels there are. */
      count: number;
      cost: Money;
      next: Money;
    }) =>
      `${capital(nth(show, place))} is ${count === 2 ? 'cheaper' : 'the cheapest'} on the plate ${tenths(show, chance)} such ${count === 2 ? 'pairs' : 'choices'}: ${plate(cost)}, against ${show.money(next)}.`,
    close: ({
      place,
      chance,
      count,
      cost,
      next,
    }: {
      place: number;
      chance: number;
      count: number;
      cost: Money;
      next: Money;
    }) =>
      `Too close to call: ${nth(show, place)} is ${count === 2 ? 'cheaper' : 'the cheapest'} ${tenths(show, chance)} such ${count === 2 ? 'pairs' : 'choices'}, at ${plate(cost)} against ${show.money(next)}.`,
    alike: ({ place, cost, next, same }: { place: number; cost: Money; next: Money; same: boolean }) =>
      same
        ? `Same cut, same grade, same price: no label is the better buy, at ${plate(cost)}.`
        : `Same cut, same grade: the price alone decides, so ${nth(show, place)}: ${plate(cost)}, against ${show.money(next)}.`,
    alone: ({ cost, range }: { cost: Money; range: MoneyRange }) =>
      `Expect ${plate(cost)} (${show.money(range.low)} to ${show.money(range.high)}, 8 times in 10).`,
    /** Weights in grams. */
    trim: ({ off, range, share }: { off: number; range: Range; share: number }) =>
      `Expect ${little(show, range.low)} to ${little(show, range.high)} to come off (8 times in 10), about ${little(show, off)}: ${show.share(share)}.`,
    gets: ({ share }: { share: number }) => `${show.share(share)} of it gets to the plate.`,
    /** Among the club's last pieces of this cut. */
    last: ({ cheaper, count }: { cheaper: number; count: number }) =>
      cheaper === 0
        ? `Dearer on the plate than each of the last ${show.count(count)} here.`
        : `Cheaper on the plate than ${show.count(cheaper)} of the last ${show.count(count)} here.`,
    level: ({ levels }: { levels: readonly { place: number; price: Money }[] }) =>
      `To draw level: ${levels.map(({ place, price }) => `${nth(show, place)} at ${perUnit(show, price)}`).join(', ')}.`,
    makes: ({
      made,
    }: {
      /** `place` is null for a label by itself. */
      made: readonly { place: number | null; sandwiches: number; plates: number }[];
    }) =>
      `Makes about ${made.map(({ place, sandwiches, plates }) => `${place === null ? '' : `${show.count(place)}: `}${show.count(sandwiches)} sandwiches or ${show.count(plates)} plates`).join('; ')}.`,
    /** Two points of a trim of a quarter, as a part of the price. */
    gaps: ({ points, part }: { points: number; part: number }) =>
      `Within one cut almost any gap in price decides: ${show.count(points)} points more off are worth ${show.share(part)} of the price. Unlike cuts differ more.`,
    heads: { label: () => '', trim: () => 'comes off', cost: () => `a ${unit} on the plate` },
    trimCell: ({ share, low, high }: Range & { share: number }) =>
      `${show.count(share * 100)} % (${show.count(low * 100)}-${show.count(high * 100)})`,
    costCell: ({ cost, low, high }: MoneyRange & { cost: Money }) =>
      `${show.money(cost)} (${plain(show, low)}-${plain(show, high)})`,
    brackets: () => 'In brackets: 8 times in 10.',
    servings: ({ sandwich, plate: onPlate }: { sandwich: Nanograms; plate: Nanograms }) =>
      `A sandwich is ${show.weight(sandwich)} of meat, a plate ${show.weight(onPlate)}.`,
    source: ({
      cut,
      source,
      pieces,
      members,
      own,
      posted,
      stage,
    }: {
      cut: CutKey;
      source: Exclude<Source, 'book'>;
      pieces: number;
      members: number;
      own: number;
      posted: Range | null;
      stage: 'trim' | 'plate';
    }) => {
      const what = stage === 'trim' ? 'what comes off' : 'what gets to the plate';
      const whose = `${piecesOf(show, pieces)} of ${peopleOf(show, members)} here`;
      if (source === 'member')
        return `${cutOf(cut).name}: ${what}, going by ${whose}, ${show.count(own)} of them yours: reckoned for you.`;
      if (source === 'club') return `${cutOf(cut).name}: ${what}, going by ${whose}.`;
      const range =
        posted === null
          ? 'no piece was weighed in here yet'
          : `${piecesOf(show, pieces)} here (${show.share(posted.low)} to ${show.share(posted.high)}) ${pieces === 1 ? 'is' : 'are'} too few by ${pieces === 1 ? 'itself' : 'themselves'}`;
      return `${cutOf(cut).name}: ${what}, going by a rule of thumb (common practice, no source), since ${range}.`;
    },
    kept: ({
      cut,
      share,
      source,
      pieces,
    }: {
      cut: CutKey;
      share: number;
      source: Exclude<Source, 'member'>;
      pieces: number;
    }) => {
      const by = {
        club: `by ${piecesOf(show, pieces)} here`,
        book: 'by published tables',
        'rule of thumb': 'by a rule of thumb',
      }[source];
      return `Of what is left to cook of ${inside(cut)}, ${show.share(share)} gets to the plate, ${by}: the same for each label.`;
    },
    fewThisSize: ({ places }: { places: readonly number[] }) =>
      `Few pieces of that size were weighed in here${places.length === 0 ? '' : `: ${places.map((place) => nth(show, place)).join(', ')}`}.`,
    narrowed: ({ style, bone }: { style: boolean; bone: boolean }) =>
      `Only pieces ${[...(style ? ['trimmed as you do'] : []), ...(bone ? ['with the same bone, in or out'] : [])].join(' and ')}.`,
    notNarrowed: () => 'Too few pieces here are trimmed like that, so all of them count.',
    showClub: () => 'Show the club',
    boughtIt: () => 'Bought it',
    boughtAnother: () => 'Bought another one',
    shownBy: ({ member }: { member: string }) => `<@${member}> in the shop`,
    card: ({ cut, price, cost }: { cut: CutKey; price: Money; cost: Money }) =>
      `${cutOf(cut).name}: at ${perUnit(show, price)} it comes to ${plate(cost)}.`,
    /** Of what comes off; or of what does not get to the plate. */
    cardLine: ({ share, low, high, stage }: Range & { share: number; stage: 'trim' | 'plate' }) =>
      stage === 'trim'
        ? `Reckoned with ${show.share(share)} coming off; 8 times in 10 it is ${show.share(low)} to ${show.share(high)}.`
        : `Reckoned with ${show.share(1 - share)} on the plate; 8 times in 10 it is ${show.share(1 - high)} to ${show.share(1 - low)}.`,
    cardKeep: () => 'Keep the picture: it works in a shop without signal.',
  };
};
