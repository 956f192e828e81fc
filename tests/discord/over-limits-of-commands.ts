/** What of the commands, as they are registered, breaks a limit of the platform. */
import {
  type APIApplicationCommandOption,
  type RESTPostAPIChatInputApplicationCommandsJSONBody as CommandBody,
  ApplicationCommandOptionType as OptionType,
} from 'discord.js';
import { LIMITS } from '../../src/discord/limits.ts';
import { collect, type Hold, repeated } from './counting.ts';

/** Lower case letters, digits, hyphens and underscores of any script. */
const COMMAND_NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;

type Named = Pick<CommandBody, 'name' | 'name_localizations' | 'description' | 'description_localizations'>;
type Localized = Readonly<Partial<Record<string, string | null>>> | null | undefined;

const every = (base: string, localized: Localized): string[] => [
  base,
  ...Object.values(localized ?? {}).filter((text) => typeof text === 'string'),
];
const longest = (base: string, localized: Localized): number =>
  Math.max(...every(base, localized).map((text) => text.length));

const childrenOf = (
  option: CommandBody | APIApplicationCommandOption,
): readonly APIApplicationCommandOption[] => ('options' in option ? (option.options ?? []) : []);
const choicesOf = (option: CommandBody | APIApplicationCommandOption) =>
  'choices' in option ? (option.choices ?? []) : [];

/** The characters of a command as the platform sums them: names, descriptions and choices, in their longest language. */
function countCharacters(command: CommandBody | APIApplicationCommandOption): number {
  const own = longest(command.name, command.name_localizations);
  const described = longest(command.description, command.description_localizations);
  const choices = choicesOf(command).map(
    ({ name, name_localizations, value }) => longest(name, name_localizations) + String(value).length,
  );
  return [own, described, ...choices, ...childrenOf(command).map(countCharacters)].reduce(
    (sum, n) => sum + n,
    0,
  );
}

function holdNamed(path: string, named: Named, found: string[], hold: Hold): void {
  for (const name of every(named.name, named.name_localizations)) {
    if (!COMMAND_NAME.test(name) || name !== name.toLowerCase())
      found.push(`${path}: "${name}" can't be a name`);
  }
  for (const text of every(named.description, named.description_localizations)) {
    hold(`${path}: description`, text.length, LIMITS.commandDescription, 1);
  }
}

function holdOptions(
  path: string,
  of: CommandBody | APIApplicationCommandOption,
  found: string[],
  hold: Hold,
): void {
  const options = childrenOf(of);
  hold(`${path}: options`, options.length, LIMITS.commandOptions);
  for (const name of repeated(options.map(({ name }) => name))) found.push(`${path}: option ${name} twice`);
  const firstOptional = options.findIndex((option) => !option.required);
  if (firstOptional >= 0 && options.slice(firstOptional).some((option) => option.required)) {
    found.push(`${path}: a required option after an optional one`);
  }
  const subcommands = options.filter(({ type }) => type === OptionType.Subcommand).length;
  if (subcommands > 0 && subcommands < options.length) found.push(`${path}: options beside subcommands`);
  for (const option of options) {
    const own = `${path} ${option.name}`;
    const choices = choicesOf(option);
    holdNamed(own, option, found, hold);
    hold(`${own}: choices`, choices.length, LIMITS.optionChoices);
    for (const { name, name_localizations, value } of choices) {
      for (const text of every(name, name_localizations))
        hold(`${own}: a choice`, text.length, LIMITS.optionChoice, 1);
      hold(`${own}: a choice's value`, String(value).length, LIMITS.optionChoice, 1);
    }
    if ('autocomplete' in option && option.autocomplete && choices.length > 0) {
      found.push(`${own}: choices and completion at once`);
    }
    holdOptions(own, option, found, hold);
  }
}

/** What of the commands breaks a limit of the platform, with the path of the option: `/mine units label: description: 104, at most 100`. */
export function overLimitsOfCommands(commands: readonly CommandBody[]): string[] {
  const { found, hold } = collect();
  hold('commands', commands.length, LIMITS.commands);
  for (const name of repeated(commands.map(({ name }) => name))) found.push(`command ${name} twice`);
  for (const command of commands) {
    const path = `/${command.name}`;
    holdNamed(path, command, found, hold);
    hold(`${path}: characters`, countCharacters(command), LIMITS.commandCharacters);
    holdOptions(path, command, found, hold);
  }
  return found;
}
