/** What is promised of the methods: each line is a measure, the clubs that it is taken of, and a bound. */
import { GRADES_APART, type Habits } from './club.ts';
import {
  averagesHold,
  falseGrades,
  falseRuling,
  falseSize,
  leanIsWorth,
  type Measure,
  predictionsHold,
  trueRuling,
} from './measures.ts';

const PLAIN: Habits = {
  slope: 0,
  ownSlopes: 0,
  ownSpreads: 0,
  trimmersBuyBigger: false,
  slips: 0,
  scaleError: 0,
  grades: GRADES_APART,
};

/** 0.3 points a pound, between members; their spreads differ by half or twice. */
const OWN = { ownSlopes: 0.003, ownSpreads: 0.4 };
const BIGGER = { trimmersBuyBigger: true };
const SLIPS = { slips: 0.03 };
const SCALES = { scaleError: 0.02 };
/** 0.3 points a pound. */
const LESS = { slope: -0.003 };

const SCENARIOS = {
  'no effect': PLAIN,
  'own slopes': { ...PLAIN, ...OWN },
  'trimmers buy bigger': { ...PLAIN, ...BIGGER },
  '3 % slips': { ...PLAIN, ...SLIPS },
  'scales off by 2 %': { ...PLAIN, ...SCALES },
  'all of these': { ...PLAIN, ...OWN, ...BIGGER, ...SLIPS, ...SCALES },
  'own slopes, 3 % slips': { ...PLAIN, ...OWN, ...SLIPS },
  less: { ...PLAIN, ...LESS },
  'less, 3 % slips': { ...PLAIN, ...LESS, ...SLIPS },
  'less, own slopes': { ...PLAIN, ...LESS, ...OWN },
  'grades alike': { ...PLAIN, grades: [0, 0, 0] },
} as const satisfies Record<string, Habits>;

export interface Line {
  what: string;
  scenario: keyof typeof SCENARIOS;
  pieces: number;
  members: number;
  measure: Measure;
  least: number;
  most: number;
  /** How many of the run's standard errors the figure may be past the bound in a full run. */
  allowed: number;
}

export const habitsOf = ({ scenario }: Line): Habits => SCENARIOS[scenario];

type Size = readonly [pieces: number, members: number];
const SMALL: Size = [40, 10];
const MIDDLE: Size = [150, 25];
const LARGE: Size = [1000, 80];

function lines(
  about: Pick<Line, 'what' | 'measure'> & Partial<Pick<Line, 'least' | 'most' | 'allowed'>>,
  scenarios: readonly Line['scenario'][],
  sizes: readonly Size[],
): Line[] {
  return scenarios.flatMap((scenario) =>
    sizes.map(([pieces, members]) => ({
      least: 0,
      most: 1,
      allowed: 0,
      ...about,
      scenario,
      pieces,
      members,
    })),
  );
}

const INNOCENT = ['no effect', 'own slopes', 'trimmers buy bigger', '3 % slips'] as const;

export const LINES: readonly Line[] = [
  ...lines({ what: 'running answer, wrong', measure: falseSize, most: 0.06 }, INNOCENT, [
    SMALL,
    MIDDLE,
    LARGE,
  ]),
  ...lines(
    { what: 'running answer on grades, wrong', measure: falseGrades, most: 0.06 },
    ['grades alike'],
    [SMALL, MIDDLE, LARGE],
  ),
  ...lines(
    { what: 'rulings in a lifetime, wrong', measure: falseRuling, most: 0.04, allowed: 3 },
    [...INNOCENT, 'scales off by 2 %', 'all of these'],
    [LARGE],
  ),
  ...lines({ what: 'rulings in a lifetime, right', measure: trueRuling, least: 0.93 }, ['less'], [LARGE]),
  ...lines(
    { what: 'rulings in a lifetime, right', measure: trueRuling, least: 0.89 },
    ['less, 3 % slips'],
    [LARGE],
  ),
  ...lines(
    { what: 'rulings in a lifetime, right', measure: trueRuling, least: 0.6 },
    ['less, own slopes'],
    [LARGE],
  ),
  ...lines(
    { what: 'averages, 19 in 20', measure: averagesHold, least: 0.91, most: 0.97 },
    ['no effect', 'own slopes', '3 % slips'],
    [SMALL, MIDDLE, LARGE],
  ),
  ...lines(
    { what: 'predictions, 8 in 10', measure: predictionsHold, least: 0.77, most: 0.9 },
    ['no effect'],
    [[30, 8]],
  ),
  ...lines(
    { what: 'predictions, 8 in 10', measure: predictionsHold, least: 0.78, most: 0.84 },
    ['no effect', 'own slopes'],
    [[60, 12], MIDDLE, LARGE],
  ),
  ...lines(
    { what: 'the bet, right minus said', measure: leanIsWorth, least: -0.1, most: 0.1 },
    ['own slopes, 3 % slips'],
    [[12, 4], SMALL, MIDDLE],
  ),
];
