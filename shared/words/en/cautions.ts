/** Cautions, each worded here alone. Local rules come first wherever food is sold or served to the public. */
import type { Show } from '../../measure/show.ts';
import {
  type CautionCode,
  COOLING,
  DANGER_ZONE,
  FRIDGE_DAYS,
  leastInside,
  REHEATED,
  type Temperature,
  THAWING,
} from '../../trade/cautions.ts';

/** `145 °F (63 °C)`, the reader's own first. */
const degrees = (show: Show, { fahrenheit, celsius }: Temperature): string =>
  show.form.units === 'lb' ? `${fahrenheit} °F (${celsius} °C)` : `${celsius} °C (${fahrenheit} °F)`;

export const cautions = (show: Show): Record<CautionCode, () => string> => {
  const whole = leastInside('beef', false);
  const aDay = show.form.units === 'lb' ? `${THAWING.poundsADay} lb` : `${THAWING.kilosADay} kg`;
  return {
    thawing: () =>
      `Thaw in the fridge, a day for every ${aDay}, or in cold water changed every ${THAWING.waterMinutes} minutes.`,
    knife: () => 'A sharp knife, cutting away from you.',
    'raw-trimmings': () =>
      `Raw trimmings: cold within ${DANGER_ZONE.hours} hours, ${DANGER_ZONE.hoursOnHotDay} above ${degrees(show, DANGER_ZONE.hotDay)}; use or freeze within ${FRIDGE_DAYS.rawTrimmings} days.`,
    rendering: () =>
      'Rendering fat: stay with it, lid at hand. If it burns: lid on, heat off, leave it covered until cool; never water.',
    inside: () =>
      `Inside: whole beef, pork, lamb, goat, veal ${degrees(show, whole)} and ${whole.restMinutes} minutes rest; ground meat and game ${degrees(show, leastInside('beef', true))}; poultry and game birds ${degrees(show, leastInside('poultry', false))}.`,
    holding: () => `Held hot: ${degrees(show, DANGER_ZONE.to)} or more.`,
    cooling: () =>
      `Cooling: from ${degrees(show, COOLING.from)} to ${degrees(show, COOLING.by)} within ${COOLING.hours} hours, to ${degrees(show, COOLING.to)} within ${COOLING.hoursInAll} in all.`,
    leftovers: () =>
      `Leftovers: ${FRIDGE_DAYS.cooked} days in the fridge, reheated to ${degrees(show, REHEATED)}.`,
    'local-rules': () =>
      'Short cautions; local rules and licensed practice come first where food is sold or served to the public.',
  };
};
