/** `/weigh`: whatever is on the scale. */
import { type Command, command } from '../../shared/chat/command.ts';
import { clubUnlessQuiet } from '../options.ts';
import { weighActions } from './actions.ts';
import { cardAgain } from './card.ts';
import { firstInputs, startForm } from './form.ts';
import { addToPiece, startPiece } from './keep.ts';
import { weighOptions } from './options.ts';

export const weigh: Command = command({
  name: 'weigh',
  audience: clubUnlessQuiet,
  options: weighOptions,
  form: firstInputs,
  run: async (context, given) => {
    // An extra that is still open is no reason to start over: it is asked about, of the newest piece.
    const bare = Object.keys(context.typed).length === 0 && context.doubts.length === 0;
    if (bare) return startForm(context);
    const starts = (given.cut !== undefined || given.bought !== undefined) && given.piece === undefined;
    return starts ? startPiece(context, given) : addToPiece(context, given);
  },
  actions: weighActions,
  card: cardAgain,
});
