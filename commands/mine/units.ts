/** `/mine units`: pounds or kilos. */
import { type Command, command } from '../../shared/chat/command.ts';
import { UNITS } from '../../shared/measure/units.ts';
import { unitsTold } from '../../shared/replies/mine.ts';
import { choice } from '../options.ts';

export const mineUnits: Command = command({
  name: 'mine units',
  audience: () => 'member',
  options: { units: choice(UNITS) },
  form: () => ['units'],
  run: async ({ store, member, say }, { units }) => {
    const now = units ? await store.remember(member.id, { units }) : member;
    return unitsTold(now, say);
  },
});
