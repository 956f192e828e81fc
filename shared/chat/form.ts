/** Forms: at most five inputs, so what is longer goes into one paragraph of `name: value` lines. */
import type { Speech } from '../words/index.ts';
import type { Form, Input } from './reply.ts';

/** The action that every form sends back to; the desk runs the form's command with what was sent. */
export const FORM_ACTION = 'form';
/** The paragraph of `name: value` lines. */
export const MORE = 'more';

export interface Filled {
  command: string;
  owner: string;
  /** Nothing for a new line; a draft's id; or `piece` and a number for all that was typed of a piece. */
  about: readonly string[];
  /** The options with an input of their own, at most four. */
  first: readonly string[];
  typed: Readonly<Record<string, string>>;
  say: Speech;
}

export function formOf({ command, owner, about, first, typed, say }: Filled): Form {
  const inputs = first.map((name): Input => {
    const hint = say.desk.hints[name]?.();
    return {
      name,
      label: say.desk.inputs[name]?.() ?? name,
      ...(typed[name] === undefined ? {} : { value: typed[name] }),
      ...(hint === undefined ? {} : { hint }),
    };
  });
  const rest = Object.entries(typed).filter(([name]) => !first.includes(name));
  return {
    title: say.desk.formTitle({ command }),
    id: { command, action: FORM_ACTION, by: 'owner', owner, about },
    inputs: [
      ...inputs,
      {
        name: MORE,
        label: say.desk.formMore(),
        value: paragraph(rest),
        hint: say.desk.formMoreHint(),
        paragraph: true,
      },
    ],
  };
}

/** A value that could be taken for the start of another option is quoted. */
const paragraph = (rest: readonly (readonly [string, string])[]): string =>
  rest
    .map(
      ([name, value]) => `${name}: ${/\p{Letter}:/u.test(value) ? `"${value.replaceAll('"', "'")}"` : value}`,
    )
    .join('\n');
