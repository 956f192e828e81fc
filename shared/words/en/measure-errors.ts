/** What is said of a weight, a pan, a price, a label or a day that can't be taken. */
import type { Problems } from '../../errors.ts';
import { decimalMark, type Show } from '../../measure/show.ts';
import { NANOGRAMS, type Nanograms } from '../../measure/units.ts';
import { HEAVIEST } from '../../measure/weight.ts';
import { quote, quoteOption } from '../quote.ts';
import { example } from './examples.ts';

/** 2 lb 9.4 oz, or 1.17 kg. */
export const WEIGHT = ((NANOGRAMS.oz * 414) / 10) as Nanograms;
/** 9.4 oz, or 266 g. */
export const SMALL_WEIGHT = ((NANOGRAMS.oz * 94) / 10) as Nanograms;

/** A weight that works, as this reader would write it. */
const weightExample = (show: Show): string => `\`${show.weight(WEIGHT)}\``;
const amountExample = (show: Show): string => (decimalMark(show.form.locale) === ',' ? '4,99' : '4.99');
/** A price that works, as this reader would write it. */
const priceExample = (show: Show): string => `\`${amountExample(show)}/${show.form.units}\``;

type MeasureProblem = Extract<
  keyof Problems,
  `${'weight' | 'pan' | 'pans' | 'price' | 'label' | 'labels' | 'day'}-${string}`
>;

