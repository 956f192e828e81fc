/** The forms of `/weigh`: an empty one to start with, and one filled with a piece as it was typed. */
import type { Context } from '../../shared/chat/command.ts';
import { formOf } from '../../shared/chat/form.ts';
import type { Form } from '../../shared/chat/reply.ts';
import type { Piece } from '../../shared/club/piece.ts';

/** The first inputs: of a new piece, or of what is weighed later. */
const START = ['cut', 'bought', 'trim', 'price'] as const;
const LATER = ['piece', 'cooked', 'scraps', 'trim'] as const;

export const firstInputs = (typed: Readonly<Record<string, string>>) =>
  'cut' in typed || 'bought' in typed || Object.keys(typed).length === 0 ? START : LATER;

/** A new piece, with the member's last cut to start from. */
export function startForm({ member, say }: Context): Form {
  const { cut } = member.presets;
  const typed = cut === undefined ? {} : { cut: say.trade.cut(cut) };
  return formOf({ command: 'weigh', owner: member.id, about: [], first: START, typed, say });
}

/** Filled with all that was typed of a piece; what is sent takes its place. */
export const mendForm = ({ member, say }: Context, piece: Piece): Form =>
  formOf({
    command: 'weigh',
    owner: member.id,
    about: ['piece', String(piece.seq)],
    first: START,
    typed: piece.typed,
    say,
  });
