/** Labels side by side: what a weight on the plate costs of each, and where it lies 8 times in 10. */
import { aboutMoney, type Currency } from '../measure/money.ts';
import { isOwnCut } from '../trade/own-cuts.ts';
import type { LabelWords } from '../words/en/label-text.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import { type Axis, scales } from './axis.ts';
import { bandsOf } from './bands.ts';
import {
  foot,
  head,
  INNER_WIDTH,
  lineHeight,
  MARGIN,
  namesScale,
  options,
  PLAIN_FONT,
  PLAIN_NAMES,
  plainOptions,
  SIZE,
  WIDTH,
} from './frame.ts';
import { moneyAxis } from './money-axis.ts';
import type { Note } from './notes.ts';
import { INK, OKABE_ITO, OUTLINE, QUIET_INK } from './palette.ts';
import type { Json, Picture } from './picture.ts';

/** Layout pixels: a row is a line of text, its marks below, and room to the next. */
const TEXT_ROW = 40;
const MARK_ROW = 44;
const ROW = TEXT_ROW + MARK_ROW;
const COST_WIDTH = { best: 250, other: 140 } as const;
const BAR = 8;
const BAR_OF_OTHERS = '#C8C8C8';
const RADIUS = { best: 16, other: 11 } as const;
const FIGURES_DOWN = 22;
const FOOT = 26;

type Words = PictureWords['labels'];

/** One label, and what it comes to. */
export interface DrawnLabel {
  words: LabelWords;
  /** Per unit of weight on the plate, in the currency's units. */
  cost: number;
  low: number;
  high: number;
  currency: Currency;
  best: boolean;
}

/** What the picture of labels shows. */
export interface DrawnLabels {
  /** The cut; null for several. Drawn as it stands. */
  about: string | null;
  /** Two to five. */
  labels: readonly DrawnLabel[];
  /** Whether none of them is clearly the best. */
  close: boolean;
}

const middleOf = (index: number): number => index * ROW + TEXT_ROW + MARK_ROW / 2 - 6;

/** The line over a row's marks: the label, and what it comes to. */
function rowNotes(
  { words: label, cost, currency, best }: DrawnLabel,
  y: number,
  words: Words,
): readonly Note[] {
  const width = best ? COST_WIDTH.best : COST_WIDTH.other;
  const money = words.cost({ cost: aboutMoney(cost, currency) });
  return [
    {
      text: words.name(label),
      x: MARGIN,
      y,
      size: SIZE.label,
      colour: INK,
      bold: best,
      width: INNER_WIDTH - width,
    },
    {
      text: best ? `${words.best()}  ${money}` : money,
      x: WIDTH - MARGIN,
      y,
      align: 'right',
      size: SIZE.label,
      bold: true,
      colour: best ? OKABE_ITO.blue : INK,
      width,
    },
  ];
}

/** One series for the best, one for the others, over their ranges. */
function marksOf(labels: readonly DrawnLabel[], words: Words): readonly Json[] {
  const series = (best: boolean, label: string): Json[] => {
    const data = labels.flatMap((one, index) =>
      one.best === best ? [{ x: one.cost, y: middleOf(index) }] : [],
    );
    return data.length === 0
      ? []
      : [
          {
            label,
            data,
            pointStyle: best ? 'rectRot' : 'circle',
            radius: best ? RADIUS.best : RADIUS.other,
            backgroundColor: best ? OKABE_ITO.blue : OUTLINE,
            borderColor: INK,
            borderWidth: best ? 2 : 0,
            clip: false,
          },
        ];
  };
  const bands = labels.map(({ low, high }, index) => ({
    span: [low, high] as const,
    middle: middleOf(index),
  }));
  const colours = labels.map(({ best }) => (best ? OKABE_ITO.sky : BAR_OF_OTHERS));
  return [
    ...series(true, words.best()),
    ...series(false, words.others()),
    bandsOf(words.ranges(), bands, BAR, colours),
  ];
}

function axisNotes(axis: Axis, bottom: number, currency: Currency, words: Words): readonly Note[] {
  return axis.ticks.map((at, index) => ({
    text: words.tick({ cost: aboutMoney(at, currency) }),
    x: index === 0 ? MARGIN : index === axis.ticks.length - 1 ? WIDTH - MARGIN : { at },
    y: bottom + FIGURES_DOWN,
    align: index === 0 ? 'left' : index === axis.ticks.length - 1 ? 'right' : 'center',
    size: SIZE.small,
    colour: QUIET_INK,
  }));
}

/** A label as others may draw it: a cut of the club's own is the club's own word. */
const withoutOwnWord = (label: LabelWords): LabelWords =>
  label.cut !== null && isOwnCut(label.cut) ? { ...label, cut: null } : label;

/** The labels and what they come to, for a renderer that draws no notes. */
const plainNames = (labels: readonly DrawnLabel[], words: Words) =>
  labels.map(({ words: label, cost, currency }) => [
    words.name(withoutOwnWord(label)),
    words.cost({ cost: aboutMoney(cost, currency) }),
  ]);

/** The picture of labels. Nobody's words stand in it: a label is drawn as it was read. */
export function labelsPicture({ about, labels, close }: DrawnLabels, words: Words): Picture {
  const [first] = labels;
  if (first === undefined) throw new RangeError('a picture of no label');
  const axis = moneyAxis(labels.flatMap(({ cost, low, high }) => [cost, low, high]));
  const under = [about ?? words.several(), close ? words.tooClose() : null]
    .filter((part) => part !== null)
    .join(': ');
  const top = head(words.title(), under, null);
  const dataTop = top.bottom + 12;
  const bottom = dataTop + labels.length * ROW;
  const footTop = bottom + FIGURES_DOWN + lineHeight(SIZE.small) + 10;
  const height = footTop + FOOT;
  const notes = [
    ...top.notes,
    ...labels.flatMap((label, index) => rowNotes(label, dataTop + index * ROW + TEXT_ROW / 2, words)),
    ...axisNotes(axis, bottom, first.currency, words),
    ...foot([words.caption()], footTop),
  ];
  return {
    name: 'labels',
    width: WIDTH,
    height,
    alt: altOf(labels, under, words),
    config: {
      type: 'scatter',
      data: { datasets: marksOf(labels, words) },
      options: {
        ...options(dataTop, height - bottom, notes),
        scales: { ...scales(axis, labels.length * ROW), names: namesScale(plainNames(labels, words)) },
      },
    },
    plain: plainOptions(words.title(), true, {
      x: { display: true, ticks: { display: true, padding: 4, font: PLAIN_FONT } },
      names: PLAIN_NAMES,
    }),
  };
}

/** The same in words. */
function altOf(labels: readonly DrawnLabel[], about: string, words: Words): string {
  return [
    words.altHead({ about }),
    ...labels.map(({ words: label, cost, low, high, currency }) =>
      words.altLabel({
        label,
        cost: aboutMoney(cost, currency),
        low: aboutMoney(low, currency),
        high: aboutMoney(high, currency),
      }),
    ),
  ].join(' ');
}
