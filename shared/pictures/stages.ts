/** The way of one piece from the shop to the plate as rows: what each stage took or left, and between which weights. */
import { NANOGRAMS } from '../measure/units.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import type { PieceFigures } from '../yield/piece.ts';

/** The figures that the way of a piece needs; weights in grams, null where not weighed. */
export type WayFigures = Pick<
  PieceFigures,
  | 'boughtGrams'
  | 'baggedGrams'
  | 'juiceGrams'
  | 'trimGrams'
  | 'leftGrams'
  | 'addedGrams'
  | 'cookedGrams'
  | 'scrapsGrams'
  | 'servedGrams'
  | 'trimShare'
  | 'cookingYield'
  | 'carvingYield'
  | 'plateYield'
>;

/** A stage, by the name of its words. */
export type StageName = keyof PictureWords['whereItWent']['stages'];
/** The stages that change the weight. */
type ChangeName = 'juice' | 'trim' | 'added' | 'heat' | 'scraps';

/** One stage. All weights are in grams. */
export type Stage = {
  /** What it took (negative where the piece gained), put in, or left; null where not weighed. */
  grams: number | null;
  /** The piece before and after it. What was not weighed lies somewhere between them. */
  span: readonly [number, number];
  /** Whether both ends of the span are known. */
  known: boolean;
  /** Not weighed, and something after it was. */
  late: boolean;
} & ({ name: Exclude<StageName, ChangeName>; kind: 'total' } | { name: ChangeName; kind: 'change' });

/**
 * Whether a stage that takes away gave, by what the scale says.
 * @example gained({ name: 'trim', kind: 'change', grams: -20, ... }) // true
 */
export const gained = (stage: Stage): stage is Stage & { name: 'juice' | 'trim' | 'heat' | 'scraps' } =>
  stage.kind === 'change' && stage.name !== 'added' && stage.grams !== null && stage.grams < 0;

const total = (name: Exclude<StageName, ChangeName>, grams: number): Stage => ({
  name,
  kind: 'total',
  grams,
  span: [0, grams],
  known: true,
  late: false,
});

/** A stage between two weights, each of them known or the nearest that is. */
function change(name: ChangeName, grams: number | null, before: Known, after: Known, late: boolean): Stage {
  const known = before.known && after.known;
  return { name, kind: 'change', grams, span: [before.grams, after.grams], known, late };
}

interface Known {
  grams: number;
  known: boolean;
}

const orElse = (grams: number | null, nearest: number): Known =>
  grams === null ? { grams: nearest, known: false } : { grams, known: true };

/** A difference of weights without the dust of its decimals, which would make a loss or gain of nothing. */
const toNanogram = (grams: number): number => Math.round(grams * NANOGRAMS.g) / NANOGRAMS.g;

/**
 * The stages of a piece in order. Bag juice and what was put in are there only where they were weighed; what is
 * left so far (to cook, off the heat) only until a later weight takes its place.
 * @example bought 1000 g, 200 g came off: bought, trim [1000, 800], left 800, heat, scraps and served not weighed
 */
export function stagesOf(figures: WayFigures): readonly Stage[] {
  const { boughtGrams, baggedGrams, leftGrams, addedGrams, cookedGrams, servedGrams, scrapsGrams } = figures;
  const whole = orElse(baggedGrams ?? boughtGrams, boughtGrams);
  const intoGrams = leftGrams === null ? null : leftGrams + (addedGrams ?? 0);
  // Looking ahead and back for the nearest weight that is known: what is missing lies between the two.
  const served = orElse(servedGrams, 0);
  const cookedAhead = orElse(cookedGrams, served.grams);
  const leftAhead = orElse(leftGrams, cookedAhead.grams);
  const intoBack = orElse(intoGrams, whole.grams);
  const cookedBack = orElse(cookedGrams, intoBack.grams);

  const heatGrams = intoGrams === null || cookedGrams === null ? null : toNanogram(intoGrams - cookedGrams);
  const cooked = cookedGrams !== null || servedGrams !== null;
  return [
    total('bought', boughtGrams),
    ...(figures.juiceGrams === null
      ? []
      : [change('juice', figures.juiceGrams, orElse(boughtGrams, boughtGrams), whole, false)]),
    change('trim', figures.trimGrams, whole, leftAhead, cooked),
    ...(addedGrams === null
      ? []
      : [change('added', addedGrams, orElse(leftGrams, whole.grams), intoBack, false)]),
    ...(intoGrams === null || cooked ? [] : [total(addedGrams === null ? 'left' : 'intoHeat', intoGrams)]),
    change('heat', heatGrams, intoBack, cookedAhead, cooked),
    ...(cookedGrams === null || servedGrams !== null ? [] : [total('cooked', cookedGrams)]),
    change('scraps', scrapsGrams, cookedBack, served, servedGrams !== null),
    servedGrams === null
      ? { ...total('served', 0), grams: null, span: [0, cookedBack.grams], known: false }
      : total('served', servedGrams),
  ];
}
