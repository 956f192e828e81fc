/** A shop's label within a sentence. */
import type { Price } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';
import type { CutKey, GradeKey } from '../../trade/keys.ts';
import { small } from './capitals.ts';
import { gradeName, inside } from './names.ts';

/** What stands on a label; `cut` where the labels are of several. */
export interface LabelWords {
  /** From 1. */
  place: number;
  weight: Nanograms;
  price: Price;
  grade: GradeKey | null;
  cut: CutKey | null;
}

/** As a label has it: `14.20 lb`. */
const onLabel = (show: Show, weight: Nanograms): string => show.weightIn(weight, show.form.units);
/** A grade within a sentence; `AAA` is no word. */
export const lower = (text: string): string => (text.length > 3 ? small(text) : text);

/** `14.20 lb at $5.49/lb, choice` */
export const labelText = (show: Show, { weight, price, grade, cut }: Omit<LabelWords, 'place'>): string =>
  [
    `${onLabel(show, weight)} at ${show.price(price)}`,
    ...(grade === null ? [] : [lower(gradeName(grade))]),
    ...(cut === null ? [] : [inside(cut)]),
  ].join(', ');

/** `label 2` */
export const nth = (show: Show, place: number): string => `label ${show.count(place)}`;
