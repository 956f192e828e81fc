/** A member's own settings in words. */
import type { Member, Pan } from '../../club/member.ts';
import type { Show } from '../../measure/show.ts';
import type { Units } from '../../measure/units.ts';
import { quote } from '../quote.ts';
import { example } from './examples.ts';
import { WEIGHS_IN } from './measures.ts';

export const mine = (show: Show) => {
  const decimals = (meaning: Member['labelDecimals'], as: { decimal: string; ounces: string }) =>
    meaning === null ? 'I ask' : as[meaning];
  return {
    units: ({ units }: { units: Units | null }) =>
      units === null
        ? 'You have not said yet whether you weigh in pounds or in kilos.'
        : `You weigh in ${WEIGHS_IN[units]}.`,
    unitsHow: () => 'Change it with `/mine units units:`. What you have weighed in stays as it is.',
    panKept: ({ pan }: { pan: Pan }) =>
      `${quote(pan.name)} weighs ${show.echo(pan.weight)}. I will take it off when you say so.`,
    panUse: ({ pan }: { pan: Pan }) =>
      `Use it like \`trim:${example(show, 'gross')} - ${pan.name}\`, or with \`pan:${pan.name}\`.`,
    panGone: ({ name }: { name: string }) => `I have forgotten ${quote(name)}.`,
    panNotThere: ({ name }: { name: string }) => `You have no pan called ${quote(name)}.`,
    pans: ({ count }: { count: number }) =>
      count === 0 ? 'You have no pans yet.' : `Your pans: ${show.count(count)}.`,
    pan: ({ pan }: { pan: Pan }) => `${quote(pan.name)} ${show.echo(pan.weight)}`,
    pansHow: () => `Weigh one empty and keep it: \`/mine pans name:blue pan weight:${example(show, 'pan')}\``,
    habits: () => 'What I take for granted from you:',
    label: ({ meaning }: { meaning: Member['labelDecimals'] }) =>
      `\`bought:14.8\` in pounds: ${decimals(meaning, { decimal: '14.80 lb', ounces: '14 lb 8 oz' })}.`,
    scale: ({ meaning }: { meaning: Member['scaleDecimals'] }) =>
      `\`trim:2.9\` in pounds: ${decimals(meaning, { decimal: '2.90 lb', ounces: '2 lb 9 oz' })}.`,
    priceUnit: ({ unit }: { unit: Units }) => `\`price:@ 4.99\`: a ${unit === 'lb' ? 'pound' : 'kilo'}.`,
    habitsHow: () => 'Change them with the options of `/mine habits`.',
  };
};
