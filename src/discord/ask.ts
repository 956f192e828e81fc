/** What a member did, taken off the platform's interactions and put in the desk's terms. */
import {
  type AutocompleteInteraction,
  type ChatInputCommandInteraction,
  type CommandInteractionOption,
  type ModalSubmitInteraction,
  ApplicationCommandOptionType as OptionType,
  PermissionFlagsBits,
} from 'discord.js';
import { readActionId } from '../../shared/chat/action-id.ts';
import type { Completion, Request, Scene } from '../../shared/chat/request.ts';
import { writeSentFile } from '../../shared/chat/sent-file.ts';
import type { Answerable } from './say.ts';

/** Where and by whom; null outside of a club. */
export function sceneOf(interaction: Answerable | AutocompleteInteraction, now: number): Scene | null {
  if (!interaction.guildId) return null;
  return {
    club: interaction.guildId,
    member: interaction.user.id,
    manager: interaction.memberPermissions?.has(PermissionFlagsBits.ManageGuild) ?? false,
    locale: interaction.locale,
    clubLocale: interaction.guildLocale ?? interaction.locale,
    now,
  };
}

interface Typed {
  /** `weigh`, `mine units` */
  command: string;
  options: Record<string, string>;
}

function read(command: string, options: readonly CommandInteractionOption[]): Typed {
  const [first] = options;
  if (first && (first.type === OptionType.Subcommand || first.type === OptionType.SubcommandGroup)) {
    return read(`${command} ${first.name}`, first.options ?? []);
  }
  const told = options.map((option) => [option.name, textOf(option)] as const);
  return { command, options: Object.fromEntries(told) };
}

function textOf({ value, attachment }: CommandInteractionOption): string {
  if (attachment) return writeSentFile(attachment);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return String(value ?? '');
}

/** What was used, as it is written down: `mine units`, `weigh:form`. */
export function nameOf(interaction: Answerable): string {
  if (interaction.isChatInputCommand())
    return read(interaction.commandName, interaction.options.data).command;
  const id = readActionId(interaction.customId);
  return id ? `${id.command}:${id.action}` : 'unknown';
}

const typed = (interaction: ChatInputCommandInteraction | AutocompleteInteraction): Typed =>
  read(interaction.commandName, interaction.options.data);

function fieldsOf(interaction: ModalSubmitInteraction): Record<string, string> {
  const told = interaction.fields.fields.map((field) => {
    return [field.customId, 'value' in field ? String(field.value ?? '') : ''] as const;
  });
  return Object.fromEntries(told);
}

/** The request that an interaction makes. */
export function requestOf(interaction: Answerable, scene: Scene): Request {
  const { id } = interaction;
  if (interaction.isChatInputCommand()) return { ...scene, id, kind: 'command', ...typed(interaction) };
  if (interaction.isModalSubmit()) {
    return { ...scene, id, kind: 'submit', action: interaction.customId, fields: fieldsOf(interaction) };
  }
  const values = interaction.isStringSelectMenu() ? interaction.values : [];
  return { ...scene, id, kind: 'press', action: interaction.customId, values };
}

/** What is to be completed. */
export function completionOf(interaction: AutocompleteInteraction, scene: Scene): Completion {
  const { name, value } = interaction.options.getFocused(true);
  return { ...scene, ...typed(interaction), option: name, typed: value };
}
