/** Reading a line as typed in chat: `/weigh cut:Boston butt bought:8 lb 4 oz`, and a form's paragraph alike. */
import { MemberError } from '../errors.ts';
import { isOneSlip } from '../trade/fold-name.ts';

/** A line as read: the command's name, and the texts of its options by name. */
export interface Line {
  command: string;
  options: Record<string, string>;
}

/** What there is to type: a command's name and its options' names. */
export interface Typable {
  name: string;
  options: readonly string[];
}

/**
 * Reads a slash command. A value runs up to the next ` name:` of an option of that command, outside quotes.
 * @throws MemberError for an unknown command or option, an option named twice, or a near miss before a colon.
 * @example readLine('/weigh cut:Boston butt left:7 lb', commands).options // { cut: 'Boston butt', left: '7 lb' }
 */
export function readLine(line: string, commands: readonly Typable[]): Line {
  const typed = line.trim().replace(/^\/\s*/, '');
  const found = commands
    .filter(({ name }) => new RegExp(`^${name.replace(' ', '\\s+')}(?=\\s|$)`, 'i').test(typed))
    .toSorted((one, other) => other.name.length - one.name.length)[0];
  if (found === undefined) throw unknownCommand(typed, commands);
  const rest = typed.slice(
    found.name.split(' ').reduce((end, word) => typed.toLowerCase().indexOf(word, end) + word.length, 0),
  );
  return { command: found.name, options: readOptions(rest, found) };
}

function unknownCommand(typed: string, commands: readonly Typable[]): MemberError {
  const words = typed.split(/\s+/);
  const near = commands.find(({ name }) => {
    const start = words.slice(0, name.split(' ').length).join(' ').toLowerCase();
    return isOneSlip(start, name) || name.startsWith(`${start} `);
  });
  return new MemberError('command-unknown', { read: `/${words[0] ?? ''}`, near: near?.name ?? null });
}

/** Reads `name:value name:value …`; line breaks count as spaces. */
export function readOptions(text: string, { name: command, options }: Typable): Record<string, string> {
  const starts = optionStarts(text, command, options);
  const before = text.slice(0, starts[0]?.at ?? text.length).trim();
  if (before !== '') throw unknownStart(before, command, options);
  const read: Record<string, string> = {};
  for (const [index, { name, from }] of starts.entries()) {
    if (name in read) throw new MemberError('option-twice', { option: name });
    read[name] = unquote(text.slice(from, starts[index + 1]?.at).trim());
  }
  return read;
}

function unknownStart(before: string, command: string, options: readonly string[]): MemberError {
  const word = /^([\p{Letter}-]+):/u.exec(before)?.[1]?.toLowerCase();
  const near = word === undefined ? undefined : options.find((option) => isOneSlip(word, option));
  return new MemberError('option-unknown', {
    command,
    read: near === undefined ? before : `${word}:`,
    near: near ?? null,
  });
}

interface Start {
  name: string;
  /** Where the name begins, and where its value does. */
  at: number;
  from: number;
}

/**
 * A quoted passage is one token, so that a colon in it starts nothing. It stands between spaces: the sign after
 * `a 12" board` opens none.
 */
const TOKENS = /(?<=^|[\s:])(?:"[^"]*"|“[^”]*”)(?=\s|$)|(?<=^|\s)(?<word>[\p{Letter}][\p{Letter}-]*):/gu;

function optionStarts(text: string, command: string, options: readonly string[]): Start[] {
  const starts: Start[] = [];
  for (const match of text.matchAll(TOKENS)) {
    const word = match.groups?.word?.toLowerCase();
    if (word === undefined) continue;
    const name = options.find((option) => option === word);
    if (name !== undefined) starts.push({ name, at: match.index, from: match.index + match[0].length });
    else refuseNearMiss(word, command, options);
  }
  return starts;
}

/** A word that is one slip from an option's name and stands before a colon is a slip, not a part of a value. */
function refuseNearMiss(word: string, command: string, options: readonly string[]): void {
  const near = options.find((option) => option.length > 3 && isOneSlip(word, option));
  if (near !== undefined) throw new MemberError('option-unknown', { command, read: `${word}:`, near });
}

const unquote = (value: string): string => value.replace(/^"([^"]*)"$|^“([^”]*)”$/su, '$1$2');
