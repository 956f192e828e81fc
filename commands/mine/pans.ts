/** `/mine pans`: weigh a pan once, and its weight is taken off whenever it is named. */
import { type Command, command } from '../../shared/chat/command.ts';
import { MemberError } from '../../shared/errors.ts';
import { readPanName } from '../../shared/measure/pan.ts';
import { panForgotten, panKept, pansTold } from '../../shared/replies/mine.ts';
import { panName, weight } from '../measure-options.ts';

export const minePans: Command = command({
  name: 'mine pans',
  audience: () => 'member',
  options: { name: panName(), weight: weight(), remove: panName() },
  form: () => ['name', 'weight'],
  run: async ({ store, member, say }, given) => {
    if (given.remove) return panForgotten(given.remove, await store.removePan(member.id, given.remove), say);
    if (given.name && given.weight) {
      const pan = { name: readPanName(given.name, 'name'), weight: given.weight.weight };
      await store.keepPan(member.id, pan);
      return panKept(pan, say);
    }
    if (given.name) throw new MemberError('pan-weight-missing', { name: given.name });
    if (given.weight) throw new MemberError('pan-name-missing', {});
    return pansTold(await store.pans(member.id), say);
  },
});
