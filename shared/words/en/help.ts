/** How it works, in lines to copy. Examples are invented. */
import type { Show } from '../../measure/show.ts';
import { cautions } from './cautions.ts';
import { type Example, example } from './examples.ts';

export const HELP_TOPICS = ['start', 'weights', 'prices', 'figures', 'safety', 'privacy'] as const;
export type HelpTopic = (typeof HELP_TOPICS)[number];

export const help = (
  show: Show,
): Record<HelpTopic, { answer: () => string; lines: () => readonly string[] }> => {
  const of = (what: Example) => example(show, what);
  const say = cautions(show);
  return {
    start: {
      answer: () => 'One thing on the scale at a time; I keep the rest.',
      lines: () => [
        `Start a piece: \`/weigh cut:packer bought:${of('bought')} trim:${of('trim')} price:${of('price')}\``,
        `Next day, off the heat: \`/weigh cooked:${of('cooked')} scraps:${of('scraps')}\``,
        "The club's figures: `/average` or `/average cut:packer measure:On the plate`",
        'Your pieces: `/piece show`, `/piece fix`, `/piece remove`, `/piece list`. Yours: `/mine units`, `/mine pans`, `/mine habits`.',
      ],
    },
    weights: {
      answer: () => 'Write a weight as you read it; with a unit nothing needs asking.',
      lines: () => [
        '`14.83 lb`  `2 lb 9.4 oz`  `2:9.4`  `14 3/4 lb`  `41 oz`  `6.72 kg`  `6720 g`',
        'Sums and pans: `8.41 lb + 7.96 lb`  `3 lb 2 oz - blue pan`. An estimate: `about 14.5 lb`',
        'Where two careful people could read it differently, like `14.10`, I ask. `/mine habits` ends that.',
        'Nothing came off: `0`. Taking a weight back: `/weigh piece:12 trim:-`',
      ],
    },
    prices: {
      answer: () => 'A price is per weight or in all: say which.',
      lines: () => [
        'Per weight: `4.99/lb`  `4.99 a pound`  `@ 4.99`  `1.29/100g`',
        'In all: `for 74.00`  `74.00 in all`',
        "`$` is this club's own currency. Another one by its code: `CAD 12.50/kg`",
      ],
    },
    figures: {
      answer: () => 'Every share has a name, and a weight that it is a share of.',
      lines: () => [
        'Came off: of what was bought. Kept in the heat: off the heat, of what went in.',
        'Kept at the board: on the plate, of what came off the heat. On the plate: of what was bought.',
        'Off the average piece: each piece counts once. Of every 100 bought: each pound or kilo counts once.',
        'Bag juice, if you weigh the piece out of its bag, is neither trim nor lost in the heat.',
      ],
    },
    safety: {
      answer: say['local-rules'],
      lines: () => [
        say.inside(),
        `${say.thawing()} ${say['raw-trimmings']()}`,
        `${say.holding()} ${say.cooling()} ${say.leftovers()}`,
        `${say.rendering()} ${say.knife()}`,
      ],
    },
    privacy: {
      answer: () =>
        'I keep your member id, weights, prices, shops and notes as you typed them: no names, no messages.',
      lines: () => [
        'They stay with whoever runs me, per club, and go nowhere else. Pictures are drawn here.',
        'Averages are computed from the pieces each time they change.',
        '`quiet:yes` answers you alone; the piece still counts in the averages.',
      ],
    },
  };
};
