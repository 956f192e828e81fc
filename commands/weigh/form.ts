/** The forms of `/weigh`: an empty one to start with, and one filled with a piece as it was typed. */
import type { Context } from '../../shared/chat/command.ts';
import { ABOUT, formOf } from '../../shared/chat/form.ts';
import type { Form } from '../../shared/chat/reply.ts';
import type { Piece } from '../../shared/club/piece.ts';
import { STAGE_INPUTS } from '../../shared/replies/card-actions.ts';
import { cutOf } from '../../shared/trade/cuts.ts';
import type { Stage } from '../../shared/yield/piece.ts';

/** The first inputs: of a new piece, or of what is weighed later. */
const START = ['cut', 'bought', 'trim', 'price'] as const;
const LATER = ['piece', 'cooked', 'scraps', 'trim'] as const;

export const firstInputs = (typed: Readonly<Record<string, string>>) =>
  'cut' in typed || 'bought' in typed || Object.keys(typed).length === 0 ? START : LATER;

/** A new piece, with the member's last cut to start from. */
export function startForm({ member, say }: Context): Form {
  const { cut } = member.presets;
  const typed = cut === undefined ? {} : { cut: cutOf(cut).name };
  return formOf({ command: 'weigh', owner: member.id, about: [], first: START, typed, say });
}

/** A new piece, filled with what its label says. */
export const boughtForm = ({ member, say }: Context, typed: Piece['typed']): Form =>
  formOf({ command: 'weigh', owner: member.id, about: [], first: START, typed, say });

/** Filled with all that was typed of a piece; what is sent takes its place. */
export const mendForm = (context: Context, piece: Piece): Form =>
  pieceForm(context, piece, ABOUT.whole, START, piece.typed);

/** More of a piece: what its next stage asks first. */
export const stageForm = (context: Context, piece: Piece, stage: Stage): Form =>
  pieceForm(context, piece, ABOUT.more, STAGE_INPUTS[stage], {});

/** What was saved of its trimmings; the card that is posted shows it. */
export const savedForm = (context: Context, piece: Piece): Form =>
  pieceForm(context, piece, ABOUT.extra, ['saved'], {});

/** Another one like this piece: everything but its weights and its day. */
export function likeForm({ member, say }: Context, { typed }: Piece): Form {
  const alike = Object.entries(typed).filter(([name]) => LIKE.has(name));
  return formOf({
    command: 'weigh',
    owner: member.id,
    about: [],
    first: START,
    typed: Object.fromEntries(alike),
    say,
  });
}

const LIKE: ReadonlySet<string> = new Set(['cut', 'price', 'grade', 'style', 'bone', 'shop', 'wrap']);

const pieceForm = (
  { member, say }: Context,
  { seq }: Piece,
  what: string,
  first: readonly string[],
  typed: Piece['typed'],
): Form => formOf({ command: 'weigh', owner: member.id, about: [what, String(seq)], first, typed, say });
