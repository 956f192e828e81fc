/** What is measured of made-up clubs: how often the methods are right, where the truth is known. */
import { averages } from '../../shared/statistics/averages.ts';
import { factorQuestion } from '../../shared/statistics/factor-question.ts';
import { lean } from '../../shared/statistics/lean.ts';
import { at } from '../../shared/statistics/matrix.ts';
import { predictShare } from '../../shared/statistics/prediction.ts';
import { type Codes, codesAt, type Rows, rowsAt } from '../../shared/statistics/rows.ts';
import { ruledRows } from '../../shared/statistics/ruling.ts';
import { cleanRows } from '../../shared/statistics/screening.ts';
import { shareModel } from '../../shared/statistics/share-model.ts';
import { sizeQuestion } from '../../shared/statistics/size-question.ts';
import { type Club, drawClub, type Habits, USUAL_RANGE_POUNDS, USUAL_SHARE } from './club.ts';
import type { Chance } from './random.ts';

/** What one club adds to some figures, by their names: the figure is the mean. */
export type Found = [name: string, value: number][];

/** Draws one club and looks at it. */
export type Measure = (habits: Habits, pieces: number, members: number, chance: Chance) => Found;

const MARGIN = 0.02;
const SCALE_ERROR = 0.02;
const RUNNING = { level: 0.95, margin: MARGIN, scaleError: SCALE_ERROR };
const RULING = { level: 0.99, margin: MARGIN, scaleError: SCALE_ERROR };

/** The clean rows of a club, and what goes with them. */
function counted({ rows, grade }: Club): { rows: Rows; grade: Codes } {
  const places = cleanRows(rows);
  return { rows: rowsAt(rows, places), grade: codesAt(grade, places) };
}

/** The running answer says less or more, though size makes no difference. */
export const falseSize: Measure = (...given) => {
  const { rows, grade } = counted(drawClub(...given));
  const { verdict } = sizeQuestion(rows, [grade], RUNNING);
  return [['said less or more', Number(verdict === 'less' || verdict === 'more')]];
};

/** The running answer says less or more of any two grades, though no grade makes a difference. */
export const falseGrades: Measure = (...given) => {
  const { rows, grade } = counted(drawClub(...given));
  const { pairs } = factorQuestion(rows, grade, [], RUNNING);
  const wrong = pairs.some(({ verdict }) => verdict === 'less' || verdict === 'more');
  return [['said less or more of a pair', Number(wrong)]];
};

/** The verdict of every ruling that falls due while a club grows, the latest first. */
function rulings({ rows, grade }: Club): string[] {
  const verdicts: string[] = [];
  let length = rows.count;
  for (;;) {
    const posted = { ...rows, count: length };
    const ruled = ruledRows(posted);
    if (ruled === null) return verdicts;
    const { places } = ruled;
    verdicts.push(sizeQuestion(rowsAt(rows, places), [codesAt(grade, places)], RULING).verdict);
    // Before its last piece was posted the ruling before it stood.
    length = at(places, places.length - 1);
  }
}

/** At some time a ruling says less or more, though size makes no difference. */
export const falseRuling: Measure = (...given) => {
  const wrong = rulings(drawClub(...given)).some((verdict) => verdict === 'less' || verdict === 'more');
  return [['ever ruled less or more', Number(wrong)]];
};

/** At some time a ruling says less, as is true. */
export const trueRuling: Measure = (...given) => [
  ['ruled less', Number(rulings(drawClub(...given)).includes('less'))],
];

/** The ranges of the three averages hold what they are ranges for. */
export const averagesHold: Measure = (...given) => {
  const found = averages(counted(drawClub(...given)).rows);
  const holds = (low: number | null, high: number | null) =>
    low === null || high === null ? [] : [Number(low <= USUAL_SHARE && USUAL_SHARE <= high)];
  return [
    ...holds(found.meanLow, found.meanHigh).map((value) => ['average piece', value] as [string, number]),
    ...holds(found.pooledLow, found.pooledHigh).map((value) => ['of all pounds', value] as [string, number]),
    ...holds(found.memberLow, found.memberHigh).map((value) => ['average member', value] as [string, number]),
  ];
};

/** The ranges of predictions hold the pieces to come: of somebody new, and of one who has posted before. */
export const predictionsHold: Measure = (...given) => {
  const club = drawClub(...given);
  const { rows, grade } = counted(club);
  const model = shareModel(rows, grade);
  if (model === null || rows.count === 0) return [];
  const held = (member: number | null) => {
    const piece = club.next(member);
    const { low, high } = predictShare(model, { grade: piece.grade, member });
    const share = piece.loss / piece.base;
    return Number(low <= share && share <= high);
  };
  const chance = given[3];
  const somebody = () => at(rows.member, Math.floor(chance.even() * rows.count));
  const mean = (one: () => number) => {
    let sum = 0;
    for (let piece = 0; piece < PREDICTIONS; piece++) sum += one();
    return sum / PREDICTIONS;
  };
  return [
    ['somebody new', mean(() => held(null))],
    ['somebody who has posted', mean(() => held(somebody()))],
  ];
};
/** In one club; more of them tell more from the same draws. */
const PREDICTIONS = 8;

/** How far the effects of size are from 0 in the clubs that the bet is tried on, between the ends of the usual range. */
const EFFECT_SPREAD = 0.01;

/** What the bet says it is worth against how often it is right, by what it says: the truth minus the word. */
export const leanIsWorth: Measure = (habits, pieces, members, chance) => {
  const slope = (EFFECT_SPREAD / USUAL_RANGE_POUNDS) * chance.normal();
  const { rows, grade } = counted(drawClub({ ...habits, slope }, pieces, members, chance));
  const { within } = sizeQuestion(rows, [grade], RUNNING);
  const bet = within && lean(within.fit, within.contrast);
  if (bet === null) return [];
  const right = Number((bet.side === 'less') === slope < 0);
  const bin = Math.min(9, Math.floor(bet.chance * 10));
  return [[`says 0.${bin} to ${bin === 9 ? '1.0' : `0.${bin + 1}`}`, right - bet.chance]];
};
