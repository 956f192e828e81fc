/** `/mine export`: a member's own pieces as a file, those that are set aside among them. */
import { type Command, command } from '../../shared/chat/command.ts';
import { TABLE_FORMATS } from '../../shared/chat/exchange.ts';
import { exported } from '../../shared/replies/exchange.ts';
import { choice } from '../options.ts';

export const mineExport: Command = command({
  name: 'mine export',
  audience: () => 'member',
  options: { format: choice(TABLE_FORMATS) },
  form: () => ['format'],
  run: async ({ exchange, member, say }, { format }) => {
    const chosen = format ?? 'csv';
    return exported(await exchange.write(chosen, member.id), { format: chosen, own: true }, say);
  },
});
