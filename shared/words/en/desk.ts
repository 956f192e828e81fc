/** What is said around every command: the first time in a club, the way out of a question, a bug's reference. */
import type { Club } from '../../club/club.ts';
import type { Show } from '../../measure/show.ts';

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
    measure: () => 'What to average',
    units: () => 'Pounds or kilos',
    label: () => 'What 14.8 on a shop label means',
    scale: () => 'What 2.9 on your own scale means',
    'price-unit': () => 'What a bare price is per',
    topic: () => 'What about',
  } as Texts,
  hints: {
    cut: () => 'packer, Boston butt, spares',
    bought: () => (show.form.units === 'lb' ? '14.83 lb' : '6.72 kg'),
    trim: () => (show.form.units === 'lb' ? '2 lb 9.4 oz' : '1180 g'),
    price: () => (show.form.units === 'lb' ? '4.99/lb' : '11.95/kg'),
    cooked: () => (show.form.units === 'lb' ? '7 lb 11 oz' : '3.49 kg'),
    saved: () =>
      show.form.units === 'lb' ? 'tallow 1 lb 2 oz @3, grind 12 oz' : 'tallow 500 g @6.50, grind 340 g',
    scraps: () => (show.form.units === 'lb' ? '12 oz' : '340 g'),
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
    `Weigh your first piece in: \`/weigh cut:packer bought:${show.form.units === 'lb' ? '14.83 lb trim:2 lb 9.4 oz' : '6.72 kg trim:1180 g'}\``,
  askHelp: () => 'More lines to copy: `/help`',
});
