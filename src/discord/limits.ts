/** The platform's limits, all of them in this file, and what of a payload breaks one. */
import {
  type APIApplicationCommandOption,
  type RESTPostAPIChatInputApplicationCommandsJSONBody as CommandBody,
  ComponentType,
  MessageFlags,
  type APIModalInteractionResponseCallbackData as Modal,
  ApplicationCommandOptionType as OptionType,
} from 'discord.js';
import type { MessageBody, MessagePart } from './message.ts';

/** Characters are counted as JavaScript counts them, which is never less than the platform counts. */
export const LIMITS = {
  text: 4000,
  components: 40,
  files: 10,
  /** Of all files of a message: what a server of no special standing takes. */
  fileBytes: 10 * 1024 * 1024,
  galleryItems: 10,
  alt: 1024,
  customId: 100,
  buttonsInRow: 5,
  buttonLabel: 80,
  menuLabel: 150,
  menuChoices: 25,
  menuChoice: 100,
  formTitle: 45,
  formInputs: 5,
  formLabel: 45,
  inputHint: 100,
  inputValue: 4000,
  commands: 100,
  commandName: 32,
  commandDescription: 100,
  commandOptions: 25,
  commandCharacters: 8000,
  optionChoices: 25,
  optionChoice: 100,
  completions: 25,
} as const;

/** Lower case letters, digits, hyphens and underscores of any script. */
const COMMAND_NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;

type Hold = (what: string, count: number, most: number, least?: number) => void;

/** Collects a line for each count that is not between `least` and `most`. */
function collect(): { found: string[]; hold: Hold } {
  const found: string[] = [];
  return {
    found,
    hold: (what, count, most, least = 0) => {
      if (count > most) found.push(`${what}: ${count}, at most ${most}`);
      if (count < least) found.push(`${what}: ${count}, at least ${least}`);
    },
  };
}

/** Each text once; again where it comes again. */
function repeated(texts: readonly string[]): string[] {
  return texts.filter((text, index) => texts.indexOf(text) !== index);
}

/** All components of a message, those inside others after them. */
export function flatten(parts: readonly MessagePart[]): MessagePart[] {
  return parts.flatMap((part) => {
    const inner: readonly MessagePart[] = 'components' in part ? part.components : [];
    const beside: readonly MessagePart[] = 'accessory' in part ? [part.accessory] : [];
    return [part, ...flatten([...inner, ...beside])];
  });
}

function holdPart(part: MessagePart, hold: Hold): void {
  if (part.type === ComponentType.Container) {
    hold('components in a container', part.components.length, LIMITS.components, 1);
  } else if (part.type === ComponentType.TextDisplay) {
    hold('characters in a text', part.content.length, LIMITS.text, 1);
  } else if (part.type === ComponentType.ActionRow) {
    const menu = part.components.some(({ type }) => type !== ComponentType.Button);
    hold('components in a row', part.components.length, menu ? 1 : LIMITS.buttonsInRow, 1);
  } else if (part.type === ComponentType.Button) {
    hold('label of a button', 'label' in part ? (part.label?.length ?? 0) : 0, LIMITS.buttonLabel, 1);
  } else if (part.type === ComponentType.StringSelect) {
    hold('label of a menu', part.placeholder?.length ?? 0, LIMITS.menuLabel);
    hold('choices of a menu', part.options.length, LIMITS.menuChoices, 1);
    hold('choices twice in a menu', repeated(part.options.map(({ value }) => value)).length, 0);
    for (const { label, value } of part.options) {
      hold('label of a choice', label.length, LIMITS.menuChoice, 1);
      hold('value of a choice', value.length, LIMITS.menuChoice, 1);
    }
  } else if (part.type === ComponentType.MediaGallery) {
    hold('pictures in a gallery', part.items.length, LIMITS.galleryItems, 1);
    for (const { description } of part.items)
      hold('words of a picture', description?.length ?? 0, LIMITS.alt, 1);
  }
}

/** A message as `render` makes it, or as it was read off the wire. */
export interface CheckedMessage extends Pick<MessageBody, 'components'> {
  flags: number;
  files: readonly { name: string; bytes?: Uint8Array }[];
}

/** What of a message breaks a limit or a rule of the platform, one line each; empty for a message that can be sent. */
export function overLimits(message: CheckedMessage): string[] {
  const { found, hold } = collect();
  const parts = flatten(message.components);
  const ids = parts.flatMap((part) => ('custom_id' in part ? [part.custom_id] : []));
  const texts = parts.flatMap((part) => (part.type === ComponentType.TextDisplay ? [part.content] : []));
  const shown = parts.flatMap((part) => {
    if (part.type === ComponentType.File) return [part.file.url];
    return part.type === ComponentType.MediaGallery ? part.items.map(({ media }) => media.url) : [];
  });
  const sent = message.files.map(({ name }) => `attachment://${name}`);

  hold('components', parts.length, LIMITS.components, 1);
  hold('characters in all texts', texts.join('').length, LIMITS.text);
  hold('files', message.files.length, LIMITS.files);
  const bytes = message.files.reduce((sum, file) => sum + (file.bytes?.length ?? 0), 0);
  hold('bytes of all files', bytes, LIMITS.fileBytes);
  for (const part of parts) holdPart(part, hold);
  for (const id of ids) hold(`characters in id ${id}`, id.length, LIMITS.customId, 1);
  for (const id of repeated(ids)) found.push(`id ${id} twice`);
  for (const name of repeated(sent)) found.push(`file ${name} twice`);
  for (const url of shown) if (!sent.includes(url)) found.push(`${url} is shown, but not sent`);
  for (const url of sent) if (!shown.includes(url)) found.push(`${url} is sent, but not shown`);
  if (!(message.flags & MessageFlags.IsComponentsV2)) found.push('the flag of the new components is missing');
  return found;
}

/** What of a form breaks a limit of the platform. */
export function overLimitsOfForm(form: Modal): string[] {
  const { found, hold } = collect();
  hold('title of a form', form.title.length, LIMITS.formTitle, 1);
  hold('id of a form', form.custom_id.length, LIMITS.customId, 1);
  hold('inputs of a form', form.components.length, LIMITS.formInputs, 1);
  const names: string[] = [];
  for (const part of form.components) {
    if (part.type !== ComponentType.Label || part.component.type !== ComponentType.TextInput) {
      found.push('a form holds text inputs in labels');
      continue;
    }
    const { custom_id, value, placeholder } = part.component;
    names.push(custom_id);
    hold(`label of ${custom_id}`, part.label.length, LIMITS.formLabel, 1);
    hold(`id of ${custom_id}`, custom_id.length, LIMITS.customId, 1);
    hold(`value of ${custom_id}`, value?.length ?? 0, LIMITS.inputValue);
    hold(`hint of ${custom_id}`, placeholder?.length ?? 0, LIMITS.inputHint);
  }
  for (const name of repeated(names)) found.push(`input ${name} twice`);
  return found;
}

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
