/** What is said around every command: the first time in a club, the way out of a question, a bug's reference. */
import type { Club } from '../../club/club.ts';
import type { Show } from '../../measure/show.ts';
import { example } from './examples.ts';
import { WEIGHS_IN } from './measures.ts';

type Texts = Readonly<Record<string, () => string>>;

export const desk = (show: Show) => ({
  fixIt: () => 'Fix it',
  formTitle: ({ command }: { command: string }) => (command === 'weigh' ? 'Weigh a piece in' : `/${command}`),
  /** The inputs of forms, by option. */
  inputs: {
    cut: () => 'Cut',
    bought: () => 'Weight on the label',
    one: () => 'A label: weight, @ price, grade',
    two: () => 'Another label',
    three: () => 'A third one',
    people: () => 'How many eat',
    have: () => 'Or what you have already',
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
    parts: () => 'Parts, one a line: name, weight, @ its worth',
    usable: () => 'Usable: left to cook or sell',
    portion: () => 'Size of a portion',
    question: () => 'The question: size, grade, style, bone ...',
    of: () => 'Lost where: trim, cooking, plate',
    units: () => 'Pounds or kilos',
    label: () => 'What 14.8 on a shop label means',
    scale: () => 'What 2.9 on your own scale means',
    'price-unit': () => 'What a bare price is per',
    season: () => 'Which season',
    ranking: () => 'Ranking: plate, trim, value or most',
    member: () => 'Somebody to compare with',
    topic: () => 'What about',
    hidden: () => 'Hidden: yes or no',
    where: () => 'Where: here or everywhere',
    sure: () => 'How many pieces go? Type the number',
    margin: () => 'Differences that count, in points',
    'scale-error': () => 'How far scales may be off, in per cent',
    currency: () => 'Currency: its three letters',
    format: () => 'Format: csv or json',
    why: () => 'Why? Its member is told',
    add: () => 'What the cut is called',
    species: () => 'Of what animal: beef, pork, lamb ...',
    remove: () => 'A cut to take off the list',
  } as Texts,
  hints: {
    one: () => example(show, 'label'),
    cut: () => 'packer, Boston butt, spares',
    bought: () => example(show, 'bought'),
    trim: () => example(show, 'trim'),
    price: () => example(show, 'price'),
    cooked: () => example(show, 'cooked'),
    scraps: () => example(show, 'scraps'),
    saved: () => example(show, 'saved'),
    parts: () => example(show, 'parts'),
    portion: () => example(show, 'portion'),
  } as Texts,
  formMore: () => 'Anything else',
  formMoreHint: () => 'name: value, one a line. shop: Market hall',
  helpTopics: () => 'More with `/help topic:` weights, prices, figures, debates, safety, privacy, managers.',
  keptWithout: ({ options, piece }: { options: readonly string[]; piece?: string }) =>
    `Piece ${piece ?? ''} is kept, without ${options.map((option) => `\`${option}:\``).join(' and ')} so far.`,
  bug: ({ reference }: { reference: string }) =>
    `That is a fault of mine, not yours. Look whether it was kept before you type it again, and please tell whoever runs me: reference ${reference}.`,
  welcome: () => 'Hello! I keep the numbers of what you cook.',
  taken: ({ units, currency }: Pick<Club, 'units' | 'currency'>) =>
    `I took it that this club weighs in ${WEIGHS_IN[units]} and pays in ${currency}. A manager can change that: \`/club set\``,
  firstLine: () =>
    `Weigh your first piece in: \`/weigh cut:packer bought:${example(show, 'bought')} trim:${example(show, 'trim')}\``,
  askHelp: () => 'More lines to copy: `/help`',
});
