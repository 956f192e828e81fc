/** `/mine leave`: takes one's name off one's pieces, which count on, after one more press. */
import { type Command, command } from '../../shared/chat/command.ts';
import { askToLeave, hasLeftTold, nothingKept } from '../../shared/replies/privacy.ts';

export const mineLeave: Command = command({
  name: 'mine leave',
  audience: () => 'member',
  options: {},
  form: () => [],
  run: async ({ store, member, say }) => {
    const { pieces, anything } = await store.held(member.id);
    return anything ? askToLeave(member.id, pieces, say) : nothingKept({ kind: 'here' }, say);
  },
  actions: {
    leave: {
      by: 'owner',
      audience: 'member',
      edits: true,
      run: async ({ store, member, now, today, say }) => {
        const left = await store.leave(member.id, now);
        return left.clubs === 0 ? nothingKept({ kind: 'here' }, say) : hasLeftTold(left, today, say);
      },
    },
  },
});
