/** What is said around every command: the first time in a club, the way out of a question, a bug's reference. */
import type { Club } from '../../club/club.ts';
import type { Show } from '../../measure/show.ts';
import { example } from './examples.ts';

type Texts = Readonly<Record<string, () => string>>;

export const desk = (show: Show) => ({
  fixIt: () => 'Fix it',
  formTitle: ({ command }: { command: string }) => (command === 'weigh' ? 'Weigh a piece in' : `/${command}`),
  /** The inputs of forms, by option. */
  inputs: {
    cut: () => 'Cut',
    bought: () => 'Weight on the label',
    trim: () => 'Came off',
    price: () => 'Price',
    piece: () => 'Number of the piece (empty: your newest)',
    cooked: () => 'Off the heat',
    scraps: () => 'Thrown away after cooking',
    served: () => 'Or what was on the plate',
    left: () => 'Or what was left to cook',
    bagged: () => 'Out of its bag, patted dry',
    style: () => 'How much fat you left on',
    saved: () => 'What you saved of the trimmings',
    wrap: () => 'Wrapped in',
    added: () => 'Put in: injection or brine',
    name: () => 'What you call the pan',
    weight: () => 'What it weighs empty',
    by: () => 'Told apart by',
    grade: () => 'Grade',
    measure: () => 'What to average',
    units: () => 'Pounds or kilos',
    label: () => 'What 14.8 on a shop label means',
    scale: () => 'What 2.9 on your own scale means',
    'price-unit': () => 'What a bare price is per',
    topic: () => 'What about',
  } as Texts,
  hints: {
    cut: () => 'packer, Boston butt, spares',
    bought: () => example(show, 'bought'),
    trim: () => example(show, 'trim'),
    price: () => example(show, 'price'),
    cooked: () => example(show, 'cooked'),
    scraps: () => example(show, 'scraps'),
    saved: () => example(show, 'saved'),
  } as Texts,
  formMore: () => 'Anything else',
  formMoreHint: () => 'name: value, one a line. shop: Market hall',
  helpTopics: () => 'More with `/help topic:` weights, prices, figures, safety, privacy.',
  keptWithout: ({ options, piece }: { options: readonly string[]; piece?: string }) =>
    `Piece ${piece ?? ''} is kept, without ${options.map((option) => `\`${option}:\``).join(' and ')} so far.`,
  bug: ({ reference }: { reference: string }) =>
    `That is a fault of mine, not yours. Look whether it was kept before you type it again, and please tell whoever runs me: reference ${reference}.`,
  welcome: () => 'Hello! I keep the numbers of what you cook.',
  taken: ({ units, currency }: Pick<Club, 'units' | 'currency'>) =>
    `I took it that this club weighs in ${units === 'lb' ? 'pounds and ounces' : 'kilos and grams'} and pays in ${currency}.`,
  firstLine: () =>
    `Weigh your first piece in: \`/weigh cut:packer bought:${example(show, 'bought')} trim:${example(show, 'trim')}\``,
  askHelp: () => 'More lines to copy: `/help`',
});
