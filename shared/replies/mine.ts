/** A member's own settings, told to them alone. */
import type { Reply } from '../chat/reply.ts';
import type { Member, Pan } from '../club/member.ts';
import { grams, type Units } from '../measure/units.ts';
import type { Speech } from '../words/index.ts';

/** What a member weighs in. */
export const unitsTold = ({ units }: Member, { mine }: Speech): Reply => ({
  answer: mine.units({ units }),
  small: [mine.unitsHow()],
  figures: { units },
});

/** A pan that was just kept, and how to use it. */
export const panKept = (pan: Pan, { mine }: Speech): Reply => ({
  answer: mine.panKept({ pan }),
  small: [mine.panUse({ pan })],
  figures: panFigures(pan),
});

/** A pan that was just forgotten; `there`: whether there was one. */
export const panForgotten = (name: string, there: boolean, { mine }: Speech): Reply => ({
  answer: there ? mine.panGone({ name }) : mine.panNotThere({ name }),
  figures: { removed: there },
});

/** A member's pans. */
export const pansTold = (pans: readonly Pan[], { mine }: Speech): Reply => ({
  answer: mine.pans({ count: pans.length }),
  lines: pans.map((pan) => mine.pan({ pan })),
  small: [mine.pansHow()],
  figures: { pans: pans.map(panFigures) },
});

const panFigures = ({ name, weight }: Pan) => ({ name, grams: grams(weight) });

/** What is taken for granted of a member. */
export const habitsTold = (
  { labelDecimals, scaleDecimals }: Member,
  priceUnit: Units,
  { mine }: Speech,
): Reply => ({
  answer: mine.habits(),
  lines: [
    mine.label({ meaning: labelDecimals }),
    mine.scale({ meaning: scaleDecimals }),
    mine.priceUnit({ unit: priceUnit }),
  ],
  small: [mine.habitsHow()],
  figures: { labelDecimals, scaleDecimals, priceUnit },
});
