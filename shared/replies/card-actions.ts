/** What a piece's card offers: what is asked after the answer, never before it; the next weight; and ways to mend. */
import type { Action, ActionId, Button } from '../chat/reply.ts';
import type { Club } from '../club/club.ts';
import type { Piece } from '../club/piece.ts';
import { cutOf } from '../trade/cuts.ts';
import { gradesFor } from '../trade/grades.ts';
import type { Speech } from '../words/index.ts';
import { type Stage, stageNext, weightsOf } from '../yield/piece.ts';

/** What decides which actions a card has. */
export interface Offer {
  piece: Piece;
  club: Club;
  /** The shops the club named. */
  shops: readonly string[];
  /** Unusual in the club, and nobody stands by it yet. */
  waiting: boolean;
  /** The line that added to the piece, where it could have been meant for another one; null otherwise. */
  addedBy: string | null;
}

/** The menus and buttons under a piece's card, the likeliest first. */
export function cardActions({ piece, club, shops, waiting, addedBy }: Offer, say: Speech): Action[] {
  const id = (action: string, ...about: string[]): ActionId => ({
    command: 'weigh',
    action,
    by: 'owner',
    owner: piece.member,
    about: [piece.id, ...about],
  });
  const button = (label: string, action: string, ...about: string[]): Button => ({
    kind: 'button',
    label,
    id: id(action, ...about),
  });
  const { weighing, desk } = say;
  const stage = stageNext(piece);
  return [
    ...menus(piece, club, shops, say, id),
    stage === null ? null : { ...button(weighing.stage[stage](), 'stage', stage), main: true },
    waiting ? button(weighing.isRight(), 'right') : null,
    piece.saved.length > 0 || weightsOf(piece).trim === null
      ? null
      : button(weighing.saveTrimmings(), 'saved'),
    stage === 'heat' ? button(weighing.remindMe(), 'remind') : null,
    addedBy === null ? null : button(weighing.anotherPiece(), 'another', addedBy),
    button(desk.fixIt(), 'mend'),
    button(weighing.takeBack(), 'takeBack'),
    button(weighing.anotherLikeThis(), 'likeThis'),
  ].filter((action) => action !== null);
}

function menus(
  piece: Piece,
  { gradeCountry }: Club,
  shops: readonly string[],
  { weighing, trade }: Speech,
  id: (action: string) => ActionId,
): (Action | null)[] {
  const { species, bone } = cutOf(piece.cut);
  const grades = piece.grade === null ? gradesFor(species, gradeCountry) : [];
  const bones = bone === 'both' && piece.bone === null ? (['in', 'out'] as const) : [];
  const bought = piece.shop === null ? shops.slice(0, 25) : [];
  const menu = (label: string, action: string, choices: { label: string; value: string }[]): Action | null =>
    choices.length === 0 ? null : { kind: 'menu', label, id: id(action), choices };
  return [
    menu(
      weighing.gradeMenu(),
      'grade',
      grades.map((key) => ({ label: trade.grade(key), value: key })),
    ),
    menu(
      weighing.boneMenu(),
      'bone',
      bones.map((key) => ({ label: trade.bone(key), value: key })),
    ),
    menu(
      weighing.shopMenu(),
      'shop',
      bought.map((name) => ({ label: name, value: name })),
    ),
  ];
}

/** What each stage's form asks first. */
export const STAGE_INPUTS: Readonly<Record<Stage, readonly string[]>> = {
  knife: ['trim', 'left', 'bagged', 'style'],
  heat: ['cooked', 'scraps', 'served', 'wrap'],
  plate: ['scraps', 'served'],
};
