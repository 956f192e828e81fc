/** `/club export`: all pieces of the club as a file. */
import { type Command, command } from '../../shared/chat/command.ts';
import { TABLE_FORMATS } from '../../shared/chat/exchange.ts';
import { exported } from '../../shared/replies/exchange.ts';
import { choice } from '../options.ts';

export const clubExport: Command = command({
  name: 'club export',
  managers: true,
  audience: () => 'member',
  options: { format: choice(TABLE_FORMATS) },
  form: () => ['format'],
  run: async ({ exchange, say }, { format }) => {
    const chosen = format ?? 'csv';
    return exported(await exchange.write(chosen, null), { format: chosen, own: false }, say);
  },
});
