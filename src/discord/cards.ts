/** Commands as the platform takes them, made of plain cards. */
import {
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandOption,
  type APIApplicationCommandSubcommandGroupOption,
  type APIApplicationCommandSubcommandOption,
  ApplicationCommandType,
  ApplicationIntegrationType,
  type RESTPostAPIChatInputApplicationCommandsJSONBody as CommandBody,
  InteractionContextType,
  Locale,
  type LocalizationMap,
  ApplicationCommandOptionType as OptionType,
  PermissionFlagsBits,
} from 'discord.js';

/** Texts by language (`de`) or by one of the platform's locales (`es-419`). */
export type Localized = Readonly<Record<string, string>>;

interface Card {
  name: string;
  description: string;
  nameLocalizations?: Localized;
  descriptionLocalizations?: Localized;
}

/** An option of a command: every kind reaches the desk as text. */
export interface OptionCard extends Card {
  kind: 'text' | 'yes-no' | 'member' | 'file';
  choices?: readonly { label: string; value: string; labelLocalizations?: Localized }[];
  /** Whether the desk completes it while it is typed. */
  completes?: boolean;
}

/** A command as the platform is told about it. One with subcommands has no options of its own. */
export interface CommandCard extends Card {
  /** Shown to those who manage the server; whoever they let in besides is checked by the desk. */
  managersOnly?: boolean;
  options?: readonly OptionCard[];
  subcommands?: readonly CommandCard[];
}

/** Where commands are registered: for every server, or for one alone. */
export type Scope = { guild: string } | 'everywhere';

/** Languages that the platform knows by their countries only. */
const COUNTRIES: Readonly<Record<string, readonly string[]>> = {
  en: ['en-US', 'en-GB'],
  es: ['es-ES', 'es-419'],
  pt: ['pt-BR'],
  sv: ['sv-SE'],
  zh: ['zh-CN', 'zh-TW'],
};
const LOCALES: readonly string[] = Object.values(Locale);

function localize(texts: Localized | undefined): LocalizationMap | null {
  const entries = Object.entries(texts ?? {}).flatMap(([language, text]) =>
    (COUNTRIES[language] ?? [language]).map((locale) => [locale, text] as const),
  );
  const unknown = entries.find(([locale]) => !LOCALES.includes(locale));
  if (unknown) throw new Error(`the platform has no language ${unknown[0]}`);
  return entries.length > 0 ? Object.fromEntries(entries) : null;
}

const describe = (card: Card) => ({
  name: card.name,
  name_localizations: localize(card.nameLocalizations),
  description: card.description,
  description_localizations: localize(card.descriptionLocalizations),
});

function optionBody(option: OptionCard): APIApplicationCommandBasicOption {
  if (option.kind === 'yes-no') return { ...describe(option), type: OptionType.Boolean };
  if (option.kind === 'member') return { ...describe(option), type: OptionType.User };
  if (option.kind === 'file') return { ...describe(option), type: OptionType.Attachment };
  if (!option.choices)
    return { ...describe(option), type: OptionType.String, autocomplete: option.completes ?? false };
  const choices = option.choices.map(({ label, value, labelLocalizations }) => ({
    name: label,
    name_localizations: localize(labelLocalizations),
    value,
  }));
  return { ...describe(option), type: OptionType.String, choices };
}

function subcommandBody(card: CommandCard): APIApplicationCommandSubcommandOption {
  return { ...describe(card), type: OptionType.Subcommand, options: (card.options ?? []).map(optionBody) };
}

function groupBody(card: CommandCard): APIApplicationCommandSubcommandGroupOption {
  const options = (card.subcommands ?? []).map(subcommandBody);
  return { ...describe(card), type: OptionType.SubcommandGroup, options };
}

function optionsBody(card: CommandCard): APIApplicationCommandOption[] {
  if (!card.subcommands) return (card.options ?? []).map(optionBody);
  return card.subcommands.map((inner) => (inner.subcommands ? groupBody(inner) : subcommandBody(inner)));
}

/**
 * The bodies to register. Every command works in servers alone, added by a server; a scope of one server says so by
 * itself, and takes no such fields.
 */
export function commandBodies(cards: readonly CommandCard[], scope: Scope = 'everywhere'): CommandBody[] {
  const places = {
    contexts: [InteractionContextType.Guild],
    integration_types: [ApplicationIntegrationType.GuildInstall],
  };
  return cards.map((card) => ({
    ...describe(card),
    type: ApplicationCommandType.ChatInput,
    options: optionsBody(card),
    default_member_permissions: card.managersOnly ? String(PermissionFlagsBits.ManageGuild) : null,
    ...(scope === 'everywhere' ? places : {}),
  }));
}
