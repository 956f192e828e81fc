/** The commands as the platform is told about them: our declarations with the words that they have. */
import type { Command } from '../../shared/chat/command.ts';
import type { Speech } from '../../shared/words/index.ts';
import type { CommandCard, OptionCard } from './cards.ts';

type Text = () => string;

/** What the words say of one command. */
interface CommandWords {
  description: Text;
  options?: Readonly<Record<string, Text>>;
}

/** One card a command; a family (`mine units`, `mine pans`) is one card with a subcommand each. */
export function commandCards(commands: readonly Command[], say: Speech): CommandCard[] {
  const families = [...new Set(commands.map(({ name }) => familyOf(name)))];
  return families.map((family) => {
    const own = commands.filter(({ name }) => familyOf(name) === family);
    const [only] = own;
    // The platform hides a family as a whole, so one command for everybody shows it.
    const hidden = own.every(({ managers }) => managers) ? { managersOnly: true } : {};
    if (only !== undefined && only.name === family) return { ...card(only, family, say), ...hidden };
    return {
      name: family,
      description: wordsOf(family, say).description(),
      ...hidden,
      subcommands: own.map((command) => card(command, command.name.slice(family.length + 1), say)),
    };
  });
}

const familyOf = (name: string): string => name.split(' ')[0] ?? name;

function wordsOf(name: string, say: Speech): CommandWords {
  const words = (say.commands as Readonly<Record<string, CommandWords>>)[name];
  if (words === undefined) throw new Error(`no words for the command ${name}`);
  return words;
}

function card(command: Command, name: string, say: Speech): CommandCard {
  const { description, options } = wordsOf(command.name, say);
  return {
    name,
    description: description(),
    options: Object.entries(command.options).map(
      ([option, { kind, choices, complete }]): OptionCard => ({
        name: option,
        description: options?.[option]?.() ?? '',
        kind,
        ...(choices === undefined
          ? {}
          : { choices: choices.map((value) => ({ label: choiceLabel(option, value, say), value })) }),
        completes: complete !== undefined,
      }),
    ),
  };
}

const choiceLabel = (option: string, value: string, say: Speech): string =>
  (say.choices as Readonly<Record<string, Readonly<Record<string, Text>>>>)[option]?.[value]?.() ?? value;
