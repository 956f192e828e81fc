/** `/mine hide`: out of boards and pictures, while the pieces still count. */
import { type Command, type Context, command } from '../../shared/chat/command.ts';
import type { Reply } from '../../shared/chat/reply.ts';
import { hiddenTold } from '../../shared/replies/privacy.ts';
import { yesNo } from '../options.ts';

const set = async ({ store, member, say }: Context, hidden: boolean): Promise<Reply> =>
  hiddenTold(await store.remember(member.id, { hidden }), say);

export const mineHide: Command = command({
  name: 'mine hide',
  audience: () => 'member',
  options: { hidden: yesNo() },
  form: () => ['hidden'],
  run: async (context, { hidden }) =>
    typeof hidden === 'boolean' ? set(context, hidden) : hiddenTold(context.member, context.say),
  actions: {
    hide: { by: 'owner', audience: 'member', edits: true, run: (context) => set(context, true) },
    show: { by: 'owner', audience: 'member', edits: true, run: (context) => set(context, false) },
  },
});
