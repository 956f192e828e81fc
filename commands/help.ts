/** `/help`: how to, in lines to copy. */
import { type Command, command } from '../shared/chat/command.ts';
import { HELP_TOPICS } from '../shared/words/en/help.ts';
import { choice } from './options.ts';

export const help: Command = command({
  name: 'help',
  audience: () => 'member',
  options: { topic: choice(HELP_TOPICS) },
  form: () => ['topic'],
  run: async ({ say }, { topic }) => {
    const { answer, lines } = say.help[topic ?? 'start'];
    return {
      answer: answer(),
      lines: lines(),
      ...(topic ? {} : { small: [say.desk.helpTopics()] }),
      figures: { topic: topic ?? 'start' },
    };
  },
});
