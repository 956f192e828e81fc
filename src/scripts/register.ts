/** `npm run register`: tells the platform which commands there are, in the scope that the environment names. */
import { commands } from '../../commands/index.ts';
import { speak } from '../../shared/words/index.ts';
import { createRest } from '../discord/client.ts';
import { commandCards } from '../discord/command-cards.ts';
import { applicationOf, registerCommands } from '../discord/register.ts';
import { readEnvironment } from '../environment.ts';

const { DISCORD_TOKEN: token, DISCORD_API_URL: apiUrl, DISCORD_GUILD_ID: guild } = readEnvironment();
if (token === undefined) {
  console.error('DISCORD_TOKEN: is needed to register the commands.');
  process.exit(1);
}
const rest = createRest(token, apiUrl);
const cards = commandCards(commands, speak({ locale: 'en-US', units: 'lb' }));
// Commands in both scopes would be shown twice: the one that is not used is emptied where we know it.
const where = guild === undefined ? {} : { guild, empty: 'everywhere' as const };
const { changed, commands: count } = await registerCommands(rest, await applicationOf(rest), cards, where);
console.log(
  `${count} commands ${changed ? 'registered' : 'were registered already'} ${guild === undefined ? 'everywhere' : `in ${guild}`}.`,
);
