/** The answer and the lines about labels: one by itself, or several with the one to take. */
import type { Compared, Comparison } from '../findings/labels.ts';
import { aboutMoney, type Money } from '../measure/money.ts';
import { grams } from '../measure/units.ts';
import type { LabelWords } from '../words/en/label-text.ts';
import type { Speech } from '../words/index.ts';
import { servingOf, servingsIn } from '../yield/servings.ts';
import { kilosPer } from './per-unit.ts';

/** Below it nobody should trust the difference: 6 times in 10. */
export const WORTH_SAYING = 0.6;

/** What a price of a kilo is for the reader's unit: 11.00 a kilo is 4.99 a pound. */
export const perUnit = (one: Compared, perKg: number, { show }: Speech): Money =>
  aboutMoney(perKg * kilosPer(show.form.units), one.label.price.currency);

/** The answer for one label: what it comes to, and its range. */
export function aloneAnswer(one: Compared, say: Speech): string {
  const money = (perKg: number) => perUnit(one, perKg, say);
  const range = { low: money(one.costLow), high: money(one.costHigh) };
  return say.shop.alone({ cost: money(one.costPerServedKg), range });
}

/** What comes off, what is left of it, and how it compares with the club's last ones. */
export function aloneLines(one: Compared, say: Speech): string[] {
  const { trimShare: share, trimLow, trimHigh, found } = one;
  const off = (of: number) => of * one.grams;
  const cheaper = found.lastCosts.filter((cost) => one.costPerServedKg < cost).length;
  return [
    say.shop.label(wordsOf(one, 0, true)),
    share === null || trimLow === null || trimHigh === null
      ? say.shop.gets({ share: one.plateYield })
      : say.shop.trim({ off: off(share), range: { low: off(trimLow), high: off(trimHigh) }, share }),
    ...(found.lastCosts.length === 0 ? [] : [say.shop.last({ cheaper, count: found.lastCosts.length })]),
    say.shop.makes({ made: [madeOf(one, null, say)] }),
  ];
}

/** What wins, what it comes to, and what the next best does. */
export function answerOf({ labels, best, alike }: Comparison, say: Speech): string {
  const winner = labels[best];
  const others = labels.filter((_one, place) => place !== best);
  const next = others.toSorted((one, other) => one.costPerServedKg - other.costPerServedKg)[0];
  if (winner === undefined || next === undefined) throw new RangeError('two labels or more');
  const [cost, second] = [winner, next].map((one) => perUnit(one, one.costPerServedKg, say));
  if (cost === undefined || second === undefined) throw new RangeError('two costs');
  const told = { place: best + 1, cost, next: second };
  if (alike) return say.shop.alike({ ...told, same: winner.pricePerKg === next.pricePerKg });
  const chance = winner.chanceCheapest ?? 0;
  const whole = { ...told, chance, count: labels.length };
  return chance < WORTH_SAYING ? say.shop.close(whole) : say.shop.wins(whole);
}

/** The labels, where the others draw level, and what each makes. */
export function severalLines({ labels, best, alike }: Comparison, say: Speech): string[] {
  const several = isSeveral(labels);
  const levels = labels.flatMap((one, place) =>
    one.levelPricePerKg === null || place === best
      ? []
      : [{ place: place + 1, price: perUnit(one, one.levelPricePerKg, say) }],
  );
  return [
    `${labels.map((one, place) => say.shop.name(wordsOf(one, place, several))).join('; ')}.`,
    ...(alike ? [] : [say.shop.level({ levels })]),
    say.shop.makes({ made: labels.map((one, place) => madeOf(one, place + 1, say)) }),
    ...(several || alike ? [] : [say.shop.gaps({ points: 2, part: POINTS_WORTH })]),
  ];
}

/** Two points of a trim of a quarter: 0.02 / 0.75 of the price. */
const POINTS_WORTH = 0.02 / 0.75;

/** Whether the labels are of several cuts. */
export const isSeveral = (labels: readonly Compared[]): boolean =>
  new Set(labels.map(({ label: { cut } }) => cut)).size > 1;

/** What stands on a label, by its place from 0; with its cut where that tells it apart. */
export const wordsOf = ({ label }: Compared, place: number, withCut: boolean): LabelWords => ({
  place: place + 1,
  weight: label.weight,
  price: label.price,
  grade: label.grade,
  cut: withCut ? label.cut : null,
});

function madeOf({ servedGrams }: Compared, place: number | null, { show }: Speech) {
  const made = (serving: 'sandwiches' | 'plates') =>
    servingsIn(servedGrams, grams(servingOf(serving, show.form.units)));
  return { place, sandwiches: made('sandwiches'), plates: made('plates') };
}
