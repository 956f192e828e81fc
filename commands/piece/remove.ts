/** `/piece remove`: taking a piece back, after one more press. */
import { type Command, command } from '../../shared/chat/command.ts';
import { MemberError } from '../../shared/errors.ts';
import { askTakeBack, takenBack, wasTakenBack } from '../../shared/replies/taken-back.ts';
import { piece } from '../options.ts';
import { ownPiece } from './own.ts';

export const pieceRemove: Command = command({
  name: 'piece remove',
  audience: () => 'member',
  options: { piece: piece() },
  form: () => ['piece'],
  run: async (context, given) => askTakeBack(await ownPiece(context, given.piece), context.say),
  actions: {
    remove: {
      by: 'owner',
      audience: 'member',
      edits: true,
      run: async ({ store, now, say }, { about: [id = '', seq = ''] }) => {
        if (!(await store.remove(id, now))) throw new MemberError('piece-unknown', { read: seq });
        return takenBack(id, Number(seq), say);
      },
    },
  },
  card: async ({ say }) => wasTakenBack(say),
});
