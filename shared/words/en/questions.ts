/** What a member is asked where two careful people could read a text differently, and what the buttons say. */
import type { Labels, Questions } from '../../errors.ts';
import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { Measure } from '../../yield/measure.ts';
import { quote, quoteOption } from '../quote.ts';
import { gradeInFull } from './grade-names.ts';
import { inside } from './names.ts';
import { PARTS } from './parts.ts';

/** What of a piece may be a slip of the pen or of the scale. */
const UNUSUAL: Record<Measure, string> = {
  trim: 'what came off, for its weight,',
  cooking: 'what the heat took, for its weight,',
  carving: 'what was thrown away, for its weight,',
  plate: 'what got to the plate, for its weight,',
};

export const questions = (
  show: Show,
): { [Code in keyof Questions]: (values: Questions[Code]) => string } => ({
  'pounds-or-kilos': ({ option, read }) =>
    `${quoteOption(option, read)}: in pounds or in kilos? I will remember which you use.`,
  'decimals-or-ounces': ({ option, read }) =>
    `${quoteOption(option, read)}: are the digits after the mark decimals, or ounces?`,
  'thousands-or-decimals': ({ option, read }) =>
    `${quoteOption(option, read)}: does the mark part thousands or decimals?`,
  'grams-or-kilos': ({ option, read }) => `${quoteOption(option, read)}: in grams or in kilos?`,
  'over-the-larger': ({ option, read }) =>
    `${quoteOption(option, read)}: the second number is more than a whole one of the first. Which do you mean?`,
  'which-pound': ({ option, read }) =>
    `${quoteOption(option, read)}: that pound is not the same everywhere. Which do you mean?`,
  'which-weight': ({ option, read }) =>
    `${quoteOption(option, read)} can be read in more than one way. Which do you mean?`,
  'per-weight-or-in-all': ({ option, read }) =>
    `${quoteOption(option, read)}: for each ${show.form.units}, or in all?`,
  'which-price': ({ option, read }) =>
    `${quoteOption(option, read)} can be read in more than one way. Which price do you mean?`,
  'which-day': ({ option, read }) => `${quoteOption(option, read)}: which day do you mean?`,
  'which-cut': ({ read }) => `${quote(read)} could be several cuts. Which is it?`,
  'which-grade': ({ read }) => `${quote(read)} is a grade on more than one scale. Which is it?`,
  'cut-not-told': ({ bought }) => `${quoteOption('bought', bought)}: of what?`,
  size: ({ bought, pieces, cut, low, high }) =>
    `${show.echo(bought)}${pieces > 1 ? ` for ${show.count(pieces)} pieces` : ''} is far from what one ${inside(cut)} weighs, usually ${show.weight(low)} to ${show.weight(high)}. Is it right?`,
  'came-off-or-left': ({ option, weight, of }) =>
    `${show.echo(weight)} ${PARTS[option]}, of ${show.weight(of)}: did that much come off, or was it left?`,
  gain: ({ cooked, from }) =>
    `It came off the heat heavier (${show.weight(cooked)}) than it went in (${show.weight(from)}). What was put in?`,
  gap: ({ trim, left, of, missing }) => {
    const parts = `${show.weight(trim)} that came off and ${show.weight(left)} left are`;
    return missing < 0
      ? `${parts} ${show.weight(-missing as Nanograms)} more than ${show.weight(of)}. Which of the two is right?`
      : `${parts} ${show.weight(missing)} short of ${show.weight(of)}. Where did that go?`;
  },
  unusual: ({ seq, cut, measure }) =>
    `Piece ${show.count(seq)} is kept, but ${UNUSUAL[measure]} is unusual for ${inside(cut)} here. Is it right?`,
  'two-pieces-or-two-goes': ({ read, summands }) =>
    `${quote(read)}: ${show.count(summands)} pieces together, or one piece in ${show.count(summands)} goes on the scale?`,
  'which-weight-in-pan': ({ pan }) => `${quoteOption('pan', pan)}: which of the weights was in it?`,
});

export const labels = (show: Show): { [Code in keyof Labels]: (values: Labels[Code]) => string } => ({
  weight: ({ weight, form }) => (form === 'own' ? show.weight(weight) : show.weightIn(weight, form)),
  'always-decimals': () => 'Always decimals for me',
  'always-ounces': () => 'Always ounces for me',
  price: ({ price }) => show.price(price),
  day: ({ day }) => show.day(day),
  cut: ({ cut }) => cutOf(cut).name,
  grade: ({ grade }) => gradeInFull(grade),
  'another-cut': () => 'Another cut',
  'as-typed': ({ weight }) => `It is ${show.weight(weight)}`,
  'as-came-off': ({ weight }) => `${show.weight(weight)} came off`,
  'as-left': ({ weight }) => `${show.weight(weight)} was left`,
  'was-bought': ({ weight }) => `${show.weight(weight)} was bought`,
  'it-is-right': () => 'It is right',
  'as-juice': ({ juice }) => `${show.weight(juice)} was bag juice`,
  'as-pieces': ({ pieces }) => `${show.count(pieces)} pieces`,
  'one-piece': () => 'One piece',
  'nothing-added': () => 'Nothing was put in',
  'tell-added': () => 'Tell what was put in',
  'pan-under': ({ option }) => `Under ${option}`,
  'pan-under-each': () => 'Under each',
});
