/** What both kinds of debates say alike: what is at stake on one piece, the small print, and where to go on. */
import type { Action, ActionId } from '../chat/reply.ts';
import type { Club } from '../club/club.ts';
import type { Usual } from '../findings/debate.ts';
import type { DebatedFactor } from '../findings/factor-debate.ts';
import { aboutMoney, type Money } from '../measure/money.ts';
import { stake } from '../statistics/lean.ts';
import type { Verdict } from '../statistics/verdict.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import type { Measure } from '../yield/measure.ts';

/** What can be debated. */
export type Question = 'size' | DebatedFactor;

/** A debate as it was asked, and what else can be asked. */
export interface Debate {
  question: Question;
  cut: CutKey;
  measure: Measure;
  club: Pick<Club, 'margin' | 'scaleError' | 'currency'>;
  /** Whoever asked: the menus are theirs. */
  member: string;
  /** What else can be asked of the cut, and of which other cuts. */
  questions: readonly Question[];
  cuts: readonly CutKey[];
}

/**
 * Whether a verdict is an answer that can be settled on.
 * @example isAnswer('open') // false
 */
export const isAnswer = (verdict: Verdict | 'early' | undefined): boolean =>
  verdict === 'less' || verdict === 'more' || verdict === 'same';

/** A difference on one usual piece, or what the margin comes to on one; null without a usual piece. */
export function onOnePiece(
  verdict: Verdict | 'early',
  difference: number | null,
  { grams, pricePerKg }: Usual,
  { margin, currency }: Debate['club'],
): { perPieceGrams: number; perPieceCost: Money | null; usualGrams: number } | null {
  if (grams === null) return null;
  const { perPiece, perPieceCost } = stake(verdict, difference, margin, grams, perGram(pricePerKg));
  return {
    perPieceGrams: perPiece,
    perPieceCost: perPieceCost === null ? null : aboutMoney(perPieceCost, currency),
    usualGrams: grams,
  };
}

const perGram = (pricePerKg: number | null): number | null =>
  pricePerKg === null ? null : pricePerKg / 1000;

/** What every debate ends with. */
export function smallPrint(
  { question, club }: Debate,
  {
    pieces,
    members,
    waiting,
    settled,
    verdict,
  }: { pieces: number; members: number; waiting: number; settled: boolean; verdict: Verdict | 'early' },
  say: Speech,
): string[] {
  const { debate, averages } = say;
  return [
    debate.how({
      count: pieces,
      members,
      held: debate.held({ question }),
      right: verdict === 'early' ? null : settled ? 'settled' : 'so far',
    }),
    debate.margin(club),
    ...(waiting === 0 ? [] : [averages.waiting({ count: waiting })]),
    debate.methods(),
  ];
}

/** When it is looked at again, or for the first time. */
export const rulingLine = (
  ruled: number | null,
  nextAt: number,
  settled: boolean,
  { debate }: Speech,
): string =>
  ruled === null ? debate.nextRuling({ nextAt }) : debate.lastRuling({ pieces: ruled, nextAt, settled });

/** The menus to another question of the same cut, and to another cut. */
export function debateMenus(
  { question, cut, measure, member, questions, cuts }: Debate,
  { debate, trade }: Speech,
): Action[] {
  const id = (action: string): ActionId => ({
    command: 'debate',
    action,
    by: 'owner',
    owner: member,
    about: [cut, measure, question],
  });
  const menu = (label: string, action: string, choices: { label: string; value: string }[]): Action[] =>
    choices.length === 0 ? [] : [{ kind: 'menu', label, id: id(action), choices: choices.slice(0, 25) }];
  return [
    ...menu(
      debate.questionMenu(),
      'question',
      questions
        .filter((one) => one !== question)
        .map((one) => ({ label: debate.title({ question: one }), value: one })),
    ),
    ...menu(
      debate.cutMenu(),
      'cut',
      cuts.filter((one) => one !== cut).map((one) => ({ label: trade.cut(one), value: one })),
    ),
  ];
}

/** The reply where no piece can tell anything yet. */
export const nothingToDebate = (
  { question, cut, measure }: { question: Question; cut: CutKey | null; measure: Measure },
  say: Speech,
) => ({
  answer: say.debate.none({ measure }),
  small: [say.debate.methods()],
  figures: { question, of: measure, cut, verdict: 'early', reason: 'no_pieces', pieces: 0, members: 0 },
});
