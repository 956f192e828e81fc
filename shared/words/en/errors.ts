/** What a member reads when something can't be taken: what was read, what is wrong, what would work. */
import type { Problems } from '../../errors.ts';
import { decimalMark, type Show } from '../../measure/show.ts';
import { NANOGRAMS, type Nanograms } from '../../measure/units.ts';
import { HEAVIEST } from '../../measure/weight.ts';
import { cutOf } from '../../trade/cuts.ts';
import { quote, quoteOption } from '../quote.ts';
import { csvErrors } from './csv-errors.ts';
import { example } from './examples.ts';
import { fileErrors } from './file-errors.ts';
import { inside } from './names.ts';
import { PARTS } from './parts.ts';

/** 2 lb 9.4 oz, or 1.17 kg. */
const EXAMPLE = ((NANOGRAMS.oz * 414) / 10) as Nanograms;
/** 9.4 oz, or 266 g. */
const SMALL_EXAMPLE = ((NANOGRAMS.oz * 94) / 10) as Nanograms;

/** A weight that works, as this reader would write it. */
const weightExample = (show: Show): string => `\`${show.weight(EXAMPLE)}\``;
/** `8 oz more than`, `8 oz less than`. */
const apart = (show: Show, difference: Nanograms): string =>
  `${show.weight(Math.abs(difference) as Nanograms)} ${difference < 0 ? 'less' : 'more'} than`;
const amountExample = (show: Show): string => (decimalMark(show.form.locale) === ',' ? '4,99' : '4.99');
/** A price that works, as this reader would write it. */
const priceExample = (show: Show): string => `\`${amountExample(show)}/${show.form.units}\``;

