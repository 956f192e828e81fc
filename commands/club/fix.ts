/** `/club fix`: a manager mends a piece of somebody else's, with a reason that its member is told. */
import { type Command, command } from '../../shared/chat/command.ts';
import { MemberError } from '../../shared/errors.ts';
import { piece } from '../options.ts';
import { cardAgain } from '../weigh/card.ts';
import { changeOf } from '../weigh/keep.ts';
import { weighOptions } from '../weigh/options.ts';
import { tellsNothing } from '../weigh/told.ts';
import { mend, pieceNumbered, reason } from './managed.ts';

const { quiet: _quiet, piece: _piece, ...told } = weighOptions;

export const clubFix: Command = command({
  name: 'club fix',
  managers: true,
  audience: () => 'member',
  options: { piece: piece(), why: reason(), ...told },
  form: () => ['piece', 'why'],
  run: async (context, { piece: seq, why, ...given }) => {
    if (!seq) throw new MemberError('piece-missing', {});
    const meant = await pieceNumbered(context, String(seq));
    if (!why) throw new MemberError('why-missing', { seq });
    if (tellsNothing(context.typed)) throw new MemberError('nothing-told', {});
    return mend(context, meant, why, (found) => changeOf(context, given, found));
  },
  card: cardAgain,
});