export const measureErrors = (
  show: Show,
): { [Code in MeasureProblem]: (values: Problems[Code]) => string } => ({
  'weight-empty': ({ option }) =>
    `${quoteOption(option, '')} has no weight in it. Write one like ${weightExample(show)}.`,
  'weight-too-long': ({ option, read }) =>
    `${quoteOption(option, read)} is too long for a weight. Write only the weight, like ${weightExample(show)}.`,
  'weight-unreadable': ({ option, read, part }) =>
    `I can't read ${quoteOption(option, read)} as a weight${part === '' ? '' : `: ${quote(part)} is what stops me`}. Write it like ${weightExample(show)}.`,
  'weight-number': ({ option, read, part }) =>
    `${quoteOption(option, read)}: ${quote(part)} is not one number. Write it like ${weightExample(show)}.`,
  'weight-other-unit': ({ option, read, unit }) =>
    `${quoteOption(option, read)}: I don't know ${quote(unit)} as a weight. Use pounds, ounces, kilos or grams, like ${weightExample(show)}.`,
  'weight-mixed': ({ option, read }) =>
    `${quoteOption(option, read)} mixes kilos or grams with pounds or ounces. Write all of it in one, like ${weightExample(show)}.`,
  'weight-negative': ({ option, read }) =>
    `${quoteOption(option, read)} comes to less than nothing. A weight is zero or more, like ${weightExample(show)}.`,
  'weight-too-heavy': ({ option, read }) =>
    `${quoteOption(option, read)} is above ${show.weight(HEAVIEST)}, the most I take. Check the unit, and write it like ${weightExample(show)}.`,
  'weight-by-zero': ({ option, read }) =>
    `${quoteOption(option, read)} has a fraction over zero. Write it like \`14 3/4 ${show.form.units}\`.`,
  'weight-unclear': ({ option, read }) =>
    `${quoteOption(option, read)} can be read in too many ways. Write every number with its unit, like ${weightExample(show)}.`,
  'weight-zero': ({ option }) => `\`${option}:0\` can't be. Leave it out if it was not weighed.`,
  'pan-unknown': ({ option, read, name, pans }) =>
    pans.length === 0
      ? `${quoteOption(option, read)}: you have no pan called ${quote(name)}, nor any other yet. Take its weight off, like \`${show.weight(WEIGHT)} - ${show.weight(SMALL_WEIGHT)}\`.`
      : `${quoteOption(option, read)}: you have no pan called ${quote(name)}. You have ${pans.map(quote).join(', ')}.`,
  'pan-no-letter': ({ option, read }) =>
    `${quoteOption(option, read)}: the name of a pan needs a letter. Call it something like \`blue pan\`.`,
  'pan-too-long': ({ option, read, most }) =>
    `${quoteOption(option, read)} is too long: a name has at most ${show.count(most)} characters. Call it something like \`blue pan\`.`,
  'pan-signs': ({ option, read }) =>
    `${quoteOption(option, read)}: a name has only letters, digits and spaces. Call it something like \`blue pan\`.`,
  'pan-reads-as-weight': ({ option, read }) =>
    `${quoteOption(option, read)} could be taken for part of a weight. Call it something like \`blue pan\`.`,
  'pan-above-weight': ({ option, weight, pan }) =>
    `\`${option}:\` is ${show.weight(weight)} and the pan alone ${show.weight(pan)}. Was the pan on the scale?`,
  'pan-weight-missing': ({ name }) =>
    `What does ${quote(name)} weigh empty? Add it, like \`weight:${show.weight(SMALL_WEIGHT)}\`.`,
  'pan-name-missing': () => 'What do you call that pan? Add it, like `name:blue pan`.',
  'pans-none': ({ read }) => `\`pans:${read}\` of which pan? Add it, like \`pan:blue pan\`.`,
  'price-unreadable': ({ option, read, part }) =>
    `I can't read ${quoteOption(option, read)} as a price${part === '' ? '' : `: ${quote(part)} is what stops me`}. Write it like ${priceExample(show)}.`,
  'price-negative': ({ option, read }) =>
    `${quoteOption(option, read)} is less than nothing. Write a price like ${priceExample(show)}.`,
  'price-decimals': ({ option, read }) =>
    `${quoteOption(option, read)} has more than four decimals. Write it like ${priceExample(show)}.`,
  'price-too-high': ({ option, read }) =>
    `${quoteOption(option, read)} is more than I take. Write a price like ${priceExample(show)}.`,
  'price-sign': ({ option, read, sign }) =>
    `${quoteOption(option, read)}: ${quote(sign)} is not this club's currency, and several currencies are written so. Write the code, like \`USD ${amountExample(show)}/${show.form.units}\`.`,
  'price-two-currencies': ({ option, read }) =>
    `${quoteOption(option, read)} has two currencies. Write one of them, like \`USD ${amountExample(show)}/${show.form.units}\`.`,
  'price-basis': ({ option, read, unit }) =>
    `${quoteOption(option, read)}: I take prices per pound, ounce, kilo or 100 g, not per ${quote(unit)}. Write it like ${priceExample(show)}.`,
  'price-missing': () => `What was paid for it? Add it, like \`price:${example(show, 'price')}\`.`,
  'label-weight': ({ option, read }) =>
    `${quoteOption(option, read)}: what does it weigh? Write the label like \`${option}:${example(show, 'label')}\`.`,
  'label-price': ({ option, read }) =>
    `${quoteOption(option, read)}: what does it cost? Write the label like \`${option}:${example(show, 'label')}\`.`,
  'label-words': ({ option, read, part }) =>
    `${quoteOption(option, read)}: I know ${quote(part)} neither as a grade nor as a cut. Write the label like \`${option}:${example(show, 'label')}\`.`,
  'label-several': ({ option, read }) =>
    `${quoteOption(option, read)} reads like several labels. I compare up to five, one an option: \`one:${example(show, 'label')} two:…\``,
  'labels-missing': () =>
    `Which pieces are on offer? Write each as its label says: \`one:${example(show, 'label')} two:…\`, up to \`five:\`.`,
  'label-currencies': ({ option, currency, other }) =>
    `\`${option}:\` is in ${currency}, and another label in ${other}. I know no rates of exchange: write one currency.`,
  'day-unreadable': ({ option, read }) =>
    `I can't read ${quoteOption(option, read)} as a day. Write it like \`2026-07-04\`, \`4 July\` or \`yesterday\`.`,
  'day-not-there': ({ option, read }) =>
    `There is no day like ${quoteOption(option, read)}. Write it like \`2026-07-04\` or \`4 July\`.`,
  'day-ahead': ({ option, read, today }) =>
    `${quoteOption(option, read)} is still to come: today is ${show.day(today)}. Write a day like \`yesterday\` or \`4 July\`.`,
  'day-too-old': ({ option, read }) =>
    `${quoteOption(option, read)} is before 1970. Write a day like \`2026-07-04\` or \`yesterday\`.`,
});
