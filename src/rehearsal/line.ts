/** The lines of a rehearsal: slash commands as typed in chat, presses, and changes of the scene. */
import type { Command } from '../../shared/chat/command.ts';
import { readLine, readOptions, type Typable } from '../../shared/chat/line.ts';
import type { Answer, Choice, Due } from '../../shared/chat/request.ts';
import { writeSentFile } from '../../shared/chat/sent-file.ts';
import { own } from '../../shared/own.ts';
import { speak } from '../../shared/words/index.ts';
import { attach } from './attachment.ts';
import { ask, canSelect, complete, press, type Stage, StageError, select, submit } from './stage.ts';

/** What a line came to: an answer, completions, or a change of the scene. */
export type Outcome =
  | { kind: 'answer'; command: string; answer: Answer }
  | { kind: 'choices'; command: string; choices: readonly Choice[] }
  | { kind: 'scene'; command: string; text: string; due?: readonly Due[] };

/** A comment, or nothing at all. */
export const isSilent = (line: string): boolean => /^\s*(#|$)/.test(line);

export const typable = (commands: readonly Command[]): Typable[] =>
  commands.map(({ name, options }) => ({ name, options: Object.keys(options) }));

/** Clubs weigh in these years. */
const [FIRST_MOMENT, LAST_MOMENT] = [Date.UTC(1970, 0), Date.UTC(9000, 0)];

/** Plays one line. @throws StageError for a line that can't be followed, MemberError for one that can't be read. */
export async function play(stage: Stage, line: string): Promise<Outcome> {
  const [, speaker, manager, said = ''] = /^\s*(?:@([\w-]+)(!?)(?:\s+|$))?(.*)$/s.exec(line) ?? [];
  const before = stage.scene;
  if (speaker !== undefined) stage.scene = { ...before, member: speaker, manager: manager === '!' };
  if (said.trim() === '') return { kind: 'scene', command: '@', text: `${stage.scene.member} speaks now` };
  let outcome: Outcome | null = null;
  try {
    outcome = await playSaid(stage, said.trim());
    return outcome;
  } finally {
    // Also where the line failed: the next one is not theirs.
    if (speaker !== undefined && outcome?.kind !== 'scene') stage.scene = before;
  }
}

function playSaid(stage: Stage, said: string): Promise<Outcome> {
  if (said.startsWith('/')) return typed(stage, said);
  const [, word = '', rest = ''] = /^(\w+)\s*(.*)$/s.exec(said) ?? [];
  const verb = own(VERBS, word);
  if (verb === undefined) {
    throw new StageError(
      `I can't follow "${said.slice(0, 60)}". A line is a command like /weigh, or one of: ${Object.keys(VERBS).join(', ')}.`,
    );
  }
  return verb(stage, rest);
}

async function typed(stage: Stage, line: string): Promise<Outcome> {
  const { command, options } = readLine(line, typable(stage.commands));
  const chosen = choose(stage, command, await attachFiles(stage, command, options));
  return { kind: 'answer', command, answer: await ask(stage, { kind: 'command', command, options: chosen }) };
}

/** `file:PATH` attaches what is there. */
async function attachFiles({ commands }: Stage, command: string, typed: Record<string, string>) {
  const options = commands.find(({ name }) => name === command)?.options;
  const attaching = Object.entries(typed).map(async ([name, text]) => {
    const isFile = options?.[name]?.kind === 'file';
    return [name, isFile ? writeSentFile(await attach(text)) : text] as const;
  });
  return Object.fromEntries(await Promise.all(attaching));
}

/** A platform shows fixed choices in words and sends their values; here either may be typed. */
function choose({ commands, scene }: Stage, command: string, typed: Record<string, string>) {
  const { choices: words } = speak({ locale: scene.locale, units: 'lb' });
  const options = commands.find(({ name }) => name === command)?.options;
  return Object.fromEntries(
    Object.entries(typed).map(([name, text]) => {
      const labels: Readonly<Record<string, () => string>> = words[name as keyof typeof words] ?? {};
      const value = options?.[name]?.choices?.find(
        (one) => labels[one]?.().toLowerCase() === text.trim().toLowerCase(),
      );
      return [name, value ?? text];
    }),
  );
}

const answered = async (command: string, answer: Promise<Answer>): Promise<Outcome> => ({
  kind: 'answer',
  command,
  answer: await answer,
});

const VERBS: Readonly<Record<string, (stage: Stage, rest: string) => Promise<Outcome>>> = {
  press: (stage, label) => answered('press', press(stage, label)),
  select: (stage, rest) => {
    // A label or a choice may hold a colon of its own: the first one after which both are there.
    const colons = [...rest.matchAll(/:/g)].map(({ index }) => index);
    const at =
      colons.find((index) => canSelect(stage, rest.slice(0, index), rest.slice(index + 1))) ?? colons[0] ?? 0;
    return answered('select', select(stage, rest.slice(0, at), rest.slice(at + 1)));
  },
  submit: (stage, rest) => {
    const command = stage.commands.find(({ name }) => name === stage.form?.id.command);
    const options = [...Object.keys(command?.options ?? {}), 'more'];
    return answered('submit', submit(stage, readOptions(rest, { name: 'submit', options })));
  },
  complete: async (stage, line) => {
    const { command, options } = readLine(line, typable(stage.commands));
    const option = Object.keys(options).at(-1);
    if (option === undefined)
      throw new StageError('Complete which option? Write it, like: complete /weigh cut:bri');
    return { kind: 'choices', command, choices: await complete(stage, command, options, option) };
  },
  at: async (stage, moment) => {
    const now = Date.parse(moment);
    if (!(now >= FIRST_MOMENT && now < LAST_MOMENT))
      throw new StageError(`"${moment}" is no moment. Write it like 2026-07-04T18:00:00Z.`);
    stage.scene = { ...stage.scene, now };
    stage.onTheClock = false;
    const due = await stage.desk.due(now);
    return { kind: 'scene', command: 'at', text: `it is ${new Date(now).toISOString()}`, due };
  },
  in: async (stage, club) => {
    stage.scene = { ...stage.scene, club: club.trim() };
    return { kind: 'scene', command: 'in', text: `in ${club.trim()}` };
  },
  locale: async (stage, locale) => {
    stage.scene = { ...stage.scene, locale: locale.trim(), clubLocale: locale.trim() };
    return { kind: 'scene', command: 'locale', text: `locale ${locale.trim()}` };
  },
};
