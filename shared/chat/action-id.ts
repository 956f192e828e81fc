/** The id of a button, menu or form on the platform: `1:weigh:form:owner:123:9f3c`. At most 100 characters. */
import type { ActionId, Presser } from './reply.ts';

const VERSION = '1';
/** The most characters that the platform keeps for one. */
const LONGEST = 100;
const PRESSERS: readonly string[] = ['owner', 'anyone', 'manager'] satisfies Presser[];

const isPresser = (text: string): text is Presser => PRESSERS.includes(text);

/** A part may hold the colon that parts parts, and the sign that stands for it. */
const escapePart = (part: string): string => part.replaceAll('%', '%25').replaceAll(':', '%3A');
const unescapePart = (part: string): string => part.replaceAll('%3A', ':').replaceAll('%25', '%');

/**
 * The text form of an id: version, command, action, presser, owner, then what it is about.
 *
 * Throws where the text is over 100 characters or a part that must be there is empty: both are bugs of ours.
 *
 * @example writeActionId({ command: 'weigh', action: 'form', by: 'owner', owner: '42', about: ['9f3c'] })
 * // '1:weigh:form:owner:42:9f3c'
 */
export function writeActionId({ command, action, by, owner, about }: ActionId): string {
  const text = [VERSION, command, action, by, owner, ...about].map(escapePart).join(':');
  if (text.length > LONGEST) throw new Error(`an action's id has ${text.length} characters: ${text}`);
  if (!readActionId(text)) throw new Error(`an action's id can't be read back: ${text}`);
  return text;
}

/**
 * Reads back what `writeActionId` wrote. Null for an id of an unknown version, or one that is not ours.
 *
 * @example readActionId('1:weigh:form:owner:42:9f3c')?.about // ['9f3c']
 * @example readActionId('0:weigh:form') // null
 */
export function readActionId(text: string): ActionId | null {
  if (text.length > LONGEST || /%(?!25|3A)/.test(text)) return null;
  const [version, ...parts] = text.split(':').map(unescapePart);
  const [command, action, by, owner, ...about] = parts;
  if (version !== VERSION || !command || !action || !by || !owner || !isPresser(by)) return null;
  return { command, action, by, owner, about };
}
