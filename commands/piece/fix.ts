/** `/piece fix`: the form with all that was typed of a piece; what is sent takes its place. */
import { type Command, command } from '../../shared/chat/command.ts';
import { piece } from '../options.ts';
import { mendForm } from '../weigh/form.ts';
import { ownPiece } from './own.ts';

export const pieceFix: Command = command({
  name: 'piece fix',
  audience: () => 'member',
  options: { piece: piece() },
  form: () => ['piece'],
  run: async (context, given) => mendForm(context, await ownPiece(context, given.piece)),
});
