/** What a member reads when something can't be taken: what was read, what is wrong, what would work. */
import type { Problems } from '../../errors.ts';
import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';
import { cutOf } from '../../trade/cuts.ts';
import { quote, quoteOption } from '../quote.ts';
import { csvErrors } from './csv-errors.ts';
import { example } from './examples.ts';
import { fileErrors } from './file-errors.ts';
import { measureErrors, SMALL_WEIGHT, WEIGHT } from './measure-errors.ts';
import { inside } from './names.ts';
import { PARTS } from './parts.ts';

/** `8 oz more than`, `8 oz less than`. */
const apart = (show: Show, difference: Nanograms): string =>
  `${show.weight(Math.abs(difference) as Nanograms)} ${difference < 0 ? 'less' : 'more'} than`;
export const errors = (show: Show): { [Code in keyof Problems]: (values: Problems[Code]) => string } => ({
  ...csvErrors(show),
  ...fileErrors(show),
  ...measureErrors(show),
  'cut-to-buy': ({ option }) =>
    `Of which cut? Add it, like \`cut:packer\`${option === 'cut' ? '' : `, or to the label: \`${option}:${example(show, 'label')} packer\``}.`,
  'people-missing': () =>
    'Who eats? Add `people:40`, and `children:` if there are any; or what you `have:`, to see how many it feeds.',
  'command-unknown': ({ read, near }) =>
    near === null
      ? `I know no ${quote(read)}. Type \`/help\` for what there is.`
      : `I know no ${quote(read)}. Did you mean \`/${near}\`?`,
  'option-unknown': ({ command, read, near }) =>
    near === null
      ? `\`/${command}\` takes \`name:value\`, and ${quote(read)} is neither. See \`/help\`.`
      : `${quote(read)} is no option of \`/${command}\`. Did you mean \`${near}:\`?`,
  'option-twice': ({ option }) => `\`${option}:\` is there twice. Keep only one of them.`,
  'choice-unknown': ({ option, read, choices }) =>
    `${quoteOption(option, read)} is none of ${choices.map(quote).join(', ')}.`,
  'number-unreadable': ({ option, read, low, high }) =>
    `${quoteOption(option, read)} should be a whole number from ${show.count(low)} to ${show.count(high)}.`,
  'person-unreadable': ({ option, read }) =>
    `${quoteOption(option, read)} is nobody I can find. Choose them from the list, or type \`@\` and their name.`,
  'compare-self': () => 'That is you. Leave `member:` out to see yourself beside the rest.',
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
  'cut-to-average': () => 'Which cut? An average over unlike cuts says nothing: add one, like `cut:packer`.',
  'dry-aged': ({ read }) =>
    `${quote(read)}: dry-aged meat lost its water before it was sold, and its crust comes off too, so it can't be compared with fresh meat. I keep no figures of it yet.`,
  'cut-missing': ({ bought }) =>
    `${quoteOption('bought', bought)}: of what? Add the cut, like \`cut:packer\` or \`cut:Boston butt\`.`,
  'bought-missing': ({ cut }) =>
    `${cutOf(cut).name}: what did the label say? Add it, like \`bought:${show.weight(cutOf(cut).usual.low)}\`.`,
  'nothing-told': () =>
    `There is nothing to weigh in that. Add a weight, like \`trim:${show.weight(WEIGHT)}\`.`,
  'grade-unknown': ({ read, grades }) =>
    `${quoteOption('grade', read)} is no grade I know. There are ${grades.map((key) => quote(key.split('/')[1] ?? key)).join(', ')}.`,
  'style-unknown': ({ read, styles }) =>
    `${quoteOption('style', read)} is no style I know. There are ${styles.map((key) => quote(key.split('/')[1] ?? key)).join(', ')}.`,
  'styles-none': ({ read, cut }) =>
    `${quoteOption('style', read)}: ${cutOf(cut).name} has no trimming styles here. Leave the style out.`,
  'part-above-whole': ({ part, weight, whole, of }) =>
    `That can't be: ${show.weight(weight)} ${PARTS[part]} is more than ${show.weight(of)} ${PARTS[whole]}. Which of the two is off?`,
  'nothing-left': ({ trim, of }) =>
    `That can't be: with ${show.weight(trim)} off ${show.weight(of)} nothing is left to cook. Which of the two is off?`,
  'parts-off': ({ scraps, served, cooked, sum }) =>
    `${show.weight(scraps)} thrown away and ${show.weight(served)} on the plate are ${show.weight(sum)}, ${apart(show, (sum - cooked) as Nanograms)} the ${show.weight(cooked)} that came off the heat. Which is off?`,
  'saved-above-trim': ({ saved, trim }) =>
    `That can't be: ${show.weight(saved)} saved is more than the ${show.weight(trim)} that came off. Which of the two is off?`,
  'saved-unreadable': ({ option, read }) =>
    `${quoteOption(option, read)}: write each as a name, a weight and its worth if any, like \`tallow ${show.weight(SMALL_WEIGHT)} @3, grind ${show.weight(SMALL_WEIGHT)}\`.`,
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
  'portion-missing': ({ portions }) =>
    `${show.count(portions)} portions of what size? Add it, like \`portion:${example(show, 'portion')}\`.`,
  'portion-too-large': ({ portion, most }) =>
    `A portion of ${show.weight(portion)} can't be: ${show.weight(most)} is the most here. Write one like \`portion:${example(show, 'portion')}\`.`,
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
  'managers-only': () => 'Only those who manage this server can do that.',
  'question-expired': () =>
    'That question is over 15 minutes old, and nothing more was kept. Type your line again, please.',
  'button-outdated': () => 'That button is from an older version of me. Type the command again, please.',
});
