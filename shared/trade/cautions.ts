/** Cautions: which there are, where each is told, whose they are. Their words are in `words/<language>/cautions.ts`. */
import type { Species } from './cut.ts';

/** Every caution; each has its words in every language. */
export type CautionCode =
  | 'raw-trimmings'
  | 'rendering'
  | 'knife'
  | 'inside'
  | 'cooling'
  | 'holding'
  | 'thawing'
  | 'leftovers'
  | 'local-rules';

/** Where some are told unasked: with what was saved of a raw piece, of its fat above all, and when buying for many. */
export type CautionPlace = 'saved' | 'saved-fat' | 'buying';

/** One caution, and whose it is. All of them stand under `/help topic:safety`. */
export interface Caution {
  code: CautionCode;
  /** Where it is told besides. */
  places: readonly CautionPlace[];
  /** Who says so. */
  source: string;
  /** Not confirmed in a source: ours, or from memory. */
  memory?: true;
}

const FSIS = 'USDA Food Safety and Inspection Service';
const FOOD_CODE = 'FDA Food Code';

/** In the order in which a piece meets them. */
export const CAUTIONS: readonly Caution[] = [
  { code: 'thawing', places: ['buying'], source: `${FSIS}, safe defrosting methods` },
  { code: 'knife', places: [], source: 'common practice', memory: true },
  // The days are those for ground meat; that trimmings keep no longer is our own inference.
  {
    code: 'raw-trimmings',
    places: ['saved'],
    source: `${FSIS}, danger zone and cold storage`,
    memory: true,
  },
  {
    code: 'rendering',
    places: ['saved-fat'],
    source: 'National Fire Protection Association, cooking safety',
  },
  { code: 'inside', places: [], source: `${FSIS}, safe minimum internal temperatures` },
  { code: 'holding', places: [], source: `${FSIS}, danger zone` },
  { code: 'cooling', places: [], source: `${FOOD_CODE} 3-501.14` },
  { code: 'leftovers', places: [], source: `${FSIS}, leftovers and food safety` },
  {
    code: 'local-rules',
    places: ['buying'],
    source: 'licensing of food served to the public',
  },
];

/**
 * The cautions of a place, in the order in which a piece meets them.
 *
 * @example cautionsFor('saved') // ['raw-trimmings']
 */
export const cautionsFor = (place: CautionPlace): readonly CautionCode[] =>
  CAUTIONS.filter(({ places }) => places.includes(place)).map(({ code }) => code);

/** A temperature as published, in both scales: none is worked out from the other. */
export interface Temperature {
  fahrenheit: number;
  celsius: number;
}

const at = (fahrenheit: number, celsius: number): Temperature => ({ fahrenheit, celsius });

/** Whole pieces; ground meat and game with four legs; poultry and game birds, whole or ground. USDA FSIS. */
const WHOLE = { ...at(145, 63), restMinutes: 3 };
const GROUND = { ...at(160, 71), restMinutes: 0 };
const POULTRY = { ...at(165, 74), restMinutes: 0 };

/** The least inside a whole piece, by animal, and the rest after it. */
const INSIDE: Readonly<Record<Species, Temperature & { restMinutes: number }>> = {
  beef: WHOLE,
  pork: WHOLE,
  lamb: WHOLE,
  goat: WHOLE,
  veal: WHOLE,
  poultry: POULTRY,
  game: GROUND,
};

/**
 * The least temperature inside, by animal and by whether it is ground, with the rest that goes with it.
 *
 * @example leastInside('pork', false) // { fahrenheit: 145, celsius: 63, restMinutes: 3 }
 */
export const leastInside = (species: Species, ground: boolean): Temperature & { restMinutes: number } =>
  ground && species !== 'poultry' ? GROUND : INSIDE[species];

/** Reheated leftovers, at least. USDA FSIS. */
export const REHEATED = at(165, 74);
/** Cold and hot ends of the range in which germs grow fast: out of it within two hours, one on a hot day. USDA FSIS. */
export const DANGER_ZONE = {
  from: at(40, 4),
  to: at(140, 60),
  hours: 2,
  hotDay: at(90, 32),
  hoursOnHotDay: 1,
};
/** FDA Food Code 3-501.14: from the first to the second within 2 hours, to the third within 6 in all. */
export const COOLING = { from: at(135, 57), by: at(70, 21), hours: 2, to: at(41, 5), hoursInAll: 6 };
/** Days in the fridge. USDA FSIS: ground meat 1 to 2, cooked meat 3 to 4; raw trimmings like ground meat is our own inference. */
export const FRIDGE_DAYS = { rawTrimmings: 2, cooked: 4 };
/** In the fridge a day for so many pounds (kilos); in cold water that is changed every half hour. USDA FSIS. */
export const THAWING = { poundsADay: 5, kilosADay: 2, waterMinutes: 30 };
