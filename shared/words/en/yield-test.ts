/** A piece cut into parts, in words: the butcher's yield test. */
import type { Money, Price } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import { unitWord } from './measures.ts';

/** The last part that was weighed, after its cost. */
const LAST = { left: 'usable', cooked: 'off the heat', served: 'on the plate' } as const;

export const yieldTest = (show: Show) => {
  const unit = unitWord(show);
  return {
    /** The answer. `share` is of what was bought. */
    usableCost: ({ cost, usable, bought, share }: Usable & { cost: Money }) =>
      `${show.money(cost)} a ${unit} usable: ${show.weight(usable)} of ${show.weight(bought)}, ${show.share(share)}.`,
    usable: ({ usable, bought, share }: Usable) =>
      `${show.share(share)} is usable: ${show.weight(usable)} of ${show.weight(bought)}.`,
    value: ({
      paid,
      credit,
      net,
      factor,
    }: {
      paid: Money;
      credit: Money | null;
      net: Money;
      factor: number | null;
    }) =>
      `${[
        `${show.money(paid)} paid`,
        ...(credit === null
          ? []
          : [`less ${show.money(credit)} that parts are worth: ${show.money(net)} for the usable meat`]),
        ...(factor === null ? [] : [`${show.twoDecimals(factor)} times the shelf price`]),
      ].join(', ')}.`,
    afterHeat: ({
      part,
      weight,
      share,
      cost,
      factor,
    }: {
      part: 'cooked' | 'served';
      weight: Nanograms;
      share: number;
      cost: Money | null;
      factor: number | null;
    }) => {
      const what = `${show.weight(weight)}, ${show.share(share)} of what was bought`;
      if (cost === null) return `${what}, ${LAST[part]}.`;
      const times = factor === null ? '' : `, ${show.twoDecimals(factor)} times the shelf price`;
      return `${show.money(cost)} a ${unit} ${LAST[part]}: ${what}${times}.`;
    },
    portion: ({
      portion,
      cost,
      factor,
      count,
      from,
      part,
    }: {
      portion: Nanograms;
      cost: Money | null;
      factor: number | null;
      count: number;
      from: Nanograms;
      part: keyof typeof LAST;
    }) => {
      const made = `${show.count(count)} from the ${show.weight(from)} ${LAST[part]}`;
      if (cost === null) return `Portions of ${show.weight(portion)}: ${made}.`;
      const times = factor === null ? '' : `, ${show.twoDecimals(factor)} times the price of a ${unit}`;
      return `A portion of ${show.weight(portion)} costs ${show.money(cost)}${times}; ${made}.`;
    },
    toBuy: ({ portions, weight }: { portions: number; weight: Nanograms }) =>
      `For ${show.count(portions)} portions buy ${show.weight(weight)}.`,
    again: ({ price, cost, portion }: { price: Price; cost: Money; portion: Money | null }) =>
      `At ${show.price(price)}: ${show.money(cost)} a ${unit} usable${portion === null ? '' : `, ${show.money(portion)} a portion`}.`,
    perUnit: ({ lb, kg, oz }: { lb: Money; kg: Money; oz: Money }) =>
      `Usable: ${show.money(lb)} a pound, ${show.money(kg)} a kilo, ${show.money(oz)} an ounce.`,
    heads: { part: () => 'part', weight: () => 'weight', share: () => 'share', value: () => 'value' },
    rows: {
      juice: () => 'bag juice',
      /** Where no part is named, nobody says that it was lost. */
      loss: ({ named }: { named: boolean }) => (named ? 'loss' : 'came off'),
      usable: () => 'usable',
      bought: () => 'bought',
    },
    leftOver: () =>
      'What the parts leave counts as usable. Add `usable:` or `loss:` if the cutting lost some.',
    apart: ({ apart }: { apart: Nanograms }) =>
      `All told that is ${show.weight(Math.abs(apart) as Nanograms)} ${apart < 0 ? 'less' : 'more'} than the piece, no more than scales differ by. The loss is what the others leave.`,
    lot: ({ pieces }: { pieces: number }) => `${show.count(pieces)} pieces as one lot.`,
    priceTells: () => 'With a `price:` it also tells what the usable meat costs.',
    read: ({
      bought,
      usable,
      portion,
    }: {
      bought: Nanograms;
      usable: Nanograms;
      portion: Nanograms | null;
    }) =>
      `${show.echo(bought)} bought; ${show.echo(usable)} usable${portion === null ? '' : `; a portion of ${show.echo(portion)}`}.`,
    notKept: () => 'Only worked out: nothing was kept or changed.',
    about: ({ cut, bought }: { cut: CutKey | null; bought: Nanograms }) =>
      cut === null ? show.weight(bought) : `${cutOf(cut).name}, ${show.weight(bought)}`,
  };
};

interface Usable {
  usable: Nanograms;
  bought: Nanograms;
  share: number;
}
