/** How it works, in lines to copy. Examples are invented. */
import type { Show } from '../../measure/show.ts';
import { book } from './book.ts';
import { cautions } from './cautions.ts';
import { type Example, example } from './examples.ts';

export const HELP_TOPICS = [
  'start',
  'weights',
  'prices',
  'figures',
  'debates',
  'safety',
  'privacy',
  'managers',
] as const;
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
        'Who does best: `/board`. You beside the rest: `/compare`; name a member, and both are shown once they say yes.',
        `In the shop: \`/shop cut:packer one:${of('label')}\`, and \`two:\` up to \`five:\` beside it.`,
        'How much to buy: `/feed people:40 cut:packer`; how many it feeds: `/feed cut:packer have:14 lb`',
        'Your pieces: `/piece show`, `/piece fix`, `/piece remove`, `/piece list`. Yours: `/mine season`, `/mine units`, `/mine pans`, `/mine habits`.',
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
        `What the usable meat and a portion cost: \`/piece parts parts:${of('parts')} portion:${of('portion')}\``,
        "`$` is this club's own currency. Another one by its code: `CAD 12.50/kg`",
      ],
    },
    figures: {
      answer: () => 'Every share has a name, and a weight that it is a share of.',
      lines: () => [
        'Came off: of what was bought. Kept in the heat: off the heat, of what went in.',
        'Kept at the board: on the plate, of what came off the heat. On the plate: of what was bought.',
        'Off the average piece: each piece counts once. Of every 100 bought: each pound or kilo counts once.',
        'Cost on the plate: paid, less the worth of what was saved, over what is on the plate; in this club’s currency alone. `/average measure:cost`, `/board ranking:value`',
        'Bag juice, if you weigh the piece out of its bag, is neither trim nor lost in the heat.',
        `The book beside the club’s figures: ${book(show).sources().join(' ')}`,
      ],
    },
    debates: {
      answer: () => 'A debate is settled by each person’s own big and small pieces, not by who cooks what.',
      lines: () => [
        'Ask: `/debate`, `/debate question:grade cut:packer`, `/debate question:wrap`. The picture shows everyone’s own line.',
        'So far: right 19 times in 20. Settled: right 99 times in 100, looked at only after 25, 50, 100, 200 ... pieces, since a look after every piece would take luck for an answer.',
        'Too early is no shrug: it says what to bet on, what is at stake on one piece, and whose next piece would teach most.',
        'Unusual pieces wait, out of every figure, until their member stands by them. The methods with their sources: METHODS.md.',
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
        'Averages are computed from the pieces each time they change. `quiet:yes` answers you alone; the piece still counts.',
        'Your own pieces as a file: `/mine export`',
        'Out of boards and pictures: `/mine hide`. Your pieces without your name: `/mine leave`. All of it gone: `/mine erase`, here or everywhere.',
        'What is erased is out of the file and the newest backup within a day, and out of the older backups within 14. All of it in ten lines: PRIVACY.md',
      ],
    },
    managers: {
      answer: () =>
        'For those who manage the server: settings, and pieces that need a second look. Only they see the answers.',
      lines: () => [
        'How the club likes its figures: `/club show`. To change it: `/club set units:Kilos and grams`, `/club set season:April`',
        'A cut that I do not know: `/club cuts add:smoked short plate species:Beef`',
        'Pieces that are unusual here and in no figure yet: `/club waiting`',
        'Somebody else’s slip, mended with a reason: `/club fix piece:12 trim:2 lb 9 oz why:typed twice`',
        'A piece that should never count: `/club aside piece:12 why:weighed in its tray`, and back in with `/club aside piece:12 why:-`',
        'A table of pieces, in and out: `/club import`, `/club export`',
        'For a member who left and asks for it, or for the whole club: `/club erase`',
      ],
    },
  };
};
