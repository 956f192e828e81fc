/** What of a message or a form breaks a limit of the platform. */
import {
  ComponentType,
  MessageFlags,
  type APIModalInteractionResponseCallbackData as Modal,
} from 'discord.js';
import { flatten, LIMITS } from '../../src/discord/limits.ts';
import type { MessageBody, MessagePart } from '../../src/discord/message.ts';
import { collect, type Hold, repeated } from './counting.ts';

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
interface CheckedMessage extends Pick<MessageBody, 'components'> {
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
