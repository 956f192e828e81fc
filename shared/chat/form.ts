/** Forms: at most five inputs, so what is longer goes into one paragraph of `name: value` lines. */
import type { Speech } from '../words/index.ts';
import type { Form, Input } from './reply.ts';

/** The action that every form sends back to; the desk runs the form's command with what was sent. */
export const FORM_ACTION = 'form';
/** What a form is about: all that was typed of a piece, more of one, or what its posted card still lacks; its number follows. */
export const ABOUT = { whole: 'piece', more: 'more', extra: 'extra' } as const;
/** The paragraph of `name: value` lines. */
export const MORE = 'more';
/** Options that hold a list, which a form takes one a line. */
const ONE_A_LINE: ReadonlySet<string> = new Set(['parts']);

/** What a form is filled with. */
export interface Filled {
  command: string;
  owner: string;
  /** Nothing for a new line; a draft's id; or one of `ABOUT` and a piece's number. */
  about: readonly string[];
  /** The options with an input of their own, at most four. */
  first: readonly string[];
  typed: Readonly<Record<string, string>>;
  say: Speech;
}

/**
 * A command's form, filled with what is known so far: its first options an input each, all others in one paragraph.
 */
export function formOf({ command, owner, about, first, typed, say }: Filled): Form {
  const inputs = first.map((name): Input => {
    const hint = say.desk.hints[name]?.();
    return {
      name,
      label: say.desk.inputs[name]?.() ?? name,
      ...(typed[name] === undefined ? {} : { value: typed[name] }),
      ...(hint === undefined ? {} : { hint }),
      ...(ONE_A_LINE.has(name) ? { paragraph: true } : {}),
    };
  });
  const rest = Object.entries(typed).filter(([name]) => !first.includes(name) && name !== MORE);
  return {
    title: say.desk.formTitle({ command }),
    id: { command, action: FORM_ACTION, by: 'owner', owner, about },
    inputs: [
      ...inputs,
      {
        name: MORE,
        label: say.desk.formMore(),
        // A paragraph that could not be read stands there as it was sent.
        value: [paragraph(rest), typed[MORE] ?? ''].filter((text) => text !== '').join('\n'),
        hint: say.desk.formMoreHint(),
        paragraph: true,
      },
    ],
  };
}

/** A value that could be taken for the start of another option is quoted, and no quote in it is left open. */
const paragraph = (rest: readonly (readonly [string, string])[]): string =>
  rest.map(([name, value]) => `${name}: ${quoted(value.replace(/["“”]/g, "''"))}`).join('\n');

const quoted = (value: string): string => (/\p{Letter}:/u.test(value) ? `"${value}"` : value);