export const errors = (show: Show): { [Code in keyof Problems]: (values: Problems[Code]) => string } => ({
  ...csvErrors(show),
  ...fileErrors(show),
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
  'pan-unknown': ({ option, read, name, pans }) =>
    pans.length === 0
      ? `${quoteOption(option, read)}: you have no pan called ${quote(name)}, nor any other yet. Take its weight off, like \`${show.weight(EXAMPLE)} - ${show.weight(SMALL_EXAMPLE)}\`.`
      : `${quoteOption(option, read)}: you have no pan called ${quote(name)}. You have ${pans.map(quote).join(', ')}.`,
  'pan-no-letter': ({ option, read }) =>
    `${quoteOption(option, read)}: the name of a pan needs a letter. Call it something like \`blue pan\`.`,
  'pan-too-long': ({ option, read, most }) =>
    `${quoteOption(option, read)} is too long: a name has at most ${show.count(most)} characters. Call it something like \`blue pan\`.`,
  'pan-signs': ({ option, read }) =>
    `${quoteOption(option, read)}: a name has only letters, digits and spaces. Call it something like \`blue pan\`.`,
  'pan-reads-as-weight': ({ option, read }) =>
    `${quoteOption(option, read)} could be taken for part of a weight. Call it something like \`blue pan\`.`,
  'price-unreadable': ({ option, read, part }) =>
    `I can't read ${quoteOption(option, read)} as a price${part === '' ? '' : `: ${quote(part)} is what stops me`}. Write it like ${priceExample(show)}.`,
  'price-negative': ({ option, read }) =>
    `${quoteOption(option, read)} is less than nothing. Write a price like ${priceExample(show)}.`,
  'price-decimals': ({ option, read }) =>
    `${quoteOption(option, read)} has more than four decimals. Write it like ${priceExample(show)}.`,
  'price-too-high': ({ option, read }) =>
    `${quoteOption(option, read)} is more than I take. Write a price like ${priceExample(show)}.`,
  'price-sign': ({ option, read, sign }) =>
    `${quoteOption(option, read)}: ${quote(sign)} is not this club's currency, and several have it. Write the code, like \`USD ${amountExample(show)}/${show.form.units}\`.`,
  'price-two-currencies': ({ option, read }) =>
    `${quoteOption(option, read)} has two currencies. Write one of them, like \`USD ${amountExample(show)}/${show.form.units}\`.`,
  'price-basis': ({ option, read, unit }) =>
    `${quoteOption(option, read)}: I take prices per pound, ounce, kilo or 100 g, not per ${quote(unit)}. Write it like ${priceExample(show)}.`,
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
  'cut-to-buy': ({ option }) =>
    `Of which cut? Add it, like \`cut:packer\`${option === 'cut' ? '' : `, or to the label: \`${option}:${example(show, 'label')} packer\``}.`,
  'people-missing': () =>
    'Who eats? Add `people:40`, and `children:` if there are any; or what you `have:`, to see how many it feeds.',
  'day-unreadable': ({ option, read }) =>
    `I can't read ${quoteOption(option, read)} as a day. Write it like \`2026-07-04\`, \`4 July\` or \`yesterday\`.`,
  'day-not-there': ({ option, read }) =>
    `There is no day like ${quoteOption(option, read)}. Write it like \`2026-07-04\` or \`4 July\`.`,
  'day-ahead': ({ option, read, today }) =>
    `${quoteOption(option, read)} is still to come: today is ${show.day(today)}. Write a day like \`yesterday\` or \`4 July\`.`,
  'day-too-old': ({ option, read }) =>
    `${quoteOption(option, read)} is before 1970. Write a day like \`2026-07-04\` or \`yesterday\`.`,
  'command-unknown': ({ read, near }) =>
    near === null
      ? `I know no ${quote(read)}. Type \`/help\` for what there is.`
      : `I know no ${quote(read)}. Did you mean \`/${near}\`?`,
  'option-unknown': ({ command, read, near }) =>
    near === null
      ? `\`/${command}\` takes \`name:value\`, and ${quote(read)} is neither. See \`/help\`.`
      : `${quote(read)} is no option of \`/${command}\`. Did you mean \`${near}:\`?`,
  'option-twice': ({ option }) => `\`${option}:\` stands there twice. Leave one of them.`,
  'choice-unknown': ({ option, read, choices }) =>
    `${quoteOption(option, read)} is none of ${choices.map(quote).join(', ')}.`,
  'number-unreadable': ({ option, read, low, high }) =>
    `${quoteOption(option, read)} should be a whole number from ${show.count(low)} to ${show.count(high)}.`,
  'person-unreadable': ({ option, read }) =>
    `${quoteOption(option, read)} is nobody I can find. Choose them from the list, or type \`@\` and their name.`,
  'compare-self': () =>
    'You stand exactly where you stand. Leave `member:` out to see yourself beside the rest.',
  'compare-hidden': ({ member }) =>
    member === null
      ? 'You asked not to be shown, so I show no comparison of yours. `/compare` alone is for your eyes only.'
      : `<@${member}> asked not to be shown, so I compare nobody with them.`,
  'none-to-compare': ({ member, cut }) =>
    member === null
      ? `You have no piece of ${inside(cut)} here yet that could be compared: weigh one in with what came off.`
      : `<@${member}> has no piece of ${inside(cut)} here yet that could be compared with one of yours.`,
  'text-empty': ({ option }) =>
    `\`${option}:\` has nothing in it that can be seen. Write it anew, or leave it out.`,
  'text-too-long': ({ option, length, limit }) =>
    `\`${option}:\` has ${show.count(length)} characters; ${show.count(limit)} is the most I keep.`,
  'nothing-to-take-back': ({ option }) =>
    `\`${option}:-\` takes a weight back, so say from which piece: \`piece:12 ${option}:-\`.`,
  'cut-unknown': ({ read, near }) =>
    near.length === 0
      ? `I know no cut called ${quote(read)}. Start typing it after \`cut:\` and choose from the list.`
      : `I know no cut called ${quote(read)}. Near it: ${near.map((key) => quote(cutOf(key).name)).join(', ')}.`,
  'own-cut-missing': () => 'What is that cut called? Add it, like `add:smoked short plate`.',
  'own-cut-no-letter': ({ option, read }) =>
    `${quoteOption(option, read)}: the name of a cut needs a letter. Call it something like \`smoked short plate\`.`,
  'own-cut-too-long': ({ option, read, most }) =>
    `${quoteOption(option, read)} is too long: a name has at most ${show.count(most)} characters. Call it something like \`smoked short plate\`.`,
  'own-cut-signs': ({ option, read }) =>
    `${quoteOption(option, read)}: a name has only letters, digits, spaces and dashes. Call it something like \`smoked short plate\`.`,
  'own-cut-known': ({ read, cuts }) =>
    `I know ${quote(read)} already: ${cuts.map((key) => quote(cutOf(key).name)).join(', ')}. Weigh it in under that, or give yours a longer name.`,
  'own-cut-twice': ({ read, cut }) =>
    `This club has ${quote(cutOf(cut).name)} of another animal already. Give ${quote(read)} another name, or take that one off the list first: \`remove:${cutOf(cut).name}\`.`,
  'own-cut-species': ({ read }) => `${quote(read)}: of what animal? Add it, like \`species:Pork\`.`,
  'own-cuts-full': ({ read, most }) =>
    `A club has at most ${show.count(most)} cuts of its own. Take one off the list before ${quote(read)}, with \`/club cuts remove:\`.`,
  'own-cut-unknown': ({ read }) =>
    `${quote(read)} is none of the cuts that this club added. A manager sees and adds them with \`/club cuts\`.`,
  'cut-to-average': () => 'Which cut? Unlike cuts do not average to anything: add one, like `cut:packer`.',
  'dry-aged': ({ read }) =>
    `${quote(read)}: dry-aged meat lost its water before it was sold, and its crust comes off too, so it fits beside no fresh piece. I keep no figures of it yet.`,
  'cut-missing': ({ bought }) =>
    `${quoteOption('bought', bought)}: of what? Add the cut, like \`cut:packer\` or \`cut:Boston butt\`.`,
  'bought-missing': ({ cut }) =>
    `${cutOf(cut).name}: what did the label say? Add it, like \`bought:${show.weight(cutOf(cut).usual.low)}\`.`,
  'nothing-told': () => `Nothing to weigh in there. Add a weight, like \`trim:${show.weight(EXAMPLE)}\`.`,
  'grade-unknown': ({ read, grades }) =>
    `${quoteOption('grade', read)} is no grade I know. There are ${grades.map((key) => quote(key.split('/')[1] ?? key)).join(', ')}.`,
  'style-unknown': ({ read, styles }) =>
    `${quoteOption('style', read)} is no style I know. There are ${styles.map((key) => quote(key.split('/')[1] ?? key)).join(', ')}.`,
  'styles-none': ({ read, cut }) =>
    `${quoteOption('style', read)}: nobody trims ${cutOf(cut).name} by a measure here. Leave the style out.`,
  'part-above-whole': ({ part, weight, whole, of }) =>
    `That can't be: ${show.weight(weight)} ${PARTS[part]} is more than ${show.weight(of)} ${PARTS[whole]}. Which of the two is off?`,
  'nothing-left': ({ trim, of }) =>
    `That can't be: with ${show.weight(trim)} off ${show.weight(of)} nothing is left to cook. Which of the two is off?`,
  'weight-zero': ({ option }) => `\`${option}:0\` can't be. Leave it out if it was not weighed.`,
  'parts-off': ({ scraps, served, cooked, sum }) =>
    `${show.weight(scraps)} thrown away and ${show.weight(served)} on the plate are ${show.weight(sum)}, ${apart(show, (sum - cooked) as Nanograms)} the ${show.weight(cooked)} that came off the heat. Which is off?`,
  'saved-above-trim': ({ saved, trim }) =>
    `That can't be: ${show.weight(saved)} saved is more than the ${show.weight(trim)} that came off. Which of the two is off?`,
  'saved-unreadable': ({ option, read }) =>
    `${quoteOption(option, read)}: write each as a name, a weight and its worth if any, like \`tallow ${show.weight(SMALL_EXAMPLE)} @3, grind ${show.weight(SMALL_EXAMPLE)}\`.`,
  'parts-missing': () =>
    `Which parts was it cut into? Add them, like \`parts:${example(show, 'parts')}\`, or what is \`usable:\`.`,
  'parts-too-many': ({ count, most }) =>
    `Those are ${show.count(count)} parts; I take ${show.count(most)}. Weigh some of them together.`,
  'parts-sum': ({ parts, usable, loss, of, difference }) => {
    const told = [
      `${show.weight(parts)} in parts`,
      ...(usable === null ? [] : [`${show.weight(usable)} usable`]),
      ...(loss === null ? [] : [`${show.weight(loss)} lost in cutting`]),
    ];
    const sum = (of + difference) as Nanograms;
    const all = told.length === 1 ? '' : `: ${show.weight(sum)} together`;
    return `${told.join(', ')}${all}. That is ${apart(show, difference)} the ${show.weight(of)} there was. Which is off?`;
  },
  'cooked-missing': ({ scraps }) =>
    `${show.weight(scraps)} thrown away, of what? Add what came off the heat, like \`cooked:${example(show, 'cooked')}\`.`,
  'currency-mixed': ({ name, currency, paid }) =>
    `${name === null ? 'That price' : quote(name)} is in ${currency}, and the piece in ${paid}. I know no rates of exchange: write one currency.`,
  'credit-above-paid': ({ credit, paid }) =>
    `The parts are worth ${show.money(credit)}, more than the ${show.money(paid)} paid for all of it. Which price is off?`,
  'price-missing': () => `What was paid for it? Add it, like \`price:${example(show, 'price')}\`.`,
  'portion-missing': ({ portions }) =>
    `${show.count(portions)} portions of what size? Add it, like \`portion:${example(show, 'portion')}\`.`,
  'portion-too-large': ({ portion, most }) =>
    `A portion of ${show.weight(portion)} can't be: ${show.weight(most)} is the most here. Write one like \`portion:${example(show, 'portion')}\`.`,
  'pan-above-weight': ({ option, weight, pan }) =>
    `\`${option}:\` is ${show.weight(weight)} and the pan alone ${show.weight(pan)}. Was the pan on the scale?`,
  'pan-weight-missing': ({ name }) =>
    `What does ${quote(name)} weigh empty? Add it, like \`weight:${show.weight(SMALL_EXAMPLE)}\`.`,
  'pan-name-missing': () => 'What do you call that pan? Add it, like `name:blue pan`.',
  'pans-none': ({ read }) => `\`pans:${read}\` of which pan? Add it, like \`pan:blue pan\`.`,
  'piece-unknown': ({ read }) => `This club has no piece ${quote(read)}. The number stands under each card.`,
  'why-missing': ({ seq }) =>
    `Why? Its member is told. Add a few words, like \`piece:${show.count(seq)} why:a slip of the decimal point\`.`,
  'piece-missing': () => 'Which piece? Add its number, like `piece:12`.',
  'points-unreadable': ({ option, read, low, high }) =>
    `${quoteOption(option, read)}: write points from ${show.oneDecimal(low)} to ${show.count(high)}, with at most one digit after the mark, like \`${option}:${show.oneDecimal(2.5)}\`.`,
  'percent-unreadable': ({ option, read, low, high }) =>
    `${quoteOption(option, read)}: write per cent from ${show.count(low)} to ${show.count(high)}, with at most one digit after the mark, like \`${option}:${show.oneDecimal(1.5)}\`.`,
  'currency-unknown': ({ option, read }) =>
    `${quoteOption(option, read)} is no currency I know. Write its three letters, like \`${option}:USD\` or \`${option}:EUR\`.`,
  'zone-unknown': ({ option, read, near }) =>
    `${quoteOption(option, read)} is no time zone I know. ${near.length === 0 ? `Start typing a city near you after \`${option}:\` and choose from the list, like \`${option}:America/Chicago\`.` : `Near it: ${near.map(quote).join(', ')}.`}`,
  'month-unreadable': ({ option, read }) =>
    `${quoteOption(option, read)} is no month. Write its name or its number, like \`${option}:April\` or \`${option}:4\`.`,
  'locale-unknown': ({ option, read }) =>
    `${quoteOption(option, read)} is no language and country I know. Write it like \`${option}:en-GB\`, or choose from the list.`,
  'no-pieces': () => 'You have no pieces here yet. Weigh one in with `/weigh`.',
  'piece-removed': () =>
    'That piece was taken back, so it is not kept again. Type its line anew to start another.',
  'piece-not-yours': ({ seq }) =>
    `Piece ${show.count(seq)} is somebody else's: only they can add to it or mend it.`,
  'no-open-piece': () =>
    'You have no piece waiting for more weights. Start one with its cut and the weight on its label.',
  'already-weighed': ({ seq, option, weight }) =>
    `Piece ${show.count(seq)} has its \`${option}:\` already: ${show.weight(weight)}. To change it, name the piece: \`/weigh piece:${seq} ${option}:…\``,
  'erase-unsure': ({ typed, pieces }) =>
    `You typed ${show.count(typed)}, and ${show.count(pieces)} would go. Nothing was erased.`,
  'not-yours': () =>
    'That button is for somebody else to press. Type the command yourself for one of your own.',
  'managers-only': () => 'Only who manages this server may do that.',
  'question-expired': () =>
    'That question is over 15 minutes old, and nothing more was kept. Type your line again, please.',
  'button-outdated': () => 'That button is from an older version of me. Type the command again, please.',
});
