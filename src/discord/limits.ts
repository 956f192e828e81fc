/** The platform's limits, all of them in this file. */
import type { MessagePart } from './message.ts';

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

/** All components of a message, those inside others after them. */
export function flatten(parts: readonly MessagePart[]): MessagePart[] {
  return parts.flatMap((part) => {
    const inner: readonly MessagePart[] = 'components' in part ? part.components : [];
    const beside: readonly MessagePart[] = 'accessory' in part ? [part.accessory] : [];
    return [part, ...flatten([...inner, ...beside])];
  });
}
