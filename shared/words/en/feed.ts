/** How much to buy, in words: what for, how sure, and by whose pieces. */
import type { Source } from '../../findings/offered.ts';
import type { Money } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import { NANOGRAMS, type Nanograms } from '../../measure/units.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import type { Serving } from '../../yield/servings.ts';
import { people as peopleOf, pieces as piecesOf } from './counts.ts';
import { unitWord } from './measures.ts';
import { inside } from './names.ts';

const SERVINGS: Record<Serving, { one: string; more: string; each: string }> = {
  sandwiches: { one: 'sandwich', more: 'sandwiches', each: 'a sandwich each' },
  plates: { one: 'plate', more: 'plates', each: 'a plate each, with sides' },
};

/** `40 people and 6 children`. */
const eaters = (show: Show, people: number, children: number): string => {
  const young = children === 1 ? '1 child' : `${show.count(children)} children`;
  if (children === 0) return peopleOf(show, people);
  return people === 0 ? young : `${peopleOf(show, people)} and ${young}`;
};

const made = (show: Show, count: number, serving: Serving | null): string => {
  const names = serving === null ? { one: 'portion', more: 'portions' } : SERVINGS[serving];
  return `${show.count(count)} ${count === 1 ? names.one : names.more}`;
};

export const feed = (show: Show) => {
  const unit = unitWord(show);
  /** As a shop's scale has it. */
  const inShop = (weight: Nanograms) => show.weightIn(weight, show.form.units);
  return {
    serving: (serving: Serving) => (serving === 'plates' ? 'Plates, with sides' : 'Sandwiches'),
    buy: ({
      people,
      children,
      parts,
      safe,
    }: {
      people: number;
      children: number;
      parts: readonly { cut: CutKey; weight: Nanograms; pieces: number }[];
      safe: boolean;
    }) => {
      const bought = parts.map(
        ({ cut, weight, pieces }) => `${inShop(weight)} of ${inside(cut)} (${piecesOf(show, pieces)})`,
      );
      return `For ${eaters(show, people, children)} buy ${bought.join(' and ')}: enough ${safe ? '9 times in 10' : 'on average'}.`;
    },
    feeds: ({
      have,
      cuts,
      people,
      children,
      safe,
    }: {
      have: Nanograms;
      cuts: readonly CutKey[];
      people: number;
      children: number;
      safe: boolean;
    }) =>
      `${show.echo(have)} of ${cuts.map(inside).join(' and ')} feeds ${eaters(show, people, children)}, ${safe ? '9 times in 10' : 'on average'}.`,
    /** `need`: of all of them; null where it is asked how many there are. */
    each: ({
      portion,
      serving,
      children,
      need,
    }: {
      portion: Nanograms;
      serving: Serving | null;
      children: number;
      need: Nanograms | null;
    }) => {
      const each = serving === null ? `${show.weight(portion)} each` : SERVINGS[serving].each;
      const size = serving === null ? '' : ` (${show.weight(portion)} of meat)`;
      const young = children === 0 ? '' : ', three quarters of that for a child';
      return `Reckoned with ${each}${size}${young}${need === null ? '' : `: ${show.weight(need)} on the plate`}.`;
    },
    yields: ({ cut, usual, low }: { cut: CutKey | null; usual: number; low: number | null }) =>
      `${cut === null ? '' : `${cutOf(cut).name}: `}${show.share(usual)} of what is bought gets to the plate${low === null ? '' : `; 9 times in 10 at least ${show.share(low)}`}.`,
    makes: ({ served, serving, count }: { served: Nanograms; serving: Serving | null; count: number }) =>
      `Usually it makes about ${show.weight(served)}: ${made(show, count, serving)}.`,
    cost: ({ cost, each, prices }: { cost: Money; each: Money; prices: readonly Money[] }) =>
      `About ${show.money(each)} a head, ${show.money(cost)} in all, at the ${prices.map(show.money).join(' and ')} a ${unit} that you usually pay here.`,
    noPrice: () => 'I can tell what it costs once a piece of it is weighed in with its price.',
    short: ({ people, children, buy }: { people: number; children: number; buy: Nanograms }) =>
      `That is short of ${eaters(show, people, children)}: for all of them it takes ${inShop(buy)}.`,
    source: ({
      cut,
      source,
      pieces,
      members,
      own,
      grams,
      weighed,
    }: {
      cut: CutKey | null;
      source: Source;
      pieces: number;
      members: number;
      own: number;
      grams: number;
      weighed: boolean;
    }) => {
      const usual = show.weight((Math.round(grams * 100) * (NANOGRAMS.g / 100)) as Nanograms);
      const whose = `${piecesOf(show, pieces)} of ${peopleOf(show, members)} here`;
      const by: Record<Source, string> = {
        member: `By ${whose}, ${show.count(own)} of them by whoever asks: reckoned for them as the cook.`,
        club: `By ${whose}, whoever cooks.`,
        book: 'By published tables, since fewer than 8 pieces of 3 people were weighed to the plate here.',
        'rule of thumb':
          'By a rule of thumb, since fewer than 8 pieces of 3 people were weighed to the plate here: common practice, no source.',
      };
      return `${cut === null ? '' : `${cutOf(cut).name}: `}${by[source]} A piece: ${weighed ? 'usually' : 'about'} ${usual}.`;
    },
    noSpread: () =>
      'An average falls short half of the time, and no table says by how much: one piece more makes it safe.',
  };
};
