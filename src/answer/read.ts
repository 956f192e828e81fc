/** Reading the options of a command: weights hold it up, extras do not. */
import type { Command } from '../../shared/chat/command.ts';
import type { Reader } from '../../shared/chat/option.ts';
import type { Doubtful } from '../../shared/chat/reply.ts';
import { Ask, MemberError } from '../../shared/errors.ts';
import { unitsTold } from '../../shared/measure/units-told.ts';

/** Takes a value back. */
const NOTHING = '-';

export interface Read {
  given: Record<string, unknown>;
  /** The texts that were taken. */
  typed: Record<string, string>;
  doubts: Doubtful[];
}

/** @throws MemberError or Ask for the first option that can't be taken, unless it is an extra. */
export function readGiven(
  command: Command,
  typed: Readonly<Record<string, string>>,
  reader: Omit<Reader, 'option' | 'units'>,
): Read {
  const units = reader.member.units ?? unitsOfLine(command, typed);
  const read: Read = { given: {}, typed: {}, doubts: [] };
  for (const [name, text] of Object.entries(typed)) {
    const option = command.options[name];
    if (option === undefined)
      throw new MemberError('option-unknown', { command: command.name, read: `${name}:`, near: null });
    try {
      read.given[name] =
        text.trim() === NOTHING ? null : option.read(text, { ...reader, units, option: name });
      read.typed[name] = text;
    } catch (problem) {
      const held = problem instanceof Ask || problem instanceof MemberError;
      if (!held || option.extra !== true) throw problem;
      read.doubts.push({ option: name, problem, text });
    }
  }
  return read;
}

const unitsOfLine = (command: Command, typed: Readonly<Record<string, string>>) =>
  unitsTold(
    Object.entries(typed).flatMap(([name, text]) => (command.options[name]?.tellsUnits ? [text] : [])),
  );
