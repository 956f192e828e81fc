/** `/club show`: how this club likes its figures. */
import { type Command, command } from '../../shared/chat/command.ts';
import { clubSettings } from '../../shared/replies/club-settings.ts';

export const clubShow: Command = command({
  name: 'club show',
  managers: true,
  audience: () => 'member',
  options: {},
  form: () => [],
  run: async ({ club, today, say }) => clubSettings(club, { today, changed: null }, say),
});
