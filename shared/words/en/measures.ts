/** What each measure is called in a sentence, and how its figures are printed. */
import { aboutMoney } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import type { Units } from '../../measure/units.ts';
import type { Averaged, Measure } from '../../yield/measure.ts';
import { example } from './examples.ts';

/** After the share of an average piece. */
export const AVERAGE_PIECE: Record<Measure, string> = {
  trim: 'off the average piece',
  cooking: 'of the average piece kept in the heat',
  carving: 'of the average piece kept at the board',
  plate: 'of the average piece on the plate',
};

/** Over a picture or a list of groups. */
export const MEASURE_TITLES: Record<Measure, string> = {
  trim: 'What comes off raw',
  cooking: 'What is kept in the heat',
  carving: 'What is kept at the board',
  plate: 'What gets to the plate',
};

/** After the share of one piece. */
export const OF_PIECE: Record<Measure, string> = {
  trim: 'came off',
  cooking: 'kept in the heat',
  carving: 'kept at the board',
  plate: 'on the plate',
};

/** What each is a share of. */
export const SHARE_OF: Record<Measure, string> = {
  trim: 'of the weight bought',
  cooking: 'of the weight into the heat',
  carving: 'of the weight off the heat',
  plate: 'of the weight bought',
};

/** What somebody weighs in. */
export const WEIGHS_IN: Record<Units, string> = { lb: 'pounds and ounces', kg: 'kilos and grams' };

/** The weight that a price is for. */
export const unitWord = (show: Show): string => (show.form.units === 'lb' ? 'pound' : 'kilo');

/** Prints what is averaged: a share, or money for the reader's weight in the club's own currency. */
export const figureText =
  (show: Show, measure: Averaged) =>
  (value: number): string => {
    if (measure !== 'cost') return show.share(value);
    const { currency } = show.form;
    return currency === undefined ? show.twoDecimals(value) : show.money(aboutMoney(value, currency));
  };

/** After the figure of an average piece. */
export const averagePiece = (show: Show, measure: Averaged): string =>
  measure === 'cost' ? `a ${unitWord(show)} on the plate, the average piece` : AVERAGE_PIECE[measure];

/** Over a picture or a list of groups. */
export const titleOf = (show: Show, measure: Averaged): string =>
  measure === 'cost' ? `What a ${unitWord(show)} on the plate costs` : MEASURE_TITLES[measure];

/** The same where there is little room: what a cost is for is told beside its figures. */
export const pictureTitle = (measure: Averaged): string =>
  measure === 'cost' ? 'Cost on the plate' : MEASURE_TITLES[measure];

/** After the figure of one piece. */
export const ofPiece = (show: Show, measure: Averaged): string =>
  measure === 'cost' ? `a ${unitWord(show)} on the plate` : OF_PIECE[measure];

/** After a title: what the figures are shares of, or what a cost is. */
export const figuresOf = (measure: Averaged): string =>
  measure === 'cost' ? 'paid less what was saved' : SHARE_OF[measure];

/** What a piece must have been weighed at, or told of, to have such a figure. */
export const needed = (show: Show, measure: Averaged): string => {
  const trimmed = `bought:${example(show, 'bought')} trim:${example(show, 'trim')}`;
  return {
    trim: `weigh a piece in with what came off, like \`/weigh cut:packer ${trimmed}\`.`,
    cooking: 'it needs what was left to cook and what came off the heat.',
    carving: 'it needs what came off the heat and what was thrown away or on the plate.',
    plate: 'it needs what was bought and what was thrown away or on the plate after cooking.',
    cost: 'it needs a price, and what was thrown away or on the plate after cooking.',
  }[measure];
};
