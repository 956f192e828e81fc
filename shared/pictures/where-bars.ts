/** The bars of *where the weight went*: one a stage, each over the whole length of what was bought. */
import { GROUND, OKABE_ITO, OUTLINE, PALE_BLUE, TRACK } from './palette.ts';
import type { Json } from './picture.ts';
import { gained, type Stage } from './stages.ts';

/** What is there, what went, what was put in: each also stands in words beside its bar. */
export const KEPT = OKABE_ITO.blue;

/** What went. */
export const LOST = OKABE_ITO.vermillion;
const GAINED = OKABE_ITO.green;

/** Layout pixels. */
const BAR = 24;

/** How the bar of a stage looks: filled where known, an empty outline where not. */
function look(stage: Stage): { fill: string; edge: string; edgeWidth: number } {
  if (!stage.known || stage.grams === null) return { fill: GROUND, edge: OUTLINE, edgeWidth: 2 };
  if (stage.kind === 'total') return { fill: KEPT, edge: KEPT, edgeWidth: 0 };
  const fill = stage.name === 'added' || gained(stage) ? GAINED : LOST;
  return { fill, edge: fill, edgeWidth: 0 };
}

const upwards = ([a, b]: Stage['span']): [number, number] => [Math.min(a, b), Math.max(a, b)];

/** Three layers, the topmost first: what a stage took, put in or left; what was still there; all that was bought. */
export function layers(stages: readonly Stage[], boughtGrams: number): readonly Json[] {
  const looks = stages.map(look);
  const bar = { grouped: false, barThickness: BAR, borderSkipped: false };
  return [
    {
      ...bar,
      data: stages.map(({ span, grams }) => (grams === 0 ? null : upwards(span))),
      backgroundColor: looks.map(({ fill }) => fill),
      borderColor: looks.map(({ edge }) => edge),
      borderWidth: looks.map(({ edgeWidth }) => edgeWidth),
      // So that what is too small to draw is still seen, at the right edge too.
      minBarLength: 4,
      clip: false,
    },
    {
      ...bar,
      data: stages.map(({ kind, span }) => (kind === 'total' ? null : [0, Math.min(...span)])),
      backgroundColor: PALE_BLUE,
    },
    { ...bar, data: stages.map(() => [0, boughtGrams]), backgroundColor: TRACK },
  ];
}
