/** The words in pictures, and what stands for a picture to who can't see it. */

import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';

const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What happened to the weight; each stands before its figure. */
const stages = {
  bought: () => 'bought',
  juice: () => 'bag juice',
  trim: () => 'came off',
  added: () => 'put in',
  left: () => 'left to cook',
  intoHeat: () => 'into the heat',
  heat: () => 'lost in the heat',
  cooked: () => 'off the heat',
  scraps: () => 'thrown away',
  served: () => 'on the plate',
};

const whereItWent = (show: Show) => ({
  title: () => 'Where the weight went',
  stages,
  /** Stages that take away, where the scale says that they gave. */
  gained: {
    juice: () => 'heavier than its label',
    trim: () => 'gained at the knife',
    heat: () => 'gained in the heat',
    scraps: () => 'gained at the board',
  },
  /** `late`: something after it was weighed, so that it can't be any more. */
  notWeighed: ({ late }: { late: boolean }) => (late ? 'not weighed' : 'not weighed yet'),
  kept: ({ cookingYield, carvingYield }: { cookingYield: number | null; carvingYield: number | null }) => {
    const parts = [
      ...(cookingYield === null ? [] : [`kept in the heat: ${show.share(cookingYield)}`]),
      ...(carvingYield === null ? [] : [`kept at the board: ${show.share(carvingYield)}`]),
    ];
    return parts.length === 0 ? null : sentence(parts.join(', '));
  },
  altHead: ({ about }: { about: string }) =>
    `Where the weight went. ${about}. Shares are of the weight bought.`,
  /** `share` is null for what was bought, of which the others are shares. */
  altStage: ({ name, weight, share }: { name: string; weight: Nanograms; share: number | null }) =>
    `${sentence(name)}: ${show.weight(weight)}${share === null ? '' : `, ${show.share(share)}`}.`,
  altNotWeighed: ({ name, late }: { name: string; late: boolean }) =>
    `${sentence(name)}: ${late ? 'not weighed' : 'not weighed yet'}.`,
});

/** The words of every picture, one part a picture. */
export const pictures = (show: Show) => ({ whereItWent: whereItWent(show) });

/** What the other languages' words must have as well. */
export type PictureWords = ReturnType<typeof pictures>;
