/** The words in the picture of labels, and in the one to keep. */
import type { Money } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import { capital } from './capitals.ts';
import { type LabelWords, labelText, lower, nth } from './label-text.ts';
import { unitWord } from './measures.ts';
import { gradeName, inside } from './names.ts';

export const shopPicture = (show: Show) => {
  const unit = unitWord(show);
  return {
    title: () => `A ${unit} on the plate`,
    /** Of several cuts by what tells them apart first: a line of a picture is short. */
    name: ({ place, weight, price, grade, cut }: LabelWords) =>
      cut === null
        ? `${show.count(place)}  ${labelText(show, { weight, price, grade, cut })}`
        : `${show.count(place)}  ${[inside(cut), show.price(price), ...(grade === null ? [] : [lower(gradeName(grade))])].join(', ')}`,
    several: () => 'Unlike cuts',
    cost: ({ cost }: { cost: Money }) => show.money(cost),
    tick: ({ cost }: { cost: Money }) => show.money(cost),
    caption: () => 'Dot: what to expect. Bar: where it lies 8 times in 10.',
    best: () => 'best buy',
    tooClose: () => 'too close to call',
    ranges: () => '8 times in 10',
    others: () => 'the others',
    altHead: ({ about }: { about: string }) => `What a ${unit} on the plate costs. ${about}.`,
    altLabel: ({ label, cost, low, high }: { label: LabelWords; cost: Money; low: Money; high: Money }) =>
      `${capital(nth(show, label.place))}, ${labelText(show, label)}: ${show.money(cost)}, ${show.money(low)} to ${show.money(high)}.`,
  };
};

export const shopCardPicture = (show: Show) => {
  const unit = unitWord(show);
  return {
    title: () => 'In the shop',
    about: ({ cut, share, stage }: { cut: CutKey; share: number; stage: 'trim' | 'plate' }) =>
      `${cutOf(cut).name}, ${stage === 'trim' ? `with ${show.share(share)} off` : `${show.share(1 - share)} on the plate`}`,
    heads: {
      shelf: () => `shelf, a ${unit}`,
      plate: () => 'on the plate',
      trimmed: () => 'trimmed, at most',
    },
    cell: ({ price }: { price: Money }) => show.money(price),
    foot: ({ trimmed }: { trimmed: boolean }): readonly string[] => [
      `On the plate: what a ${unit} of it then costs.`,
      ...(trimmed ? [`Trimmed, at most: what a ${unit} may cost that needs no knife.`] : []),
    ],
    bars: () => 'on the plate',
    altHead: ({ about }: { about: string }) =>
      `${about}. A ${unit} at the shelf, then on the plate and, where told, trimmed at most.`,
    altRow: ({ shelf, plate, trimmed }: { shelf: Money; plate: Money; trimmed: Money | null }) =>
      `${[plate, ...(trimmed === null ? [] : [trimmed])].reduce((text, money, place) => `${text}${place === 0 ? ': ' : ', '}${show.money(money)}`, show.money(shelf))}.`,
  };
};
